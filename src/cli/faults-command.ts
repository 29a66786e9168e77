import {parseArgs} from 'node:util';
import {complaintOf} from '../bench/complaint.ts';
import {catalogue} from '../faults/catalogue.ts';
import {difficultyOf} from '../faults/difficulty.ts';
import {unitOf} from './unit-argument.ts';

/** `rungbench faults`: the catalogue of a unit. */
export function faultsCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {json: {type: 'boolean'}, complaints: {type: 'boolean'}},
  });
  const unit = unitOf(positionals[0]);
  const lines = catalogue(unit).map((fault) => ({
    id: fault.id,
    name: fault.name,
    site: fault.site,
    mode: fault.mode,
    difficulty: difficultyOf(unit, fault),
    weight: fault.weight,
    ...(values.complaints ? {complaint: complaintOf(unit, [fault])} : {}),
  }));
  if (values.json) {
    print(JSON.stringify(lines, null, 2));
    return;
  }
  const width = Math.max(...lines.map(({id}) => id.length));
  for (const {id, name, difficulty, complaint} of lines) {
    print(
      `${id.padEnd(width)}  ${difficulty.padEnd(6)}  ${name}${complaint ? `\n${' '.repeat(width + 2)}“${complaint.text}”` : ''}`,
    );
  }
}
