/** Where the first reading is taken on the practice panel. A test checks these names against the unit. */
export const firstReadingPlan = {
  unit: 'practice-panel',
  callSwitch: 'S1.position',
  hot: 'TB2.Y',
  common: 'TB2.C',
  across: ['S1.1', 'S1.2'],
} as const;

/** Why the meter shows 24 V across an open switch; one is right, each says what is true of it. */
export const whyAnswers = [
  {
    id: 'uses',
    says: 'The switch uses up the 24 V.',
    right: false,
    because:
      'An open switch uses nothing: no current flows through it. Closed, it would show next to 0 V.',
  },
  {
    id: 'both-sides',
    says: 'One side is at the hot side, the other reaches common through the coil, and no current flows.',
    right: true,
    because:
      'Right. With no current nothing is lost in the coil, so all 24 V stand across the open place. Hop along a rung: where the voltage appears across one part, that part is open.',
  },
  {
    id: 'broken',
    says: 'The meter is wrong: an open switch must read 0 V.',
    right: false,
    because:
      'The meter is right. 0 V across a switch in a live circuit means it is closed, or that nothing feeds it.',
  },
] as const;
