import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {conductorsOf, partOf, stretchesOf} from '../faults/nets.ts';
import {differ} from '../meter/accuracy.ts';
import {readMeter} from '../meter/read-meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {Observation, OperatingUnit} from '../sequences/operating-unit.ts';
import {readInSeries} from '../bench/lay-leads.ts';
import {bleedOhms, bleedSeconds} from '../bench/meter-practice.ts';
import {comparedStates} from './compared-states.ts';

/**
 * Whether no reading available on this unit tells two sets of faults apart. Compared, in every sequence of operation
 * and isolated: what is seen and heard; volts from every point to earth and across every wire and element, at high and
 * at low impedance; amps in every wire; where a board makes direct volts, microamps in series with the wires at which
 * the two sets of faults sit; and, isolated, ohms across every wire and element and to earth, also with those wires
 * lifted, and the capacitance of every discharged capacitor with all of them lifted. Two readings are the same when the
 * meter's accuracy bands meet.
 *
 * Volts of every point to one reference decide the volts of every pair, so not every pair need be read. Hertz only tell
 * whether there are volts or amps enough to count, and the tone whether there are few ohms: both are decided too.
 */
export function lookAlike(unit: Unit, a: readonly Fault[], b: readonly Fault[]): boolean {
  if (sameFaults(a, b)) return true;
  const pairs = stretches(unit);
  const other = comparedStates(unit, b);
  for (const state of comparedStates(unit, a)) {
    const match = other.next();
    if (match.done) break;
    const [left, right] = [state.operating, match.value.operating];
    if (!sameObservations(left.observations(), right.observations())) return false;
    if (state.compare === 'isolated') {
      if (!sameResistances(left, right, pairs)) return false;
      if (!sameWhenLifted(unit, left, right, [...a, ...b])) return false;
      if (!sameCapacitors(unit, left, right, [...a, ...b])) return false;
    } else {
      if (!sameAmps(unit, left, right)) return false;
      if (state.compare !== 'running') continue;
      if (!sameVolts(unit, left, right, pairs)) return false;
      if (!sameMicroamps(unit, left, right, [...a, ...b])) return false;
    }
  }
  return true;
}

function sameFaults(a: readonly Fault[], b: readonly Fault[]): boolean {
  return a.length === b.length && a.every((fault) => b.some((each) => each.id === fault.id));
}

type Pair = readonly [string, string];

function sameObservations(a: readonly Observation[], b: readonly Observation[]): boolean {
  const key = (seen: Observation): string => `${seen.part} ${seen.is} ${seen.display ?? ''}`;
  const keys = new Set(b.map(key));
  return a.length === b.length && a.every((seen) => keys.has(key(seen)));
}

function sameVolts(
  unit: Unit,
  a: OperatingUnit,
  b: OperatingUnit,
  pairs: readonly Pair[],
): boolean {
  const toEarth = a.probePoints().map((point): Pair => [point, 'earth']);
  // direct volts are made by boards only
  const functions: MeterFunction[] = ['ac-volts', 'low-impedance-volts'];
  if (hasDirectVolts(unit)) functions.push('dc-volts');
  return functions.every((fn) => [...toEarth, ...pairs].every((pair) => same(fn, a, b, pair)));
}

const hasDirectVolts = (unit: Unit): boolean =>
  unit.parts.some((part) => part.elements.some((element) => element.is === 'dcSource'));

function sameAmps(unit: Unit, a: OperatingUnit, b: OperatingUnit): boolean {
  return unit.wires.every(
    ({id}) =>
      !differ(
        'clamp-amps',
        readMeter('clamp-amps', a, {wire: id}),
        readMeter('clamp-amps', b, {wire: id}),
      ),
  );
}

function sameResistances(a: OperatingUnit, b: OperatingUnit, pairs: readonly Pair[]): boolean {
  const toEarth = a.probePoints().map((point): Pair => [point, 'earth']);
  return [...toEarth, ...pairs].every((pair) => same('ohms', a, b, pair));
}

/**
 * One end of each wire at the places of the faults is lifted, and the two pieces that this makes are read: each to
 * earth, to the other, and to the wires that lie beside it.
 */
