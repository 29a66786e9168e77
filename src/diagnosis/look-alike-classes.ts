import type {Unit} from '../content/unit.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import {Groups} from '../faults/nets.ts';
import {lookAlike} from './look-alike.ts';
import type {Hypothesis} from './hypotheses.ts';
import {comparedStates} from './compared-states.ts';
import {OutcomeScale} from './outcome-scale.ts';
import {outcomeTables} from './outcome-table.ts';
import {sensiblePairs} from './places.ts';
import {sightKey} from './suspects.ts';

/**
 * Puts hypotheses that no reading on the unit tells apart into classes: no pair of points, no meter function, no mode
 * of the unit, locked out, and with the wires lifted at which they sit. Naming any member of a class is right.
 *
 * What is seen, heard and read in every mode is compared first, as whole columns of outcomes; only what is alike in
 * all of it is compared reading by reading by {@link lookAlike}. In the order of the hypotheses given.
 */
export function lookAlikeClasses(unit: Unit, hypotheses: readonly Hypothesis[]): Hypothesis[][] {
  const groups = new Groups();
  const heads: Hypothesis[][] = [];
  for (const hypothesis of hypotheses) {
    const alike = heads.filter((members) => areAlike(unit, members[0], hypothesis));
    for (const members of alike) groups.join(hypothesis.id, members[0].id);
    if (alike.length === 0) heads.push([hypothesis]);
  }
  const classes = new Map<string, Hypothesis[]>();
  for (const hypothesis of hypotheses) {
    const name = groups.of(hypothesis.id);
    const members = classes.get(name);
    if (members) members.push(hypothesis);
    else classes.set(name, [hypothesis]);
  }
  return [...classes.values()];
}

/** Whether no reading on the unit tells two hypotheses apart. */
export function areAlike(unit: Unit, a: Hypothesis, b: Hypothesis): boolean {
  if (a.id === b.id) return true;
  const [left, right] = [signatureOf(unit, a), signatureOf(unit, b)];
  return (
    left.sights === right.sights &&
    sameOutcomes(left.outcomes, right.outcomes) &&
    lookAlike(unit, a.faults, b.faults)
  );
}

/** All that a unit shows in all its modes. */
interface Signature {
  readonly sights: string;
  readonly outcomes: Uint16Array;
}

const known = new WeakMap<Unit, Map<string, Signature>>();

function signatureOf(unit: Unit, hypothesis: Hypothesis): Signature {
  let signatures = known.get(unit);
  if (!signatures) known.set(unit, (signatures = new Map()));
  let signature = signatures.get(hypothesis.id);
  if (!signature) signatures.set(hypothesis.id, (signature = signatureIn(unit, hypothesis)));
  return signature;
}

function signatureIn(unit: Unit, {faults}: Hypothesis): Signature {
  const sights: string[] = [];
  const columns: Uint16Array[] = [];
  let pairs: ReturnType<typeof sensiblePairs> | undefined;
  for (const {operating, compare} of comparedStates(unit, faults)) {
    sights.push(sightKey(operating.observations()));
    const points = operating.probePoints();
    pairs ??= sensiblePairs(unit, points);
    const functions: MeterFunction[] =
      compare === 'isolated' ? ['ohms'] : ['ac-volts', 'clamp-amps'];
    for (const {outcomes} of outcomeTables(functions, [operating], points, {pairs}))
      columns.push(outcomes);
  }
  const outcomes = new Uint16Array(columns.reduce((sum, {length}) => sum + length, 0));
  let at = 0;
  for (const column of columns) {
    outcomes.set(column, at);
    at += column.length;
  }
  return {sights: sights.join('\n'), outcomes};
}

/** One step of rounding on each side is allowed for: what is really apart is found out reading by reading. */
function sameOutcomes(a: Uint16Array, b: Uint16Array): boolean {
  for (let i = 0; i < a.length; i += 1)
    if (Math.abs(a[i] - b[i]) > OutcomeScale.apart + 1) return false;
  return true;
}
