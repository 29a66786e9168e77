import {inSentence} from '../content/in-sentence.ts';
import type {CableRun, Unit, Wire} from '../content/unit.ts';
import type {Fault} from './fault.ts';
import {circuitClasses, conductorsOf, partOf, type CircuitClass, type Groups} from './nets.ts';

/** Metal to metal where insulation has worn through. */
const contactOhms = 0.05;

/**
 * What a burnt or corroded joint is worth. In a 24 V circuit, tens of ohms: a coil of 60–130 Ω no longer gets
 * its pull-in voltage, and the R lead no longer feeds a thermostat. In a line-voltage circuit, as much as leaves
 * the load running badly, so it follows the load and with it the gauge. In a sensor loop of 10 kΩ only kilohms
 * show. Common practice, no source.
 */
export function burntJointOhms(wire: Wire, circuit: CircuitClass): number {
  if (circuit === 'sensor') return 5000;
  if (circuit === 'control' || circuit === 'ground') return 60;
  if (wire.gauge <= 10) return 1.5;
  if (wire.gauge <= 12) return 4;
  return wire.gauge <= 14 ? 15 : 40;
}

/** Open, high resistance, short to neighbours in the run and short to earth, of every wire. */
export function wireFaults(unit: Unit): Fault[] {
  const classes = circuitClasses(unit);
  const conductors = conductorsOf(unit);
  const enclosureOf = enclosures(unit);
  const unprotected = unprotectedConductors(unit, conductors);
  const isUnprotected = (wire: Wire): boolean => unprotected.has(conductors.of(wire.from));
  return unit.wires.flatMap((wire) => {
    const circuit = classes.get(wire.id) ?? 'line';
    const name = wireName(wire);
    const on = {on: 'wire', wire: wire.id} as const;
    const faults: Fault[] = [
      {
        ...nothing,
        id: `${wire.id}:open`,
        site: on,
        mode: 'open',
        name: `${name} open`,
        changes: [{element: wire.id, open: true}],
        weight: 1,
      },
      {
        ...nothing,
        id: `${wire.id}:high-resistance`,
        site: on,
        mode: 'high-resistance',
        name: `${name} high resistance (burnt or corroded joint)`,
        changes: [{element: wire.id, seriesOhms: burntJointOhms(wire, circuit)}],
        weight: 1,
      },
    ];
    if (isUnprotected(wire)) return faults;
    for (const next of followers(unit, wire)) {
      if (isUnprotected(next)) continue;
      const short = shortBetween(unit, wire, next, conductors, enclosureOf);
      if (short) faults.push(short);
    }
    const earth =
      circuit === 'ground' ? undefined : shortToEarth(unit, wire, conductors, enclosureOf);
    if (earth) faults.push(earth);
    return faults;
  });
}

/**
 * Live conductors ahead of every breaker. A short there is cleared by the utility's own protection, which is
 * no part of a unit, so it is not in the catalogue.
 */
function unprotectedConductors(unit: Unit, conductors: Groups): ReadonlySet<string> {
  return new Set(
    unit.parts.flatMap((part) =>
      part.elements.flatMap((element) =>
        element.is === 'acSource' ? [conductors.of(element.a)] : [],
      ),
    ),
  );
}

const nothing = {changes: [], paths: [], behaviour: {}, plant: {}} as const;

/** "Wire W12 (yellow, TB1 Y to FS1 1)". */
export function wireName(wire: Wire): string {
  return `Wire ${wire.id} (${wire.colour}, ${spoken(wire.from)} to ${spoken(wire.to)})`;
}

const spoken = (placed: string): string => placed.replace('.', ' ');

/** Wires that follow this one in its run: its right-hand neighbour; the last meets the first round the loom. */
function followers(unit: Unit, wire: Wire): Wire[] {
  const loom = wiresOf(unit, wire.run);
  if (loom.length < 2) return [];
  const at = loom.indexOf(wire);
  if (at < loom.length - 1) return [loom[at + 1]];
  return loom.length > 2 ? [loom[0]] : [];
}

function wiresOf(unit: Unit, run: CableRun['id']): Wire[] {
  return unit.wires.filter((wire) => wire.run === run);
}

/** Where the two lie in one enclosure they touch there; two wires of one conductor cannot be shorted. */
function shortBetween(
  unit: Unit,
  a: Wire,
  b: Wire,
  conductors: Groups,
  enclosureOf: (terminal: string) => string,
): Fault | undefined {
  if (conductors.same(a.from, b.from)) return undefined;
  const [endA, endB] = nearEnds(a, b, enclosureOf);
  const id = `${a.id}~${b.id}:short`;
  return {
    ...nothing,
    id,
    site: {on: 'wires', wires: [a.id, b.id]},
    mode: 'short',
    name: `Wires ${a.id} (${a.colour}) and ${b.id} (${b.colour}) shorted together in the ${runTitle(unit, a.run)}`,
    paths: [{id, a: endA, b: endB, ohms: contactOhms}],
    weight: 0.3,
  };
}

/** Ends of the two wires that lie in the same enclosure, else their first ends. */
function nearEnds(a: Wire, b: Wire, enclosureOf: (terminal: string) => string): [string, string] {
  for (const [endA, terminalA] of endsOf(a)) {
    for (const [endB, terminalB] of endsOf(b)) {
      if (enclosureOf(terminalA) === enclosureOf(terminalB)) return [endA, endB];
    }
  }
  return [`${a.id}.from`, `${b.id}.from`];
}

/** A short sits on the wire, so it is named by the wire's end: lifting the end takes the short along. */
const endsOf = (wire: Wire): [end: string, terminal: string][] => [
  [`${wire.id}.from`, wire.from],
  [`${wire.id}.to`, wire.to],
];

function shortToEarth(
  unit: Unit,
  wire: Wire,
  conductors: Groups,
  enclosureOf: (terminal: string) => string,
): Fault | undefined {
  for (const [end, terminal] of endsOf(wire)) {
    const enclosure = unit.enclosures.find((each) => each.id === enclosureOf(terminal));
    const cabinet = enclosure?.cabinet;
    // already joined to the metal by wire: the grounded common, a cabinet's own lug
    if (!enclosure || !cabinet || conductors.same(terminal, cabinet)) continue;
    const id = `${wire.id}:earth`;
    return {
      ...nothing,
      id,
      site: {on: 'wire', wire: wire.id},
      mode: 'earth',
      name: `${wireName(wire)} shorted to the metal of the ${inSentence(enclosure.title)}`,
      paths: [{id, a: end, b: cabinet, ohms: contactOhms}],
      weight: 0.3,
    };
  }
  return undefined;
}

function runTitle(unit: Unit, run: string): string {
  const title = unit.runs.find((each) => each.id === run)?.title;
  return title ? inSentence(title) : 'loom';
}

function enclosures(unit: Unit): (terminal: string) => string {
  const byPart = new Map(unit.parts.map((part) => [part.id, part.enclosure]));
  return (terminal) => byPart.get(partOf(terminal)) ?? '';
}
