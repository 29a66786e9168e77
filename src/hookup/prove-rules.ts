import {
  combinationLimit,
  coverCombinations,
  eachCombination,
  type Cube,
  type Proof,
  type Run,
} from './combinations.ts';
import {findIn, type CubeQuestion} from './condition.ts';
import {fractionOf, voltsAcross, type HookupRun, type RuleToRun} from './hookup-run.ts';
import {thresholdMargin} from './idle-switches.ts';
import {offFraction} from './rule.ts';
import type {Source} from './short-check.ts';
import type {Settled} from './wired-circuit.ts';

/** Runs allowed beyond the limit: twice as many as up to it, so that a check stays within some seconds. */
const mostRuns = 2 ** (combinationLimit + 1);

export interface ProofSettings {
  /** Up to this many switches every combination is run one by one. */
  readonly limit: number;
  readonly mostRuns: number;
}

export const usualSettings: ProofSettings = {limit: combinationLimit, mostRuns};

/**
 * Runs a hookup until every combination of its switches is known: one by one up to the limit, by cubes beyond. Tells
 * each run to `see` while it is settled.
 */
export function proveRules(
  run: HookupRun,
  sources: readonly Source[],
  see: (each: Run<Settled>) => void,
  {limit, mostRuns: most}: ProofSettings = usualSettings,
): Proof {
  const n = run.task.inputs.length;
  if (n <= limit) {
    for (const each of eachCombination(n, (mask) => run.settle(mask))) see(each);
    return {
      complete: true,
      runs: 2 ** n,
      sentence: `All ${2 ** n} combinations of ${n} switches were run.`,
    };
  }
  const settle = (mask: number) => {
    const settled = run.settleWithCare(mask);
    return {settled, care: isTight(run, settled, sources) ? run.every : settled.care & run.every};
  };
  let runs = 0;
  let complete = true;
  for (const each of coverCombinations(n, settle, most)) {
    if (!each) complete = false;
    else {
      runs++;
      see(each);
    }
  }
  const all = `${n} switches have ${2 ** n} combinations`;
  return {
    complete,
    runs,
    sentence: complete
      ? `${all}. ${runs} runs cover them all: each stands for every combination that differs only in switches without volts across them or amps through them.`
      : `${all}, and ${runs} runs did not cover them all: too many switches act at once on this board. What was run is told below; the rest is not proved. Wire safeties in series, or split the task into boards of at most ${limit} switches.`,
  };
}

/** Whether a load or a source is so near to what it is judged by that strays might decide. */
function isTight(run: HookupRun, settled: Settled, sources: readonly Source[]): boolean {
  const near = (value: number, threshold: number): boolean =>
    Math.abs(value - threshold) < thresholdMargin;
  return (
    run.rules.some(({load, rule}) => {
      const fraction = fractionOf(settled, load);
      return near(fraction, rule.least) || near(fraction, offFraction);
    }) ||
    sources.some(({a, b, volts, collapsed}) => near(voltsAcross(settled, a, b) / volts, collapsed))
  );
}

/**
 * Combinations of a cube that speak for it in the findings about one load: for each switch of the rule one in which
 * this switch alone decides, and one in which the load should work and one in which it should be off, where there are.
 */
export function pointsOf(run: HookupRun, rule: RuleToRun, cube: Cube): number[] {
  const {isOn, isOnIn, inputs} = rule;
  if (cube.care === run.every) return [cube.mask];
  const bits = inputs.map(({id}) => run.bitOf(id));
  const isOff: CubeQuestion = (each) => {
    const value = isOnIn(each);
    return value === undefined ? undefined : !value;
  };
  const found = new Set<number>();
  const add = (mask: number | undefined): void => {
    if (mask !== undefined) found.add(mask);
  };
  for (const bit of bits) {
    const decides: CubeQuestion = ({mask, care}) => {
      const closed = isOnIn({mask: mask | bit, care: care | bit});
      const opened = isOnIn({mask: mask & ~bit, care: care | bit});
      if (closed === false || opened === true) return false;
      return closed === true && opened === false ? true : undefined;
    };
    for (const position of [bit, 0]) {
      if ((cube.care & bit) !== 0 && (cube.mask & bit) !== position) continue;
      const part = {mask: (cube.mask & ~bit) | position, care: cube.care | bit};
      add(findIn(decides, part, bits));
    }
  }
  if (![...found].some(isOn)) add(findIn(isOnIn, cube, bits));
  if ([...found].every(isOn)) add(findIn(isOff, cube, bits));
  return [...found];
}
