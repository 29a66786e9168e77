import {z} from 'zod';
import {difficulties, type Difficulty} from '../faults/difficulty.ts';
import {seededRandom} from '../parts/seeded-random.ts';
import type {FaultDifficulty} from './difficulty-level.ts';

/** One call of a set. */
export interface PlannedCall {
  readonly unit: string;
  /** Catalogue id of what is hidden. */
  readonly fault: string;
  /** What the customer says. */
  readonly complaint: string;
}

/** Calls that an instructor has put together: plain data, to be kept, handed on, and opened by a class. */
export interface CallSet {
  readonly format: 'rungbench-set';
  readonly version: 1;
  /** Random id made by the page. */
  readonly id: string;
  readonly title: string;
  readonly calls: readonly PlannedCall[];
}

/** A fault as it is listed for planning. */
export interface PlanLine extends FaultDifficulty {
  readonly unit: string;
  readonly name: string;
}

/** What a list for planning is narrowed to; all that is given must hold. */
export interface PlanFilter {
  readonly difficulty?: Difficulty;
  readonly section?: string;
  readonly complaint?: string;
  readonly words?: string;
}

export const mostCalls = 40;

/** The faults that a customer would notice and the filter lets through, the quickest to find first. */
export function planLines(all: readonly PlanLine[], filter: PlanFilter): PlanLine[] {
  const words = (filter.words ?? '').toLowerCase().split(/\s+/).filter(Boolean);
  return all
    .filter(
      (line) =>
        !line.silent &&
        (!filter.difficulty || line.difficulty === filter.difficulty) &&
        (!filter.section || line.section === filter.section) &&
        (!filter.complaint || line.complaint === filter.complaint) &&
        words.every((word) => `${line.fault} ${line.name}`.toLowerCase().includes(word)),
    )
    .sort((a, b) => a.minutes - b.minutes || a.readings - b.readings);
}

/** The complaints among lines, the commonest first, each with how many faults it fits. */
export function complaintsOf(
  lines: readonly PlanLine[],
): {readonly complaint: string; readonly faults: number}[] {
  const counts = new Map<string, number>();
  for (const {complaint, silent} of lines)
    if (!silent) counts.set(complaint, (counts.get(complaint) ?? 0) + 1);
  return [...counts]
    .map(([complaint, faults]) => ({complaint, faults}))
    .sort((a, b) => b.faults - a.faults || (a.complaint < b.complaint ? -1 : 1));
}

/**
 * Fills a set up to a number of calls out of the lines given: each time from the section that the set has least of, no
 * fault twice, and ways of failing, complaints and levels as mixed as there are. Same seed, same set. The whole is put in order of the
 * minutes that the planner needs, so that a class begins with what is quick to find.
 */
export function fillSet(
  chosen: readonly PlannedCall[],
  lines: readonly PlanLine[],
  count: number,
  seed: number,
): PlannedCall[] {
  const random = seededRandom(seed);
  const known = new Map(lines.map((line) => [key(line), line]));
  const calls = [...chosen];
  let left = lines.filter((line) => !line.silent && !calls.some((call) => key(call) === key(line)));
  while (calls.length < count && left.length) {
    const used = (of: (line: PlanLine) => string, value: string): number =>
      calls.filter((call) => {
        const line = known.get(key(call));
        return line !== undefined && of(line) === value;
      }).length;
    const wear = (line: PlanLine): number =>
      100 * used((each) => each.section, line.section) +
      20 * used(modeOf, modeOf(line)) +
      10 * used((each) => each.complaint, line.complaint) +
      used((each) => each.difficulty, line.difficulty);
    const least = Math.min(...left.map(wear));
    const best = left.filter((line) => wear(line) === least);
    const line = best[Math.floor(random() * best.length)];
    calls.push(callOf(line));
    left = left.filter((each) => each !== line);
  }
  const minutes = (call: PlannedCall): number => known.get(key(call))?.minutes ?? 0;
  return calls.sort((a, b) => minutes(a) - minutes(b));
}

/** The way of failing, without the part: `open`, `coil-open`, `short`. */
const modeOf = ({fault}: PlanLine): string => fault.slice(fault.lastIndexOf(':') + 1);

export const callOf = ({unit, fault, complaint}: PlanLine): PlannedCall => ({
  unit,
  fault,
  complaint,
});

/** A fault among all units. */
export const key = ({unit, fault}: Pick<PlannedCall, 'unit' | 'fault'>): string =>
  `${unit} ${fault}`;

const text = z.string().min(1).max(500);

const schema = z.strictObject({
  format: z.literal('rungbench-set'),
  version: z.literal(1),
  id: text,
  title: z.string().max(200),
  calls: z
    .array(z.strictObject({unit: text, fault: text, complaint: z.string().max(500)}))
    .max(mostCalls),
}) satisfies z.ZodType<CallSet>;

export const callSetFile = (set: CallSet): string => `${JSON.stringify(set, null, 2)}\n`;

/** Reads a set, or says what is wrong with the file and how to mend it. */
export function readCallSet(file: string): {readonly set: CallSet} | {readonly reason: string} {
  let value: unknown;
  try {
    value = JSON.parse(file);
  } catch {
    return {reason: 'This is not a whole JSON file. It may be cut short: save the set again.'};
  }
  const parsed = schema.safeParse(value);
  if (parsed.success) return {set: parsed.data};
  const [issue] = parsed.error.issues;
  const place = issue.path.map((step) =>
    typeof step === 'number' ? `no. ${step + 1}` : String(step),
  );
  return {
    reason: `This file is no set of calls as this Rungbench reads it, at ${place.join(', ') || 'its head'}: ${issue.message}. Save the set again, or mend it there.`,
  };
}

/** How many calls of each level. */
export function levelsIn(
  calls: readonly PlannedCall[],
  lines: readonly PlanLine[],
): Readonly<Record<Difficulty, number>> {
  const known = new Map(lines.map((line) => [key(line), line.difficulty]));
  const of = (level: Difficulty): number =>
    calls.filter((call) => known.get(key(call)) === level).length;
  const [easy, medium, hard] = difficulties.map(of);
  return {easy, medium, hard};
}
