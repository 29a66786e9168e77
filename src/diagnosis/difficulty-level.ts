import type {Difficulty} from '../faults/difficulty.ts';
import type {Section} from './fault-section.ts';

/** How hard a fault is to find, from the customer's words alone. */
export interface FaultDifficulty {
  readonly fault: string;
  readonly section: Section;
  readonly complaint: string;
  /** No customer would notice it, so there is no call to find it from. */
  readonly silent: boolean;
  /** Readings and minutes that the planner takes; 0 where it is silent. */
  readonly readings: number;
  readonly minutes: number;
  /** Other faults with the same complaint. */
  readonly lookAlikes: number;
  readonly difficulty: Difficulty;
}

// Where a class of beginners finds its feet, and where practised hands need a plan: our own choice.
const easyUpToReadings = 3;
const easyUpToMinutes = 8;
const mediumUpToReadings = 5;
const mediumUpToMinutes = 15;

/** Easy, medium or hard, by what the planner needs. */
export function levelOf(readings: number, minutes: number): Difficulty {
  if (readings <= easyUpToReadings && minutes <= easyUpToMinutes) return 'easy';
  return readings <= mediumUpToReadings && minutes <= mediumUpToMinutes ? 'medium' : 'hard';
}

/** How hard each fault that a customer notices is, by its id; undefined for the others, from which no call comes. */
export function levelsOf(
  all: readonly FaultDifficulty[],
): (fault: string) => Difficulty | undefined {
  const levels = new Map(
    all.filter(({silent}) => !silent).map(({fault, difficulty}) => [fault, difficulty]),
  );
  return (fault) => levels.get(fault);
}
