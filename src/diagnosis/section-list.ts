/** Where an instructor looks for a fault. */
export const sections = [
  'power',
  'low-voltage',
  'safeties',
  'line-voltage',
  'motors',
  'boards',
  'refrigerant and air',
] as const;
export type Section = (typeof sections)[number];
