/** What the selector of the meter stands on, in the order of its keys. */
export const meterFunctions = [
  'ac-volts',
  'dc-volts',
  'low-impedance-volts',
  'ohms',
  'continuity',
  'clamp-amps',
  'hertz',
  'clamp-hertz',
  'capacitance',
  'dc-microamps',
] as const;
export type MeterFunction = (typeof meterFunctions)[number];

/** Functions that send a current of their own through what they read: they want it dead and discharged. */
export const sourcingFunctions: ReadonlySet<MeterFunction> = new Set([
  'ohms',
  'continuity',
  'capacitance',
]);

/** Functions that read with the jaw around a wire instead of with leads. */
export const clampFunctions: ReadonlySet<MeterFunction> = new Set(['clamp-amps', 'clamp-hertz']);
