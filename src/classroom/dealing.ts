import {complaintOf} from '../bench/complaint.ts';
import {seededRandom} from '../parts/seeded-random.ts';
import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Difficulty} from '../faults/difficulty.ts';
import type {Fault} from '../faults/fault.ts';

/** What is hidden for one student. */
export interface Dealt {
  readonly faults: readonly string[];
  readonly complaint: string;
}

/**
 * A fault of one difficulty for each of `students` students, all different as long as the unit has enough that a
 * customer would notice; after that they come round again, so that two neighbours seldom have the same.
 *
 * @param levelOf how hard each fault is; undefined where no customer notices it
 * @throws Error where the unit has no fault of that difficulty with a complaint.
 */
export function dealDifferent(
  unit: Unit,
  levelOf: (fault: string) => Difficulty | undefined,
  difficulty: Difficulty,
  students: number,
  seed: number,
): Dealt[] {
  const faults = shuffled(
    catalogue(unit).filter(({id}) => levelOf(id) === difficulty),
    seededRandom(seed),
  );
  const deals: Dealt[] = [];
  for (const fault of faults) {
    if (deals.length === students) break;
    const {text, silent} = complaintOf(unit, [fault]);
    if (!silent) deals.push({faults: [fault.id], complaint: text});
  }
  const different = deals.length;
  if (different === 0 && students > 0) {
    throw new Error(
      `The ${unit.title} has no ${difficulty} fault that a customer would notice. Choose another difficulty.`,
    );
  }
  while (deals.length < students) deals.push(deals[deals.length - different]);
  return deals;
}

/** Fisher–Yates (Durstenfeld's form). */
function shuffled(faults: readonly Fault[], random: () => number): Fault[] {
  const all = [...faults];
  for (let i = all.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [all[i], all[j]] = [all[j], all[i]];
  }
  return all;
}

/** Who hides for whom: in pairs, each for the other; with an odd number the last three go round. */
export function pairUp<T>(students: readonly T[]): {readonly by: T; readonly for: T}[] {
  if (students.length < 2) return [];
  const even = students.length - (students.length % 2 === 1 ? 3 : 0);
  const pairs: {by: T; for: T}[] = [];
  for (let i = 0; i < even; i += 2) {
    pairs.push({by: students[i], for: students[i + 1]}, {by: students[i + 1], for: students[i]});
  }
  const ring = students.slice(even);
  ring.forEach((by, i) => pairs.push({by, for: ring[(i + 1) % ring.length]}));
  return pairs;
}
