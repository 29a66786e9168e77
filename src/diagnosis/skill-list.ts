/** What a technician can be good at. Calls and tasks are tagged with these. */
export const skills = [
  {id: 'power-supply', title: 'Power supply'},
  {id: 'transformer-and-fuse', title: 'Transformer and fuse'},
  {id: 'reading-a-ladder', title: 'Reading a ladder'},
  {id: 'voltage-drop', title: 'Voltage drop'},
  {id: 'safeties-in-series', title: 'Safeties in series'},
  {id: 'relays-and-contactors', title: 'Relays and contactors'},
  {id: 'motors-and-capacitors', title: 'Motors and capacitors'},
  {id: 'boards-and-timing', title: 'Boards and timing'},
  {id: 'earth-faults', title: 'Earth faults'},
  {id: 'meter-safety', title: 'Meter safety'},
  {id: 'lock-out', title: 'Lock-out'},
] as const;

export type SkillId = (typeof skills)[number]['id'];
