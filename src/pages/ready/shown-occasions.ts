import type {Occasion} from '../../diagnosis/mastery.ts';
import {skills, type SkillId} from '../../diagnosis/skills.ts';
import type {AttemptHead, KeptHookup} from '../../store/attempts.ts';

const skillIds: ReadonlySet<string> = new Set(skills.map(({id}) => id));

/** Whole days of this person's own calendar. */
export function dayOf(iso: string): number {
  const date = new Date(iso);
  return Math.floor(Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) / 86_400_000);
}

/** Whether a call has been finished, so that it shows something. */
export const isFinished = ({purpose, stage}: AttemptHead): boolean =>
  purpose === 'call' && stage !== 'working';

/** Every occasion to show a skill on this device, oldest first: finished calls that have been judged, and wiring tasks. */
export function shownOccasions(
  heads: readonly AttemptHead[],
  hookups: readonly KeptHookup[],
): Occasion[] {
  const dated = [
    ...heads
      .filter(isFinished)
      .map(({touchedAt, judged}) => ({touchedAt, occasions: judged?.occasions ?? []})),
    ...hookups.map(({touchedAt, result}) => ({touchedAt, occasions: occasionsIn(result)})),
  ];
  return dated
    .sort((a, b) => (a.touchedAt < b.touchedAt ? -1 : 1))
    .flatMap(({touchedAt, occasions}) =>
      occasions
        .filter(({skill}) => skillIds.has(skill))
        .map(({skill, right}) => ({skill: skill as SkillId, right, day: dayOf(touchedAt)})),
    );
}

/** What a kept wiring task showed; nothing where its record is of another release. */
function occasionsIn(result: string): readonly {skill: string; right: boolean}[] {
  try {
    const {occasions} = JSON.parse(result) as {occasions?: unknown};
    return Array.isArray(occasions) ? (occasions as {skill: string; right: boolean}[]) : [];
  } catch {
    return [];
  }
}
