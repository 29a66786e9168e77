import {inFileOrder, type ContentError} from '../content/content-error.ts';
import {toPart} from '../content/load-unit.ts';
import {shapeErrors} from '../content/shape-errors.ts';
import {checkLinks} from '../content/unit-links.ts';
import {readYaml} from '../content/yaml-source.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';
import {readRule} from './rule.ts';
import {checkTaskLinks} from './task-links.ts';
import {taskSchema, type TaskFile} from './task-schema.ts';

export interface LoadedTask {
  /** Present when, and only when, there are no errors. */
  readonly task?: HookupTask;
  readonly errors: readonly ContentError[];
}

/**
 * Reads and checks the text of a task file. Never throws on bad content: every mistake is one error with its place.
 * `fileName` is only used in the errors.
 */
export function loadTask(text: string, fileName: string): LoadedTask {
  const source = readYaml(text, fileName);
  if (source.value === undefined) return {errors: inFileOrder(source.errors)};
  const parsed = taskSchema.safeParse(source.value);
  const errors = [...source.errors];
  if (!parsed.success) errors.push(...shapeErrors(parsed.error.issues, taskSchema, source));
  if (source.value !== null && typeof source.value === 'object') errors.push(...checkLinks(source));
  if (parsed.success && errors.length === 0) errors.push(...checkTaskLinks(parsed.data, source));
  if (!parsed.success || errors.length > 0) return {errors: inFileOrder(errors)};
  return {task: toTask(parsed.data), errors: []};
}

/** Wires with the ids that they have when none is written: H1, H2 … */
export function namedWires(wires: TaskFile['answer']): HookupWire[] {
  return wires.map((wire, i) => ({...wire, id: wire.id ?? `H${i + 1}`}));
}

function toTask(file: TaskFile): HookupTask {
  const {wires, plant, forbid, rules, runs, begin, answer, parts, ...rest} = file;
  return {
    ...rest,
    runs: runs ?? [],
    parts: parts.map(toPart),
    given: wires ?? [],
    plantStart: Object.fromEntries(
      Object.entries(plant?.start ?? {}).filter(
        (entry): entry is [string, number] => entry[1] !== undefined,
      ),
    ),
    rules: rules.map(readRule),
    forbidden: forbid,
    begin: namedWires(begin),
    answer: namedWires(answer),
  };
}
