import {inSentence} from '../content/in-sentence.ts';
import type {Finding, TellingReading} from './finding.ts';
import type {HookupInput} from './hookup-task.ts';
import {
  ampsThrough,
  fractionOf,
  voltsAcross,
  works,
  type HookupRun,
  type RuleToRun,
} from './hookup-run.ts';
import {loadsOf, type Load} from './loads.ts';
import {offFraction} from './rule.ts';
import {atRest, type Settled} from './wired-circuit.ts';

/** How one load stood in every combination, sorted by what the rule asked. */
export interface LoadRecord {
  /** Combinations in which it should work and does not. */
  readonly offWhenOn: number[];
  /** Combinations in which it should be off and has more than strays. */
  readonly onWhenOff: number[];
  /** Combinations in which it works. */
  readonly worked: number[];
}

export const emptyRecord = (): LoadRecord => ({offWhenOn: [], onWhenOff: [], worked: []});

/** Files one settled combination. On a board where an armature chatters nothing is as it should be. */
export function file(record: LoadRecord, mask: number, settled: Settled, rule: RuleToRun): void {
  const isSteady = settled.chattering.size === 0;
  const isWorking = isSteady && works(settled, rule);
  if (isWorking) record.worked.push(mask);
  if (rule.isOn(mask)) {
    if (!isWorking) record.offWhenOn.push(mask);
  } else if (!isSteady || fractionOf(settled, rule.load) > offFraction) record.onWhenOff.push(mask);
}

/** The findings about one load from the combinations that went against its rule. */
export function ruleFindings(run: HookupRun, rule: RuleToRun, record: LoadRecord): Finding[] {
  const findings: Finding[] = [];
  if (record.offWhenOn.length > 0) findings.push(offWhenOn(run, rule, record));
  if (record.onWhenOff.length > 0) findings.push(...onWhenOff(run, rule, record));
  return findings;
}

function offWhenOn(run: HookupRun, rule: RuleToRun, record: LoadRecord): Finding {
  const {load, rails} = rule;
  // with everything else closed too, what is left is the load's own trouble
  const mask = record.offWhenOn.reduce((most, each) => (bits(each) > bits(most) ? each : most));
  const settled = run.settle(mask);
  const volts = voltsAcross(settled, load.a, load.b);
  const name = nameOf(load);
  const rail = railsOf(settled, load, rails);
  const base = {
    closed: run.closedIn(mask),
    load: load.id,
    volts,
    reading: {
      meter: 'ac-volts' as const,
      red: reachable(load, 'a'),
      black: reachable(load, 'b'),
      shows: volts,
      should: `${Math.round(load.ratedVolts)} V`,
    },
  };
  const partner = inSeriesWith(run, settled, load);
  if (partner && volts > 0.05 * load.ratedVolts)
    return {
      ...base,
      kind: 'loads-in-series',
      cause: `${name} is in series with ${nameOf(partner)}: ${volts.toFixed(1)} V instead of ${Math.round(load.ratedVolts)} V${load.is === 'coil' ? (settled.chattering.has(load.id) ? ', and the armature chatters' : ', too few to pull in') : ''}.`,
      wires: carrying(run, settled, load),
    };
  const near = touching(run, load);
  if (settled.chattering.size > 0) return {...base, ...restless(run, settled, load, base.reading)};
  if (record.worked.length === 0) {
    const why =
      rail.a === rail.b && rail.a !== undefined
        ? `both its ends stand on ${rails[rail.a]}`
        : rail.a === undefined && rail.b === undefined
          ? 'neither end is fed'
          : load.is === 'motor' && volts > 0.6 * load.ratedVolts
            ? 'it has its volts but does not turn forward: look at the start winding and its capacitor'
            : volts > offFraction * load.ratedVolts
              ? `it has only ${volts.toFixed(1)} V`
              : 'the path to it is open';
    return {...base, kind: 'never-fed', cause: `${name} never works: ${why}.`, wires: near};
  }
  // it works in some combination: find a switch that it should not need
  const extra = run.task.inputs.find(
    ({id}) => (mask & run.bitOf(id)) === 0 && works(run.settle(mask | run.bitOf(id)), rule),
  );
  return {
    ...base,
    kind: 'off-when-on',
    cause: extra
      ? `${name} stays off until ${extra.id} closes too, which it must not depend on.`
      : `${name} stays off in ${record.offWhenOn.length} combination${record.offWhenOn.length > 1 ? 's' : ''} in which it must work.`,
    wires: near,
  };
}

