import {inFileOrder, type ContentError} from '../content/content-error.ts';
import {shapeErrors} from '../content/shape-errors.ts';
import {suggest} from '../content/wrong-names.ts';
import {readYaml} from '../content/yaml-source.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';
import {namedWires} from './load-task.ts';
import {wiresFileSchema} from './task-schema.ts';

/** Reads a file of wires (`wires:` with from, to, gauge, colour) for a task; every mistake comes back with its place. */
export function loadWires(
  text: string,
  fileName: string,
  task: HookupTask,
): {wires?: readonly HookupWire[]; errors: readonly ContentError[]} {
  const source = readYaml(text, fileName);
  if (source.value === undefined) return {errors: inFileOrder(source.errors)};
  const parsed = wiresFileSchema.safeParse(source.value);
  const errors = [...source.errors];
  if (!parsed.success) {
    errors.push(...shapeErrors(parsed.error.issues, wiresFileSchema, source));
    return {errors: inFileOrder(errors)};
  }
  const terminals = task.parts.flatMap(({id, terminals: names}) =>
    names.map((name) => `${id}.${name}`),
  );
  const wires = namedWires(parsed.data.wires);
  const ids = [...task.given.map(({id}) => id), ...wires.map(({id}) => id)];
  wires.forEach((wire, i) => {
    for (const end of ['from', 'to'] as const)
      if (!terminals.includes(wire[end]))
        errors.push(
          source.errorAt(
            ['wires', i, end],
            `there is no terminal ${wire[end]}`,
            suggest(wire[end], terminals),
          ),
        );
    if (wire.from === wire.to)
      errors.push(
        source.errorAt(
          ['wires', i, 'to'],
          `this wire begins and ends at ${wire.from}`,
          'name the terminal at its other end',
        ),
      );
    if (ids.filter((id) => id === wire.id).length > 1)
      errors.push(
        source.errorAt(
          ['wires', i],
          `there is more than one wire ${wire.id}`,
          'give it another id',
        ),
      );
  });
  return errors.length > 0 ? {errors: inFileOrder(errors)} : {wires, errors: []};
}
