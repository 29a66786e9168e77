/** The signal to the damper: 2 V shut, 10 V wide open. */
export const signalVolts = {shut: 2, open: 10} as const;
/** Pull-down of the signal output, ohms; with the dropping resistor it divides 10 V. */
export const signalLoadOhms = 1000;