/** A board that never comes to rest: some armature opens its own path, falls back, and closes it again. */
function restless(
  run: HookupRun,
  settled: Settled,
  load: Load,
  reading: TellingReading,
): Pick<Finding, 'kind' | 'cause' | 'wires' | 'reading'> {
  const coils = [...loadsOf(run.task.parts).values()].filter(({id}) => settled.chattering.has(id));
  const names = coils.map(nameOf).join(' and ');
  return {
    kind: 'off-when-on',
    cause: settled.chattering.has(load.id)
      ? `${nameOf(load)} chatters: it pulls in, which takes its own volts away, and drops out again, without end.`
      : `${nameOf(load)} never works for certain: ${names || 'something'} chatters, so the board does not come to rest.`,
    wires: [...new Set([load, ...coils].flatMap((each) => touching(run, each)))],
    reading: {...reading, should: `a steady ${Math.round(load.ratedVolts)} V; here it jumps`},
  };
}

function onWhenOff(run: HookupRun, rule: RuleToRun, record: LoadRecord): Finding[] {
  const findings: Finding[] = [];
  const told = new Set<string>();
  for (const mask of record.onWhenOff) {
    // the one switch whose opening ought to have stopped it
    const culprits = rule.inputs.filter(
      ({id}) => (mask & run.bitOf(id)) === 0 && rule.isOn(mask | run.bitOf(id)),
    );
    for (const input of culprits) {
      if (told.has(input.id)) continue;
      told.add(input.id);
      findings.push(bypassFinding(run, rule, mask, input));
    }
  }
  if (findings.length > 0) return findings;
  const [mask] = record.onWhenOff;
  const settled = run.settle(mask);
  const volts = voltsAcross(settled, rule.load.a, rule.load.b);
  const partner = inSeriesWith(run, settled, rule.load);
  return [
    {
      kind: partner ? 'back-feed' : noCall(run, rule, mask) ? 'on-without-call' : 'on-when-off',
      cause: `${nameOf(rule.load)} has ${volts.toFixed(1)} V ${partner ? `through ${nameOf(partner)} ` : ''}with ${listOf(run.closedIn(mask))} closed, where it must be off.`,
      wires: carrying(run, settled, rule.load),
      closed: run.closedIn(mask),
      load: rule.load.id,
      volts,
      reading: acrossLoad(rule.load, volts),
    },
  ];
}

function bypassFinding(run: HookupRun, rule: RuleToRun, mask: number, input: HookupInput): Finding {
  const {load} = rule;
  const bit = run.bitOf(input.id);
  const settled = run.settle(mask);
  const volts = voltsAcross(settled, load.a, load.b);
  const through = carrying(run, settled, load);
  const partner = inSeriesWith(run, settled, load);
  const [a, b] = contactEnds(run, input.contact);
  const across = voltsAcross(settled, a, b);
  // wires that keep it on while the switch is open, but are not needed once it is closed
  const guilty = through.filter(
    (id) =>
      fractionOf(run.settle(mask, atRest, {open: [id]}), load) <= offFraction &&
      works(run.settle(mask | bit, atRest, {open: [id]}), rule),
  );
  const isCall = input.is === 'call';
  const partial = partner !== undefined && volts < rule.rule.least * load.ratedVolts;
  const how = partial ? `has ${volts.toFixed(1)} V through ${nameOf(partner)}` : 'stays on';
  const base = {
    wires: guilty.length > 0 ? guilty : through,
    closed: run.closedIn(mask),
    load: load.id,
    volts,
  };
  return {
    ...base,
    kind: partial ? 'back-feed' : isCall ? 'on-without-call' : 'safety-bypassed',
    cause: `${nameOf(load)} ${how} while ${input.id} (${inSentence(input.title)}) is open: ${
      partial
        ? 'another load feeds it back'
        : across < 1
          ? 'something bridges it'
          : 'it is not in the only path'
    }.`,
    reading:
      across < 1
        ? {
            meter: 'ac-volts',
            red: a,
            black: b,
            shows: across,
            should: `${Math.round(load.ratedVolts)} V across the open switch`,
          }
        : acrossLoad(load, volts),
  };
}

/**
 * Safeties that open the common side of a load: with the switch open the load is off, yet the end that the call
 * feeds and the other one both stand at the line's volts against the common.
 */
