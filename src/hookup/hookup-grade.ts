import type {SafetyFinding} from '../bench/bench-view.ts';
import type {HookupCounts} from './hookup-work.ts';

/** Points out of 100 for work at a wiring task, and where they come from. */
export interface HookupGrade {
  readonly points: number;
  /** Right, and how soon? 0 … 50. */
  readonly outcome: number;
  /** Power only on wires that may have it, and safe practice at the bench. 0 … 25. */
  readonly safety: number;
  /** Was the dead circuit read before power? 0 … 10. */
  readonly continuity: number;
  /** Wires used against needed. 0 … 10. */
  readonly wires: number;
  /** 0 … 5. */
  readonly minutes: number;
}

// The weights are our own choice: right the first time counts most, then safety.
export const hookupPoints = {
  outcome: 50,
  safety: 25,
  continuity: 10,
  wires: 10,
  minutes: 5,
} as const;
const correctionCosts = 10;
/** However many corrections it took, right is worth something. */
const leastForRight = 10;
const unsafeCosts = 10;
const dangerCosts = 5;
const cautionCosts = 2;
/** Minutes for reading a task, and for each wire of it (our own choice). */
const readMinutes = 2;
const minutesPerWire = 0.75;

/** Minutes in which a task with so many wires may be done for full points. */
export const parMinutes = (wiresNeeded: number): number =>
  readMinutes + minutesPerWire * wiresNeeded;

/** Grades work at a task. @param wiresNeeded wires of one right answer */
export function gradeHookup(
  counts: HookupCounts,
  safety: readonly Pick<SafetyFinding, 'severity'>[],
  wiresNeeded: number,
): HookupGrade {
  const {solved, corrections, unsafeEnergisings, unreadEnergisings, energisings} = counts;
  const outcome = solved
    ? Math.max(leastForRight, hookupPoints.outcome - correctionCosts * corrections)
    : 0;
  const lost = safety.reduce(
    (sum, {severity}) => sum + (severity === 'danger' ? dangerCosts : cautionCosts),
    unsafeCosts * unsafeEnergisings,
  );
  const read =
    energisings > 0 ? 1 - unreadEnergisings / energisings : counts.deadReadings > 0 ? 1 : 0;
  const share = (part: number, whole: number): number =>
    solved ? Math.min(1, whole > 0 ? part / whole : 1) : 0;
  const rounded = {
    outcome,
    safety: Math.max(0, hookupPoints.safety - lost),
    continuity: Math.round(hookupPoints.continuity * read),
    wires: Math.round(hookupPoints.wires * share(wiresNeeded, counts.wiresUsed)),
    minutes: Math.round(hookupPoints.minutes * share(parMinutes(wiresNeeded), counts.minutes)),
  };
  return {
    points: rounded.outcome + rounded.safety + rounded.continuity + rounded.wires + rounded.minutes,
    ...rounded,
  };
}
