import type {SkillId} from './skills.ts';

/**
 * Bayesian knowledge tracing: A. T. Corbett and J. R. Anderson, Knowledge Tracing: Modeling the Acquisition of
 * Procedural Knowledge, User Modeling and User-Adapted Interaction 4 (1995). A skill is known or not; each occasion
 * is right or wrong, with a chance to slip though it is known and to guess though it is not; after each occasion it
 * may have been learnt. Nothing is forgotten within the model; review brings skills back in time.
 */
export interface TracingParameters {
  /** Known before the first occasion. */
  readonly initial: number;
  /** Learnt at one occasion. */
  readonly learn: number;
  /** Right though not known. */
  readonly guess: number;
  /** Wrong though known. */
  readonly slip: number;
}

/**
 * Our own choice within the usual bounds of the model (guess at most 0.3, slip at most 0.1). A call with hundreds of
 * suspects is hardly guessed; a slip of hand or eye happens.
 */
export const tracing: TracingParameters = {initial: 0.2, learn: 0.2, guess: 0.15, slip: 0.1};

/** From here on a skill counts as mastered: the limit that is usual with the model. */
export const mastered = 0.95;

/** How one occasion to show a skill went. */
export interface Occasion {
  readonly skill: SkillId;
  readonly right: boolean;
  /** Days on some calendar of whole numbers; the page's own, never the simulation's. */
  readonly day: number;
}

/** What is known of one skill. */
export interface Mastery {
  readonly skill: SkillId;
  /** Probability that it is known, 0 … 1. */
  readonly known: number;
  readonly occasions: number;
  readonly right: number;
  readonly lastDay?: number;
  /** Right occasions since the last wrong one. */
  readonly streak: number;
}

/** One step of the tracing: what is known after an occasion. */
export function trace(known: number, right: boolean, p: TracingParameters = tracing): number {
  const evidence = right
    ? (known * (1 - p.slip)) / (known * (1 - p.slip) + (1 - known) * p.guess)
    : (known * p.slip) / (known * p.slip + (1 - known) * (1 - p.guess));
  return evidence + (1 - evidence) * p.learn;
}

/** Mastery of every skill that was ever called for, in the order in which it first was. */
export function masteryOf(
  occasions: readonly Occasion[],
  p: TracingParameters = tracing,
): Mastery[] {
  const skills = new Map<SkillId, Mastery>();
  for (const {skill, right, day} of occasions) {
    const before: Mastery = skills.get(skill) ?? {
      skill,
      known: p.initial,
      occasions: 0,
      right: 0,
      streak: 0,
    };
    skills.set(skill, {
      skill,
      known: trace(before.known, right, p),
      occasions: before.occasions + 1,
      right: before.right + (right ? 1 : 0),
      streak: right ? before.streak + 1 : 0,
      lastDay: day,
    });
  }
  return [...skills.values()];
}
