import type {Unit} from '../content/unit.ts';
import {circuitClasses, partOf} from '../faults/nets.ts';
import type {Fault} from '../faults/fault.ts';
import {factsOf} from './kind-facts.ts';
import type {Section} from './section-list.ts';

export {sections, type Section} from './section-list.ts';

/** Section of a unit that a fault belongs to: by the kind of its part, or by what its wire carries. */
export function sectionOf(unit: Unit, {site}: Fault): Section {
  if (site.on === 'plant') return 'refrigerant and air';
  if (site.on === 'part')
    return factsOf(unit.parts.find(({id}) => id === site.part)?.kind ?? '').section;
  const id = site.on === 'wire' ? site.wire : site.wires[0];
  const wire = unit.wires.find((each) => each.id === id);
  const kindOf = (terminal: string): string =>
    unit.parts.find((part) => part.id === partOf(terminal))?.kind ?? '';
  const ends = wire ? [wire.from, wire.to].map((end) => factsOf(kindOf(end)).section) : [];
  if (ends.includes('safeties')) return 'safeties';
  const carries = circuitClasses(unit).get(id);
  if (carries === 'ground') return 'power';
  if (carries === 'sensor') return 'boards';
  if (carries === 'control') return 'low-voltage';
  if (ends.includes('motors')) return 'motors';
  const feeds = (end: string): boolean =>
    factsOf(kindOf(end)).section === 'power' || kindOf(end) === 'terminal-strip';
  return wire && feeds(wire.from) && feeds(wire.to) ? 'power' : 'line-voltage';
}
