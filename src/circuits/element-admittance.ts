import type {Complex} from '../parts/element.ts';
import type {TwoTerminal} from '../parts/motor-windings.ts';
import {phasor, zero} from './complex.ts';

/**
 * An open contact, a broken winding, a part burnt open: an air gap or a clean break, 1 TΩ. A hundred times less
 * than what a 10 MΩ meter could show of 240 V on its 0.1 mV count, and far above the 100 MΩ insulation.
 */
export const openOhms = 1e12;

/**
 * The admittances that a two-terminal element can take, in siemens: `rest` before anything has acted on it,
 * `acted` when its state says so (contact closed, coil sealed). `volts` is what a source that is on makes of
 * `a` against `b`, behind that admittance.
 */
export interface Siemens {
  readonly rest: Complex;
  readonly acted: Complex;
  readonly volts: Complex;
}

/** In the line-frequency network. Direct-current sources are their resistance, without volts. */
export function acSiemens(element: TwoTerminal, frequencyHz: number): Siemens {
  switch (element.is) {
    case 'conductor':
      return fixed({re: 1 / element.ohms, im: 0});
    case 'contact':
      return contact(element.closedOhms);
    case 'impedance':
      return fixed(inverse(element.acOhms));
    case 'coil':
      return {rest: inverse(element.inrushOhms), acted: inverse(element.sealedOhms), volts: zero};
    case 'variable':
      return fixed({re: 1 / element.restOhms, im: 0});
    case 'capacitor':
      return fixed({
        re: 1 / element.leakageOhms,
        im: 2 * Math.PI * frequencyHz * element.microfarads * 1e-6,
      });
    case 'acSource': {
      const y = inverse(element.ohms);
      return {rest: y, acted: y, volts: phasor(element.volts, element.degrees)};
    }
    case 'dcSource':
      return fixed({re: 1 / element.ohms, im: 0});
  }
}

/**
 * In the direct-current network: coils and loads by their ohmmeter resistance, capacitors by their leakage,
 * line-frequency sources by their source resistance without volts.
 */
export function dcSiemens(element: TwoTerminal): Siemens {
  switch (element.is) {
    case 'conductor':
      return fixed({re: 1 / element.ohms, im: 0});
    case 'contact':
      return contact(element.closedOhms);
    case 'impedance':
    case 'coil':
      return fixed({re: 1 / element.dcOhms, im: 0});
    case 'variable':
      return fixed({re: 1 / element.restOhms, im: 0});
    case 'capacitor':
      return fixed({re: 1 / element.leakageOhms, im: 0});
    case 'acSource':
      return fixed({re: 1 / element.ohms.re, im: 0});
    case 'dcSource': {
      const y = {re: 1 / element.ohms, im: 0};
      return {rest: y, acted: y, volts: {re: element.volts, im: 0}};
    }
  }
}

function contact(closedOhms: number): Siemens {
  return {rest: {re: 1 / openOhms, im: 0}, acted: {re: 1 / closedOhms, im: 0}, volts: zero};
}

/** The same in every state, and no source. */
export function fixed(y: Complex): Siemens {
  return {rest: y, acted: y, volts: zero};
}

export function inverse(ohms: Complex): Complex {
  const square = ohms.re * ohms.re + ohms.im * ohms.im;
  return {re: ohms.re / square, im: -ohms.im / square};
}
