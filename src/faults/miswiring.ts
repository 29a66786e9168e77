import type {Unit, Wire} from '../content/unit.ts';
import {inSentence} from '../content/in-sentence.ts';
import type {Fault} from './fault.ts';
import {circuitClasses, conductorsOf, groundTerminals, partOf} from './nets.ts';
import {wireName} from './wire-faults.ts';

const nothing = {changes: [], paths: [], behaviour: {}, plant: {}} as const;

/** Wires landed on the wrong terminal by whoever was here before: another tap, or two wires the wrong way round. */
export function miswirings(unit: Unit): Fault[] {
  return [...wrongTaps(unit), ...swappedWires(unit)];
}

/** The supply's wire on another tap of a control transformer. */
function wrongTaps(unit: Unit): Fault[] {
  return unit.parts
    .filter(({kind}) => kind === 'transformer')
    .flatMap((part) => {
      const {taps} = part.data as {taps: readonly {terminal: string}[]};
      return unit.wires.flatMap((wire) =>
        endsOf(wire).flatMap(([end, terminal]) => {
          const now = taps.find((tap) => `${part.id}.${tap.terminal}` === terminal);
          if (!now) return [];
          return taps
            .filter((tap) => tap !== now)
            .map((tap): Fault => ({
              ...nothing,
              id: `${wire.id}:on-tap-${tap.terminal}`,
              site: {on: 'wire', wire: wire.id},
              mode: 'wrong-tap',
              name: `${wireName(wire)} on the wrong primary tap, ${tap.terminal} of ${part.id}`,
              moves: [{end, terminal: `${part.id}.${tap.terminal}`}],
              weight: 0.3,
            }));
        }),
      );
    });
}

/** Parts at which two wires of one cable are easily swapped, and where it matters. */
const swappedAt = new Set(['thermostat', 'psc-motor', 'three-phase-motor']);

/** Two wires that lie side by side and land on one part, the wrong way round there. */
function swappedWires(unit: Unit): Fault[] {
  const conductors = conductorsOf(unit);
  const grounds = groundTerminals(unit);
  const threePhase = unit.parts.some(({kind}) => kind === 'three-phase-motor');
  // the feeder's phases: one place is as good as another, so the first switch beyond the panel
  const feeder = threePhase ? unit.parts.find(({kind}) => kind === 'disconnect')?.id : undefined;
  const kindOf = new Map(unit.parts.map(({id, kind}) => [id, kind]));
  const matters = (part: string): boolean =>
    swappedAt.has(kindOf.get(part) ?? '') || part === feeder;
  return unit.wires.flatMap((wire, index) => {
    const next = unit.wires[index + 1];
    if (!next || next.run !== wire.run || conductors.same(wire.from, next.from)) return [];
    return endsOf(wire).flatMap(([end, terminal]): Fault[] => {
      const part = partOf(terminal);
      const other = endsOf(next).find(([, at]) => partOf(at) === part);
      if (!matters(part) || !other || terminal === other[1]) return [];
      if (grounds.has(terminal) || grounds.has(other[1])) return [];
      // at the feeder's own line side, not at its load side as well
      if (part === feeder && end.endsWith('.from')) return [];
      return [
        {
          ...nothing,
          id: `${wire.id}~${next.id}:swapped`,
          site: {on: 'wires', wires: [wire.id, next.id]},
          mode: 'swapped',
          name: `Wires ${wire.id} (${wire.colour}) and ${next.id} (${next.colour}) swapped at ${part}`,
          moves: [
            {end, terminal: other[1]},
            {end: other[0], terminal},
          ],
          weight: 0.2,
        },
      ];
    });
  });
}

/**
 * A live conductor on the metal of a box whose equipment ground is broken: no breaker trips, for there is no way back,
 * and the metal waits for a hand. One for a unit: the box beyond the service panel with the most line-voltage wires.
 */
export function liveMetal(unit: Unit): Fault[] {
  const classes = circuitClasses(unit);
  const enclosureOf = new Map(unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const box = (terminal: string): string => enclosureOf.get(partOf(terminal)) ?? '';
  const supply = unit.parts.find(({kind}) => kind === 'supply')?.enclosure;
  const candidates = unit.enclosures.flatMap(({id, title, cabinet}) => {
    if (cabinet === undefined || id === supply) return [];
    const bonds = unit.wires.filter(
      (wire) => classes.get(wire.id) === 'ground' && wire.to === cabinet && box(wire.from) !== id,
    );
    const hot = unit.wires.filter(
      (wire) => classes.get(wire.id) === 'line' && (box(wire.from) === id || box(wire.to) === id),
    );
    return bonds.length === 1 && hot.length > 0 ? [{title, cabinet, bond: bonds[0]!, hot, id}] : [];
  });
  const [worst] = [...candidates].sort((a, b) => b.hot.length - a.hot.length);
  if (!worst) return [];
  const {bond, cabinet, title} = worst;
  const hot = worst.hot[0]!;
  const [end] = endsOf(hot).find(([, terminal]) => box(terminal) === worst.id)!;
  const id = `${bond.id}~${hot.id}:live-metal`;
  return [
    {
      ...nothing,
      id,
      site: {on: 'wires', wires: [bond.id, hot.id]},
      mode: 'live-metal',
      name: `Equipment ground ${bond.id} of the ${inSentence(title)} broken and wire ${hot.id} (${hot.colour}) on its metal`,
      changes: [{element: bond.id, open: true}],
      paths: [{id, a: end, b: cabinet, ohms: 0.05}],
      weight: 0.1,
    },
  ];
}

const endsOf = (wire: Wire): [end: string, terminal: string][] => [
  [`${wire.id}.from`, wire.from],
  [`${wire.id}.to`, wire.to],
];
