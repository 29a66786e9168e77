import type {Unit, Wire} from '../content/unit.ts';
import type {Fault, Intermittent} from './fault.ts';
import {partOf} from './nets.ts';
import {wireName} from './wire-faults.ts';

const nothing = {changes: [], paths: [], behaviour: {}, plant: {}} as const;

/** What is switched in the first place, and so what a loose joint is most felt at, in this order. */
const switched = ['contactor', 'gas-valve', 'sequencer', 'relay'];

/** Values of a plant that warm a unit as it works, with degrees at which a poor crimp opens and makes again (common practice, no source). */
const warmings = [
  {value: 'heatExchangerDegF', breaksAt: 130, makesAt: 105},
  {value: 'heaterDegF', breaksAt: 130, makesAt: 105},
  {value: 'compressorShellDegF', breaksAt: 110, makesAt: 95},
] as const;

/**
 * A loose joint at the coil of what the unit switches in the first place: it makes and breaks by itself, when the
 * unit is warm, or until somebody taps the panel.
 */
export function intermittents(unit: Unit): Fault[] {
  const wire = coilWire(unit);
  if (!wire) return [];
  const name = wireName(wire);
  const fault = (mode: string, words: string, by: Intermittent['by']): Fault => ({
    ...nothing,
    id: `${wire.id}:${mode}`,
    site: {on: 'wire', wire: wire.id},
    mode,
    name: `${name} ${words}`,
    intermittent: {elements: [wire.id], by},
    weight: 0.3,
  });
  const enclosures = new Map(unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const covered = new Set(unit.enclosures.filter(({cover}) => cover).map(({id}) => id));
  const box = [wire.to, wire.from]
    .map((terminal) => enclosures.get(partOf(terminal))!)
    .find((id) => covered.has(id));
  const warming = warmings.find(({value}) => value in unit.plant.start);
  return [
    fault('loose-by-time', 'loose, makes and breaks by itself', {
      is: 'time',
      soundSeconds: 100,
      brokenSeconds: 140,
    }),
    ...(warming
      ? [fault('loose-when-hot', 'loose, opens when it is hot', {is: 'heat', ...warming})]
      : []),
    ...(box === undefined
      ? []
      : [
          fault('loose-until-tapped', 'loose, makes for a while when the panel is tapped', {
            is: 'vibration',
            enclosure: box,
            holdsSeconds: 240,
          }),
        ]),
  ];
}

/** The wire on the coil of the first part of the first kind that the unit has. */
function coilWire(unit: Unit): Wire | undefined {
  for (const kind of switched)
    for (const part of unit.parts.filter((each) => each.kind === kind)) {
      const coil = part.elements.find(({is}) => is === 'coil');
      if (!coil || !('a' in coil)) continue;
      const wire = unit.wires.find(({from, to}) => from === coil.a || to === coil.a);
      if (wire) return wire;
    }
  return undefined;
}
