import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {compressorDollars, factsOf, plantDollars, wireDollars} from './kind-facts.ts';

/** What changing the part or wire of a fault costs in parts, dollars. */
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
      const drives = (part?.data as {drives?: string} | undefined)?.drives;
      return drives === 'compressor' ? compressorDollars : factsOf(part?.kind ?? '').dollars;
    }
  }
}
