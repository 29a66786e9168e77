import {readdirSync, readFileSync} from 'node:fs';
import {basename} from 'node:path';
import {formatContentError} from '../content-error.ts';
import {loadUnit} from '../load-unit.ts';
import type {Unit} from '../unit.ts';

const folder = new URL('../../../content/units/', import.meta.url);

/** Ids of the units in content/units, in alphabetical order. */
export function shippedUnitIds(): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => basename(name, '.yaml'))
    .sort();
}

/** Text of a shipped unit's file. Throws where there is none of that id. */
export function readShippedUnitText(id: string): string {
  if (!shippedUnitIds().includes(id))
    throw new Error(`There is no unit "${id}"; there are ${shippedUnitIds().join(', ')}.`);
  return readFileSync(new URL(`${id}.yaml`, folder), 'utf8');
}

/** A shipped unit by its id. Throws with all the errors of its file where it does not load. */
export function readShippedUnit(id: string): Unit {
  const {unit, errors} = loadUnit(readShippedUnitText(id), `content/units/${id}.yaml`);
  if (!unit) throw new Error(errors.map(formatContentError).join('\n'));
  return unit;
}
