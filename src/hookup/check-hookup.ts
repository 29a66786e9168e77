import {bondFindings, idleWireFindings, joinedFindings} from './earth-check.ts';
import {byDanger, isRemark, type Finding} from './finding.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';
import {HookupRun} from './hookup-run.ts';
import {protectionFindings, wireSizeFindings} from './protection-check.ts';
import {
  commonSideFindings,
  emptyRecord,
  file,
  ruleFindings,
  type LoadRecord,
} from './rule-check.ts';
import {isShorted, shortFinding, sourcesOf} from './short-check.ts';
import {trialFindings} from './trial-check.ts';

export interface HookupReport {
  readonly verdict: 'right' | 'wrong';
  /** Most dangerous first; a right hookup may have remarks (spare and dangling wires). */
  readonly findings: readonly Finding[];
  readonly combinations: number;
  /** How the combinations were chosen. */
  readonly method: string;
  /**
   * What each load does in every combination, one character a combination (1 works, 0 off, ~ between, ≈ chatters), by load:
   * two hookups with the same are the same, if what protects them is the same.
   */
  readonly loadStates: Readonly<Record<string, string>>;
}

/**
 * Judges a student's wires against a task by simulation: every combination of its switches (or path and cut sets
 * beyond the limit), its trials, its protection, bonding and wire sizes. Nothing is read off the shape of the wiring
 * but idle wires; a hookup that differs from the drawing and is electrically equal is right.
 */
export function checkHookup(task: HookupTask, wires: readonly HookupWire[]): HookupReport {
  const run = new HookupRun(task, wires);
  const findings: Finding[] = [];
  const sources = sourcesOf(run);
  const records = new Map<string, LoadRecord>(
    run.rules.map(({rule}) => [rule.statement, emptyRecord()]),
  );
  const states = new Map<string, string[]>(run.rules.map(({load}) => [load.id, []]));
  let shorted = false;
  for (const mask of run.combinations.masks) {
    const settled = run.settle(mask);
    for (const rule of run.rules) {
      const record = records.get(rule.rule.statement)!;
      const before = record.worked.length + record.onWhenOff.length;
      file(record, mask, settled, rule);
      const isWorking = record.worked.at(-1) === mask;
      const isBetween = !isWorking && record.worked.length + record.onWhenOff.length > before;
      states
        .get(rule.load.id)!
        .push(settled.chattering.size > 0 ? '≈' : isWorking ? '1' : isBetween ? '~' : '0');
    }
    if (shorted) continue;
    const source = isShorted(settled, sources);
    if (!source) continue;
    shorted = true;
    findings.push(shortFinding(run, mask, settled, source));
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
    verdict: findings.every(isRemark) ? 'right' : 'wrong',
    findings: byDanger(oncePerCause(findings)),
    combinations: run.combinations.masks.length,
    method: run.combinations.sentence,
    loadStates: Object.fromEntries([...states].map(([load, each]) => [load, each.join('')])),
  };
}

/** Two hookups are the same when every load does the same in every combination and the same protection holds. */
export function sameHookup(p: HookupReport, q: HookupReport): boolean {
  const signature = ({loadStates, findings}: HookupReport): string =>
    JSON.stringify([
      loadStates,
      findings
        .filter((finding) => finding.kind === 'unfused-path' || finding.kind === 'dead-short')
        .map(({kind, load}) => `${kind} ${load ?? ''}`)
        .sort(),
    ]);
  return signature(p) === signature(q);
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