export function commonSideFindings(run: HookupRun, rule: RuleToRun, record: LoadRecord): Finding[] {
  const listed = run.task.forbidden.flatMap((entry) =>
    entry.is === 'common-side' ? entry.switches : [],
  );
  const {load, rails} = rule;
  const findings: Finding[] = [];
  for (const input of rule.inputs) {
    if (!listed.includes(input.id)) continue;
    const bit = run.bitOf(input.id);
    const on = record.worked.find(
      (mask) => rule.isOn(mask) && mask & bit && !rule.isOn(mask & ~bit),
    );
    if (on === undefined) continue;
    const mask = on & ~bit;
    const settled = run.settle(mask);
    if (fractionOf(settled, load) > offFraction) continue;
    const common = rails[1];
    const [p, q] = [load.a, load.b].map((end) => voltsAcross(settled, end, common));
    // between two lines of a 240 V load a dead one floats near half, so more is asked for
    if (Math.min(p, q) < 0.75 * load.ratedVolts) continue;
    findings.push({
      kind: 'common-side',
      cause: `${input.id} opens the common side of ${nameOf(load)}: with it open both ends of the load still stand at ${Math.round(p)} V.`,
      wires: run.wires
        .filter(({from, to}) =>
          contactEnds(run, input.contact).some((end) => end === from || end === to),
        )
        .map(({id}) => id),
      closed: run.closedIn(mask),
      load: load.id,
      volts: q,
      reading: {
        meter: 'ac-volts',
        red: reachable(load, 'b'),
        black: common,
        shows: q,
        should: '0 V on the common side',
      },
    });
  }
  return findings;
}

/** No call of the condition is closed. */
const noCall = (run: HookupRun, {inputs}: RuleToRun, mask: number): boolean =>
  inputs.some(({is}) => is === 'call') &&
  inputs.every(({is, id}) => is !== 'call' || (mask & run.bitOf(id)) === 0);

/** Another load that carries the same amps and takes a share of the volts; none where the amps are strays. */
function inSeriesWith(run: HookupRun, settled: Settled, load: Load): Load | undefined {
  const amps = ampsThrough(settled, load.id);
  if (amps < 0.002) return undefined;
  for (const other of loadsOf(run.task.parts).values()) {
    if (other.part === load.part || other.is === 'primary') continue;
    const theirs = ampsThrough(settled, other.id);
    const share = voltsAcross(settled, other.a, other.b);
    if (
      Math.abs(theirs - amps) < 0.02 * amps &&
      share > 0.1 * other.ratedVolts &&
      share < 0.97 * other.ratedVolts
    )
      return other;
  }
  return undefined;
}

/** Wires of the student that carry at least half of a load's amps. */
const carrying = (run: HookupRun, settled: Settled, load: Load): string[] => {
  const amps = ampsThrough(settled, load.id);
  return run.wires
    .filter(({id}) => amps > 0 && ampsThrough(settled, id) > 0.4 * amps)
    .map(({id}) => id);
};

const touching = (run: HookupRun, {part}: Load): string[] =>
  run.wires
    .filter(({from, to}) => [from, to].some((end) => end.startsWith(`${part.id}.`)))
    .map(({id}) => id);

/** Which rail each end of a load stands on: 0 or 1, undefined where on neither. */
function railsOf(
  settled: Settled,
  load: Load,
  rails: readonly [string, string],
): {a?: 0 | 1; b?: 0 | 1} {
  const near = 0.1 * load.ratedVolts;
  const on = (end: string): 0 | 1 | undefined =>
    voltsAcross(settled, end, rails[0]) < near
      ? 0
      : voltsAcross(settled, end, rails[1]) < near
        ? 1
        : undefined;
  return {a: on(load.a), b: on(load.b)};
}

export function contactEnds(run: HookupRun, contact: string): [string, string] {
  for (const {elements} of run.task.parts)
    for (const element of elements)
      if (element.id === contact && element.is === 'contact') return [element.a, element.b];
  throw new Error(`There is no contact ${contact}.`);
}

/** An end of a load that a lead can be put on: a motor's windings meet inside, behind its common. */
export function reachable(load: Load, end: 'a' | 'b'): string {
  if (!load[end].includes('.~')) return load[end];
  const overload = load.part.elements.find((element) => element.is === 'contact');
  return overload?.is === 'contact' ? overload.a : load[end];
}

const acrossLoad = (load: Load, volts: number) => ({
  meter: 'ac-volts' as const,
  red: reachable(load, 'a'),
  black: reachable(load, 'b'),
  shows: volts,
  should: '0 V',
});

export const nameOf = ({part}: Load): string => `${part.id} (${inSentence(part.title)})`;

const listOf = (ids: readonly string[]): string => (ids.length === 0 ? 'nothing' : ids.join(', '));

function bits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
}
