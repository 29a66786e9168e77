import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import type {CatalogueLine} from './bench-messages.ts';

/** The unit's catalogue as lines to choose from. */
export function catalogueLines(unit: Unit): CatalogueLine[] {
  return catalogue(unit).map((fault) => ({
    id: fault.id,
    name: fault.name,
    mode: fault.mode,
    ...sitesOf(fault),
  }));
}

function sitesOf({site}: Fault): {parts: string[]; wires: string[]} {
  switch (site.on) {
    case 'part':
      return {parts: [site.part], wires: []};
    case 'wire':
      return {parts: [], wires: [site.wire]};
    case 'wires':
      return {parts: [], wires: [...site.wires]};
    case 'plant':
      return {parts: [], wires: []};
  }
}
