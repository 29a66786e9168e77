import {readFileSync} from 'node:fs';
import {parseArgs} from 'node:util';
import {formatContentError} from '../content/content-error.ts';
import {loadUnit} from '../content/load-unit.ts';
import {UsageError} from './usage-error.ts';

/** `rungbench check`: every mistake of every file, each on its line. Gives whether all were right. */
export function checkCommand(args: string[], print: (line: string) => void): boolean {
  const {positionals} = parseArgs({args, allowPositionals: true, options: {}});
  if (positionals.length === 0)
    throw new UsageError('Name the files to check: rungbench check FILE…');
  let right = true;
  for (const file of positionals) {
    let text: string;
    try {
      text = readFileSync(file, 'utf8');
    } catch (error) {
      const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
      print(`${file} cannot be read (${why}) — check the name and whether you may read it.`);
      right = false;
      continue;
    }
    const {unit, errors} = loadUnit(text, file);
    for (const error of errors) print(formatContentError(error));
    if (unit)
      print(
        `${file}: unit "${unit.id}" is right: ${unit.parts.length} parts, ${unit.wires.length} wires.`,
      );
    right &&= unit !== undefined;
  }
  return right;
}
