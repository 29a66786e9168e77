import {bondFindings, idleWireFindings, joinedFindings} from './earth-check.ts';
import {byDanger, isRemark, type Finding} from './finding.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';
import {fractionOf, HookupRun, works, type RuleToRun} from './hookup-run.ts';
import type {Cube} from './combinations.ts';
import {pointsOf, proveRules, usualSettings, type ProofSettings} from './prove-rules.ts';
import {protectionFindings, wireSizeFindings} from './protection-check.ts';
import {
  commonSideFindings,
  emptyRecord,
  file,
  ruleFindings,
  type LoadRecord,
} from './rule-check.ts';
import {offFraction} from './rule.ts';
import {isShorted, shortFinding, sourcesOf, type Source} from './short-check.ts';
import {trialFindings} from './trial-check.ts';
import type {Settled} from './wired-circuit.ts';

export interface HookupReport {
  /** `not-proved`: nothing wrong was found, but not every combination could be looked at; `method` says why. */
  readonly verdict: 'right' | 'wrong' | 'not-proved';
  /** Most dangerous first; a right hookup may have remarks (spare and dangling wires). */
  readonly findings: readonly Finding[];
  /** Runs of the board: one a combination, or fewer that cover them all. */
  readonly combinations: number;
  /** How every combination was looked at. */
  readonly method: string;
  /**
   * What each load does in every combination, one character a run (1 works, 0 off, ~ between, ≈ chatters), by load:
   * two hookups with the same are the same, if what protects them is the same.
   */
  readonly loadStates: Readonly<Record<string, string>>;
  /** What each run stands for where that is more than its own combination: as many as there are runs. */
  readonly cubes?: readonly Cube[];
}

/**
 * Judges a student's wires against a task by simulation: every combination of its switches (by cubes of them beyond the
 * limit), its trials, its protection, bonding and wire sizes. Nothing is read off the shape of the wiring but idle
 * wires; a hookup that differs from the drawing and is electrically equal is right.
 */
export function checkHookup(
  task: HookupTask,
  wires: readonly HookupWire[],
  settings: ProofSettings = usualSettings,
): HookupReport {
  const run = new HookupRun(task, wires);
  const findings: Finding[] = [];
  const sources = sourcesOf(run);
  const records = new Map<string, LoadRecord>(
    run.rules.map(({rule}) => [rule.statement, emptyRecord()]),
  );
  const states = new Map<string, string[]>(run.rules.map(({load}) => [load.id, []]));
  const cubes: Cube[] = [];
  let shorted: {mask: number; source: Source} | undefined;
  const proof = proveRules(
    run,
    sources,
    ({mask, care, settled}) => {
      cubes.push({mask, care});
      for (const rule of run.rules) {
        const record = records.get(rule.rule.statement)!;
        const points = pointsOf(run, rule, {mask, care});
        for (const point of points) file(record, point, settled, rule);
        states.get(rule.load.id)!.push(stateOf(settled, rule, points));
      }
      const source = shorted ? undefined : isShorted(settled, sources);
      if (source) shorted = {mask, source};
    },
    settings,
  );
  if (shorted) {
    const {mask, source} = shorted;
    findings.push(shortFinding(run, mask, run.settle(mask), source));
  }
  for (const rule of run.rules) {
    const record = records.get(rule.rule.statement)!;
    // behind a short every load goes wrong: one cause, one message
    if (!shorted || record.worked.length > 0) findings.push(...ruleFindings(run, rule, record));
    findings.push(...commonSideFindings(run, rule, record));
  }
  const workedIn = new Map(
    run.rules.map(({rule, load, isOn}) => {
      const {worked} = records.get(rule.statement)!;
      // first where it should work: elsewhere it may be fed by what is to blame
      return [load.id, [...worked.filter(isOn), ...worked]];
    }),
  );
  findings.push(
    ...protectionFindings(run, workedIn),
    ...joinedFindings(run),
    ...wireSizeFindings(run),
    ...bondFindings(run),
    ...idleWireFindings(run),
  );
  if (!shorted) findings.push(...trialFindings(run));
  return {
    verdict: findings.some((finding) => !isRemark(finding))
      ? 'wrong'
      : proof.complete
        ? 'right'
        : 'not-proved',
    findings: byDanger(oncePerCause(findings)),
    combinations: proof.runs,
    method: proof.sentence,
    loadStates: Object.fromEntries([...states].map(([load, each]) => [load, each.join('')])),
    ...(run.task.inputs.length > settings.limit ? {cubes} : {}),
  };
}

/** `~` is told only where the rule wants the load off in all that the run stands for. */
function stateOf(settled: Settled, rule: RuleToRun, points: readonly number[]): string {
  if (settled.chattering.size > 0) return '≈';
  if (works(settled, rule)) return '1';
  return !points.some(rule.isOn) && fractionOf(settled, rule.load) > offFraction ? '~' : '0';
}

/** Two hookups are the same when every load does the same in every combination and the same protection holds. */
export function sameHookup(p: HookupReport, q: HookupReport): boolean {
  const protection = ({findings}: HookupReport): string =>
    JSON.stringify(
      findings
        .filter((finding) => finding.kind === 'unfused-path' || finding.kind === 'dead-short')
        .map(({kind, load}) => `${kind} ${load ?? ''}`)
        .sort(),
    );
  return protection(p) === protection(q) && sameStates(p, q);
}

/** Runs of two hookups that stand for a common combination must have left every load alike. */
function sameStates(p: HookupReport, q: HookupReport): boolean {
  const loads = Object.keys(p.loadStates);
  const {cubes: theirs} = q;
  if (!p.cubes || !theirs) return loads.every((load) => p.loadStates[load] === q.loadStates[load]);
  return p.cubes.every((mine, i) =>
    theirs.every(
      (other, k) =>
        ((mine.mask ^ other.mask) & mine.care & other.care) !== 0 ||
        loads.every((load) => p.loadStates[load][i] === q.loadStates[load][k]),
    ),
  );
}

/** Loads that stand behind one wrong place all go wrong: the first of them is told. */
function oncePerCause(findings: readonly Finding[]): Finding[] {
  const first = new Map<string, Finding>();
  for (const finding of findings) {
    const {kind, wires, closed, reading} = finding;
    const key = JSON.stringify([
      kind,
      [...wires].sort(),
      closed,
      kind === 'safety-bypassed' || kind === 'on-without-call' ? reading.red : finding.load,
    ]);
    if (!first.has(key)) first.set(key, finding);
  }
  return [...first.values()];
}
