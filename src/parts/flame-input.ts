/** What an ignition board's flame circuit measures its current through, FS to GND (common practice, no source). */
export const flameInputOhms = 1e6;
