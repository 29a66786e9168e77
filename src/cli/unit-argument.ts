import {existsSync, readFileSync} from 'node:fs';
import {formatContentError} from '../content/content-error.ts';
import {loadUnit} from '../content/load-unit.ts';
import {readShippedUnit, shippedUnitIds} from '../content/node/read-shipped-unit.ts';
import type {Unit} from '../content/unit.ts';
import {UsageError} from './usage-error.ts';

/** The unit that an argument names: the id of a shipped one, or a file. Throws UsageError where it is neither. */
export function unitOf(argument: string | undefined): Unit {
  if (argument === undefined) {
    throw new UsageError(`Name a unit: ${shippedUnitIds().join(', ')}, or a unit file.`);
  }
  if (shippedUnitIds().includes(argument)) return readShippedUnit(argument);
  if (!/\.ya?ml$/.test(argument)) throw UsageError.unknown('unit', argument, shippedUnitIds());
  if (!existsSync(argument)) throw new UsageError(`There is no file ${argument}.`);
  const {unit, errors} = loadUnit(readFileSync(argument, 'utf8'), argument);
  if (!unit) throw new UsageError(errors.map(formatContentError).join('\n'));
  return unit;
}
