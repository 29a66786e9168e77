import type {MeterFlaw} from '../../meter/meter-condition.ts';

/** What may be done to a student's own meter, as people choose it. */
export const meterChoices: readonly (readonly [MeterFlaw | '', string])[] = [
  ['', 'In order'],
  ['sound', 'To be proved, and in order'],
  ['broken-lead', 'To be proved: a lead is broken'],
  ['weak-battery', 'To be proved: the battery is weak'],
  ['blown-fuse', 'To be proved: the µA fuse has blown'],
];
