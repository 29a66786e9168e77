import type {SafetyFinding} from '../bench/bench-view.ts';
import type {Occasion} from '../diagnosis/mastery.ts';
import type {SkillId} from '../diagnosis/skills.ts';
import type {Finding, FindingKind} from './finding.ts';
import {isRemark} from './finding.ts';
import {loadsOf} from './loads.ts';
import type {HookupCounts} from './hookup-work.ts';
import type {HookupTask} from './hookup-task.ts';

/** Work at a task as far as skills are judged by it. */
export interface WorkToJudge {
  readonly task: HookupTask;
  readonly counts: HookupCounts;
  /** Findings of the first verdict; undefined before it. */
  readonly firstFindings: readonly Finding[] | undefined;
  readonly safety: readonly Pick<SafetyFinding, 'id'>[];
}

/** Skills that wiring a part of this kind asks for. */
const byKind: Readonly<Record<string, SkillId>> = {
  transformer: 'transformer-and-fuse',
  fuse: 'transformer-and-fuse',
  relay: 'relays-and-contactors',
  contactor: 'relays-and-contactors',
  sequencer: 'relays-and-contactors',
  solenoid: 'relays-and-contactors',
  'phase-monitor': 'relays-and-contactors',
  'lock-out-relay': 'relays-and-contactors',
  'psc-motor': 'motors-and-capacitors',
  'three-phase-motor': 'motors-and-capacitors',
  capacitor: 'motors-and-capacitors',
  'dual-capacitor': 'motors-and-capacitors',
  'delay-timer': 'boards-and-timing',
  'defrost-board': 'boards-and-timing',
  thermostat: 'boards-and-timing',
};

/** Skills that a finding of the first verdict speaks against, whatever load it is about. */
const byFinding: Readonly<Partial<Record<FindingKind, SkillId>>> = {
  'dead-short': 'transformer-and-fuse',
  'unfused-path': 'transformer-and-fuse',
  'safety-bypassed': 'safeties-in-series',
  'common-side': 'safeties-in-series',
  'on-without-call': 'safeties-in-series',
  'wire-too-small': 'voltage-drop',
  'not-bonded': 'earth-faults',
  joined: 'power-supply',
};

/**
 * Occasions that work at a task was. Reading a ladder is asked for by every task and shown by a first verdict without
 * a finding; the other skills by its parts, and shown where the first verdict has nothing against them. Later verdicts
 * are corrections and show nothing new. Meter safety is judged at the bench once there was power.
 */
export function occasionsOfHookup({
  task,
  counts,
  firstFindings,
  safety,
}: WorkToJudge): Omit<Occasion, 'day'>[] {
  const occasions: Omit<Occasion, 'day'>[] = [];
  if (firstFindings) {
    const wrong = firstFindings.filter((finding) => !isRemark(finding));
    const against = new Set(wrong.flatMap((finding) => skillsAgainst(task, finding)));
    for (const skill of skillsAsked(task))
      occasions.push({
        skill,
        right: skill === 'reading-a-ladder' ? wrong.length === 0 : !against.has(skill),
      });
  }
  if (counts.energisings > 0)
    occasions.push({
      skill: 'meter-safety',
      right:
        counts.unreadEnergisings === 0 &&
        counts.unsafeEnergisings === 0 &&
        !safety.some(({id}) => id.startsWith('resistance-on-live')),
    });
  return occasions;
}

/** Skills that a task asks for, from its parts and its rules. */
export function skillsAsked(task: HookupTask): SkillId[] {
  const loads = loadsOf(task.parts);
  const asked = new Set<SkillId>(['reading-a-ladder']);
  if (task.inputs.some(({is}) => is === 'safety')) asked.add('safeties-in-series');
  if (task.bonded.length > 0) asked.add('earth-faults');
  if (task.protection.some(({thinnest}) => thinnest !== undefined)) asked.add('voltage-drop');
  if (task.forbidden.some(({is}) => is === 'joined')) asked.add('power-supply');
  // a part with nothing left to wire on it asks for nothing
  const wired = new Set(
    task.answer.flatMap(({from, to}) => [from, to].map((end) => end.split('.')[0])),
  );
  for (const {load} of task.rules) wired.add(loads.get(load)!.part.id);
  for (const {id, kind} of task.parts) {
    const skill = byKind[kind];
    if (skill && wired.has(id)) asked.add(skill);
  }
  return [...asked];
}

function skillsAgainst(task: HookupTask, {kind, load}: Finding): SkillId[] {
  const own = byFinding[kind];
  if (own) return [own];
  const part = load === undefined ? undefined : loadsOf(task.parts).get(load)?.part;
  const skill = part && byKind[part.kind];
  return skill ? [skill] : [];
}
