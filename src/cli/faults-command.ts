import {parseArgs} from 'node:util';
import {complaintOf} from '../bench/complaint.ts';
import type {Unit} from '../content/unit.ts';
import type {FaultDifficulty} from '../diagnosis/difficulty-level.ts';
import {difficultiesOfAny, knownDifficulties} from '../diagnosis/node/read-difficulties.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Difficulty} from '../faults/difficulty.ts';
import {unitOf} from './unit-argument.ts';

/** `rungbench faults`: the catalogue of a unit. */
export function faultsCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {
      json: {type: 'boolean'},
      complaints: {type: 'boolean'},
      difficulty: {type: 'boolean'},
    },
  });
  const unit = unitOf(positionals[0]);
  if (values.difficulty) {
    byDifficulty(unit, values.json ?? false, print);
    return;
  }
  // a unit of one's own has none yet, and working them out takes a while: that is what --difficulty asks for
  const known = new Map((knownDifficulties(unit) ?? []).map((each) => [each.fault, each]));
  const lines = catalogue(unit).map((fault) => ({
    id: fault.id,
    name: fault.name,
    site: fault.site,
    mode: fault.mode,
    ...levelIn(known, fault.id),
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
      `${id.padEnd(width)}  ${(difficulty ?? '').padEnd(6)}  ${name}${complaint ? `\n${' '.repeat(width + 2)}“${complaint.text}”` : ''}`,
    );
  }
}

/** The level of a fault, `silent` where no customer would notice it; nothing where it is not known. */
function levelIn(
  known: ReadonlyMap<string, FaultDifficulty>,
  fault: string,
): {difficulty?: Difficulty | 'silent'} {
  const found = known.get(fault);
  return found ? {difficulty: found.silent ? 'silent' : found.difficulty} : {};
}

/** Easiest first; what no customer notices comes last, for there is no call to find it from. */
function byDifficulty(unit: Unit, json: boolean, print: (line: string) => void): void {
  const names = new Map(catalogue(unit).map(({id, name}) => [id, name]));
  const lines = difficultiesOfAny(unit)
    .map((line) => ({...line, name: names.get(line.fault)!}))
    .sort(
      (a, b) =>
        Number(a.silent) - Number(b.silent) || a.minutes - b.minutes || a.readings - b.readings,
    );
  if (json) {
    print(JSON.stringify(lines, null, 2));
    return;
  }
  const width = Math.max(...lines.map(({fault}) => fault.length));
  print(`${'fault'.padEnd(width)}  level   readings  minutes  alike  section`);
  for (const line of lines)
    print(
      line.silent
        ? `${line.fault.padEnd(width)}  no customer would notice  ${line.section}  ${line.name}`
        : `${line.fault.padEnd(width)}  ${line.difficulty.padEnd(6)}  ${String(line.readings).padStart(8)}  ` +
            `${line.minutes.toFixed(1).padStart(7)}  ${String(line.lookAlikes).padStart(5)}  ${line.section}  ${line.name}`,
    );
}
