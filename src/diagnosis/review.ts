import {mastered, tracing, type Mastery} from './mastery.ts';
import {skills, type SkillId} from './skills.ts';

/** A skill that is due, and why. */
export interface Review {
  readonly skill: SkillId;
  readonly reason: 'never tried' | 'not yet mastered' | 'due for review';
  readonly known: number;
}

/**
 * Days until a skill is due again: each right occasion in a row doubles the interval, up to a school term. Growing
 * intervals are common practice of spaced review, no source; doubling is our own choice.
 */
export function intervalDays(streak: number): number {
  return Math.min(64, 2 ** Math.max(0, streak - 1));
}

/**
 * Skills to practise next, most urgent first: what is weakest of what has been begun, then what is due for review,
 * then what has never been tried. What is mastered and not due is left out.
 */
export function reviewNext(mastery: readonly Mastery[], today: number): Review[] {
  const known = new Map(mastery.map((each) => [each.skill, each]));
  const begun: Review[] = [];
  const due: Review[] = [];
  const fresh: Review[] = [];
  for (const {id} of skills) {
    const found = known.get(id);
    if (!found) fresh.push({skill: id, reason: 'never tried', known: tracing.initial});
    else if (found.known < mastered)
      begun.push({skill: id, reason: 'not yet mastered', known: found.known});
    else if (today - (found.lastDay ?? today) >= intervalDays(found.streak))
      due.push({skill: id, reason: 'due for review', known: found.known});
  }
  begun.sort((a, b) => a.known - b.known);
  return [...begun, ...due, ...fresh];
}

/** What stands between a student and the live laboratory. */
export interface LabReadiness {
  readonly ready: boolean;
  readonly proved: readonly SkillId[];
  readonly missing: readonly SkillId[];
}

/** Nobody goes to live equipment on less than these. The instructor decides; this only lists what was shown. */
export const neededForTheLab: readonly SkillId[] = [
  'meter-safety',
  'lock-out',
  'reading-a-ladder',
  'power-supply',
  'transformer-and-fuse',
  'safeties-in-series',
  'voltage-drop',
];

/** Compares what is mastered with what the laboratory asks for. */
export function labReadiness(mastery: readonly Mastery[]): LabReadiness {
  const proved = mastery.filter(({known}) => known >= mastered).map(({skill}) => skill);
  const missing = neededForTheLab.filter((skill) => !proved.includes(skill));
  return {ready: missing.length === 0, proved, missing};
}
