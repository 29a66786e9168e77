import {existsSync, readFileSync} from 'node:fs';
import {parseArgs} from 'node:util';
import {formatContentError, type ContentError} from '../content/content-error.ts';
import {checkHookup, type HookupReport} from '../hookup/check-hookup.ts';
import {findingTitles, type TellingReading} from '../hookup/finding.ts';
import type {HookupTask} from '../hookup/hookup-task.ts';
import {loadTask} from '../hookup/load-task.ts';
import {loadWires} from '../hookup/load-wires.ts';
import {readShippedTask, shippedTaskIds} from '../hookup/node/read-shipped-task.ts';
import {UsageError} from './usage-error.ts';

/** `rungbench hookup TASK WIRES.yaml`: the verdict and the findings; 1 when wrong or when a file has mistakes. */
export function hookupCommand(args: string[], print: (line: string) => void): number {
  const {positionals, values} = parseArgs({
    args,
    allowPositionals: true,
    options: {json: {type: 'boolean', default: false}},
  });
  const [name, file, more] = positionals;
  if (name === undefined || file === undefined || more !== undefined)
    throw new UsageError('Name a task and a file of wires: rungbench hookup TASK WIRES.yaml');
  const {task, errors} = taskOf(name);
  if (!task) return tellAll(errors, print);
  if (!existsSync(file)) throw new UsageError(`There is no file ${file}.`);
  const loaded = loadWires(readFileSync(file, 'utf8'), file, task);
  if (!loaded.wires) return tellAll(loaded.errors, print);
  const report = checkHookup(task, loaded.wires);
  if (values.json) print(JSON.stringify({task: task.id, ...report}, null, 2));
  else for (const line of linesOf(task, report)) print(line);
  return report.verdict === 'right' ? 0 : 1;
}

function taskOf(name: string): {task?: HookupTask; errors: readonly ContentError[]} {
  if (shippedTaskIds().includes(name)) return {task: readShippedTask(name), errors: []};
  if (!/\.ya?ml$/.test(name)) throw UsageError.unknown('task', name, shippedTaskIds());
  if (!existsSync(name)) throw new UsageError(`There is no file ${name}.`);
  return loadTask(readFileSync(name, 'utf8'), name);
}

function tellAll(errors: readonly ContentError[], print: (line: string) => void): number {
  for (const error of errors) print(formatContentError(error));
  return 1;
}

function linesOf(task: HookupTask, {verdict, findings, method}: HookupReport): string[] {
  return [
    `${task.title}: ${verdict}.`,
    method,
    ...findings.flatMap(({kind, cause, wires, closed, reading}, i) => [
      `${i + 1}. ${findingTitles[kind]}: ${cause}`,
      ...(wires.length > 0 ? [`   wires: ${wires.join(', ')}`] : []),
      ...(closed.length > 0 ? [`   with these closed: ${closed.join(', ')}`] : []),
      `   reading: ${readingText(reading)}`,
    ]),
  ];
}

const units = {'ac-volts': 'V', ohms: 'Ω', 'clamp-amps': 'A'} as const;

function readingText({meter, red, black, shows, should}: TellingReading): string {
  const where = black === undefined ? `around ${red}` : `red on ${red}, black on ${black}`;
  const value =
    shows >= 1e5 ? 'over limit' : `${shows.toFixed(shows < 10 ? 2 : 0)} ${units[meter]}`;
  return `${meter}, ${where}: ${value}; should be ${should}`;
}
