import type {Complex} from '../../src/parts/element.ts';
import type {MeterLook} from '../../src/meter/read-meter.ts';

/** A circuit of one source behind one impedance, red on its far end: all that a meter ever meets. */
export function behind(circuit: {
  acVolts?: number;
  acOhms?: Complex;
  dcVolts?: number;
  dcOhms?: number;
  amps?: Complex;
}): MeterLook {
  const {
    acVolts = 0,
    acOhms = {re: 0, im: 0},
    dcVolts = 0,
    dcOhms = 0,
    amps = {re: 0, im: 0},
  } = circuit;
  return {
    network: {frequencyHz: 60},
    thevenin(a, b, network) {
      const sign = a === 'red' && b === 'black' ? 1 : -1;
      return network === 'ac'
        ? {volts: {re: sign * acVolts, im: 0}, ohms: acOhms}
        : {volts: {re: sign * dcVolts, im: 0}, ohms: {re: dcOhms, im: 0}};
    },
    amps: () => amps,
  };
}

export const leads = {red: 'red', black: 'black'} as const;
export const reversed = {red: 'black', black: 'red'} as const;
