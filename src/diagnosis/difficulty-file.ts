import type {Unit} from '../content/unit.ts';
import {levelOf, type FaultDifficulty} from './difficulty-level.ts';
import {sections} from './fault-section.ts';

/**
 * Difficulty of every fault of a shipped unit, worked out beforehand because a large unit takes tens of seconds:
 * `content/difficulty/<unit>.json`.
 */
export interface DifficultyFile {
  readonly unit: string;
  readonly version: typeof difficultyVersion;
  /** {@link behaviourHash} of the unit that it was worked out for. */
  readonly hash: string;
  /** Each complaint once; a fault names it by its index, −1 where no customer would notice. */
  readonly complaints: readonly string[];
  readonly faults: Readonly<Record<string, DifficultyNumbers>>;
}

/** Section (index), complaint (index), readings, minutes, other faults with the same complaint. */
type DifficultyNumbers = readonly [
  section: number,
  complaint: number,
  readings: number,
  minutes: number,
  lookAlikes: number,
];

/** Raised when the way of working it out changes, so that older files count as stale. */
export const difficultyVersion = 2;

/** What to do about a file that no longer fits its unit. */
export const mendDifficulty = 'npm run difficulty';

/** Words for the silent: what an instructor may write on such a call. */
const silentComplaint = -1;

/**
 * Hash of everything about a unit that the difficulty of its faults depends on, part data and ways to fail included:
 * FNV-1a from both ends, 64 bits as two halves.
 */
export function behaviourHash({parts, wires, runs, enclosures, sequences, plant, circuits}: Unit) {
  const text = JSON.stringify([
    difficultyVersion,
    parts,
    wires,
    runs,
    enclosures,
    sequences,
    plant,
    circuits,
  ]);
  let high = 0x811c9dc5;
  let low = 0x01000193;
  for (let i = 0; i < text.length; i += 1) {
    high = Math.imul(high ^ text.charCodeAt(i), 0x01000193);
    low = Math.imul(low ^ text.charCodeAt(text.length - 1 - i), 0x01000193);
  }
  return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}

/** The difficulties of a unit as the text of a file: one fault a line, so that two files can be compared. */
export function difficultyFile(unit: Unit, all: readonly FaultDifficulty[]): string {
  const complaints = [...new Set(all.filter(({silent}) => !silent).map((each) => each.complaint))];
  const head = {
    unit: unit.id,
    version: difficultyVersion,
    hash: behaviourHash(unit),
    complaints,
  };
  const lines = all.map((each) => {
    const numbers: DifficultyNumbers = [
      sections.indexOf(each.section),
      each.silent ? silentComplaint : complaints.indexOf(each.complaint),
      each.readings,
      each.minutes,
      each.lookAlikes,
    ];
    return `    ${JSON.stringify(each.fault)}: ${JSON.stringify(numbers)}`;
  });
  return `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "faults": {\n${lines.join(',\n')}\n  }\n}\n`;
}

/** The difficulties in a file, in catalogue order; undefined where the file is of another unit than this one as it is now. */
export function readDifficulties(
  unit: Unit,
  file: DifficultyFile | undefined,
): FaultDifficulty[] | undefined {
  if (!file || file.version !== difficultyVersion || file.hash !== behaviourHash(unit))
    return undefined;
  return Object.entries(file.faults).map(
    ([fault, [section, complaint, readings, minutes, lookAlikes]]): FaultDifficulty => ({
      fault,
      section: sections[section],
      complaint: file.complaints[complaint] ?? '',
      silent: complaint === silentComplaint,
      readings,
      minutes,
      lookAlikes,
      difficulty: complaint === silentComplaint ? 'hard' : levelOf(readings, minutes),
    }),
  );
}
