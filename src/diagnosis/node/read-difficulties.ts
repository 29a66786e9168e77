import {existsSync, readFileSync} from 'node:fs';
import type {Unit} from '../../content/unit.ts';
import {mendDifficulty, readDifficulties, type DifficultyFile} from '../difficulty-file.ts';
import type {FaultDifficulty} from '../difficulty-level.ts';
import {difficultiesOf} from '../fault-difficulty.ts';

const folder = new URL('../../../content/difficulty/', import.meta.url);

/** Where the difficulties of a shipped unit are kept. */
export const difficultyFileOf = (id: string): URL => new URL(`${id}.json`, folder);

/**
 * Difficulties of a shipped unit, from its file.
 *
 * @throws Error with the command to mend it where there is no file, or the unit has changed since.
 */
export function shippedDifficulties(unit: Unit): FaultDifficulty[] {
  const found = knownDifficulties(unit);
  if (found) return found;
  throw new Error(
    `content/difficulty/${unit.id}.json does not fit the unit as it is now: run "${mendDifficulty} -- ${unit.id}".`,
  );
}

/** Difficulties of any unit: from its file where there is one that fits, else worked out, which takes a while. */
export function difficultiesOfAny(unit: Unit): FaultDifficulty[] {
  return knownDifficulties(unit) ?? difficultiesOf(unit);
}

/** Difficulties of a unit from its file; undefined where it has none that fits. */
export function knownDifficulties(unit: Unit): FaultDifficulty[] | undefined {
  const file = difficultyFileOf(unit.id);
  if (!existsSync(file)) return undefined;
  return readDifficulties(unit, JSON.parse(readFileSync(file, 'utf8')) as DifficultyFile);
}