function sameWhenLifted(
  unit: Unit,
  a: OperatingUnit,
  b: OperatingUnit,
  faults: readonly Fault[],
): boolean {
  for (const wire of wiresAt(unit, faults)) {
    const end = `${wire.id}.from`;
    const [left, right] = [a.fork(), b.fork()];
    left.lift(end);
    right.lift(end);
    const pairs: Pair[] = [
      [end, wire.from],
      [end, wire.to],
      [end, 'earth'],
      [wire.from, 'earth'],
      ...neighbours(unit, wire.id).flatMap((next): Pair[] => [
        [end, next.from],
        [wire.from, next.from],
      ]),
    ];
    if (!pairs.every((pair) => same('ohms', left, right, pair))) return false;
  }
  return true;
}

/** One end of each wire at the places of the faults is lifted, and the meter laid into the gap. */
function sameMicroamps(
  unit: Unit,
  a: OperatingUnit,
  b: OperatingUnit,
  faults: readonly Fault[],
): boolean {
  if (!hasDirectVolts(unit)) return true;
  return wiresAt(unit, faults).every((wire) => {
    const end = `${wire.id}.from`;
    const shows = [a, b].map((operating) => {
      const copy = operating.fork();
      copy.lift(end);
      return readInSeries(copy, wire.from, end);
    });
    return shows[0].fuseBlew === shows[1].fuseBlew && !differ('dc-microamps', shows[0], shows[1]);
  });
}

/** Every capacitor alone: emptied by hand, and all the wires lifted at the places of the faults. */
function sameCapacitors(
  unit: Unit,
  a: OperatingUnit,
  b: OperatingUnit,
  faults: readonly Fault[],
): boolean {
  const capacitors = unit.parts.flatMap((part) =>
    part.elements.flatMap((element): Pair[] =>
      element.is === 'capacitor' ? [[element.a, element.b]] : [],
    ),
  );
  const alone = [a, b].map((operating) => {
    const copy = operating.fork();
    for (const [from, to] of capacitors) copy.bleed(from, to, bleedOhms, bleedSeconds);
    for (const {id} of wiresAt(unit, faults)) copy.lift(`${id}.from`);
    for (const {id} of wiresAt(unit, faults)) copy.lift(`${id}.to`);
    return copy;
  });
  return capacitors.every((pair) => same('capacitance', alone[0], alone[1], pair));
}

/** Wires at the places of faults: the wires themselves, and those on the parts. */
export function wiresAt(unit: Unit, faults: readonly Fault[]): Unit['wires'] {
  const wires = new Set<string>();
  const parts = new Set<string>();
  for (const {site} of faults) {
    if (site.on === 'wire') wires.add(site.wire);
    if (site.on === 'wires') for (const id of site.wires) wires.add(id);
    if (site.on === 'part') parts.add(site.part);
  }
  return unit.wires.filter(
    ({id, from, to}) => wires.has(id) || parts.has(partOf(from)) || parts.has(partOf(to)),
  );
}

function neighbours(unit: Unit, id: string): Unit['wires'] {
  const wire = unit.wires.find((each) => each.id === id);
  return unit.wires.filter((each) => each.run === wire?.run && each.id !== id);
}

/** Pairs worth a lead each: the ends of every wire and of every element that leads can reach. */
function stretches(unit: Unit): Pair[] {
  const conductors = conductorsOf(unit);
  const seen = new Set<string>();
  const elements = unit.parts.flatMap((part) =>
    part.elements.flatMap((element) => stretchesOf(element)),
  );
  const wires = unit.wires.map((wire): Pair => [wire.from, wire.to]);
  return [...wires, ...elements].filter(([a, b]) => {
    if (a === 'earth' || b === 'earth' || a.includes('~') || b.includes('~')) return false;
    const key = `${a} ${b}`;
    const first = !seen.has(key) && (a !== b || !conductors.same(a, b));
    seen.add(key);
    return first;
  });
}

function same(fn: MeterFunction, a: OperatingUnit, b: OperatingUnit, [red, black]: Pair): boolean {
  return !differ(fn, readMeter(fn, a, {red, black}), readMeter(fn, b, {red, black}));
}
