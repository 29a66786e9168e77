/** What the selector of the meter stands on. */
export const meterFunctions = [
  'ac-volts',
  'dc-volts',
  'low-impedance-volts',
  'ohms',
  'continuity',
  'clamp-amps',
] as const;
export type MeterFunction = (typeof meterFunctions)[number];
