import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';

/**
 * What a part costs a shop, in dollars, to weigh a part changed on suspicion against a reading. Order of magnitude
 * only, for teaching: common practice, no source.
 */
const dollars: Readonly<Record<string, number>> = {
  breaker: 25,
  capacitor: 15,
  contactor: 30,
  'defrost-board': 140,
  'delay-timer': 35,
  disconnect: 20,
  'dual-capacitor': 30,
  'float-switch': 20,
  fuse: 2,
  'fusible-link': 10,
  heater: 90,
  lamp: 5,
  'pressure-switch': 40,
  relay: 25,
  solenoid: 60,
  'temperature-switch': 20,
  thermistor: 15,
  thermostat: 120,
  'toggle-switch': 10,
  transformer: 30,
};

const compressorDollars = 1100;
const motorDollars = 220;
const wireDollars = 5;
const plantDollars = 150;
const unlistedDollars = 50;

/** What changing the part or wire of a fault costs in parts. */
export function priceOf(unit: Unit, {site}: Fault): number {
  switch (site.on) {
    case 'wire':
      return wireDollars;
    case 'wires':
      return 2 * wireDollars;
    case 'plant':
      return plantDollars;
    case 'part': {
      const part = unit.parts.find(({id}) => id === site.part);
      if (part?.kind === 'psc-motor' || part?.kind === 'three-phase-motor')
        return (part.data as {drives?: string}).drives === 'compressor'
          ? compressorDollars
          : motorDollars;
      return dollars[part?.kind ?? ''] ?? unlistedDollars;
    }
  }
}
