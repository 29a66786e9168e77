import type {Control} from '../parts/part-kind.ts';
import {plantStart, textAt} from './known-parts.ts';
import type {NameBook} from './name-book.ts';
import {listAt, valueAt} from './value-at.ts';
import {suggest} from './wrong-names.ts';
import type {Path} from './yaml-path.ts';

/** Controls set and things checked by the sequences of operation exist, and the values set are possible. */
export function checkSequences(file: unknown, book: NameBook): void {
  listAt(file, 'sequences').forEach((sequence, i) => {
    listAt(sequence, 'set').forEach((entry, j) =>
      checkSetting(entry, ['sequences', i, 'set', j], book),
    );
    listAt(sequence, 'steps').forEach((step, j) =>
      checkStepCheck(valueAt(step, ['check']), ['sequences', i, 'steps', j, 'check'], book),
    );
  });
}

function checkSetting(entry: unknown, path: Path, book: NameBook): void {
  const target = textAt(entry, 'target');
  const value = valueAt(entry, ['value']);
  if (target === undefined) return;
  const at: Path = [...path, 'target'];
  const [id = '', name = ''] = target.split('.', 2);
  if (id === 'plant') {
    if (checkPlantValue(target, at, book) && typeof value === 'string')
      book.errors.push(
        book.source.errorAt(
          [...path, 'value'],
          `${target} is set to "${value}", expected a number`,
          'write a number without quotes',
        ),
      );
    return;
  }
  if (!book.part(id, at)) return;
  const makes = book.partsOf(id)!.map(({make}) => make);
  if (makes.includes(undefined)) return;
  const controls = makes.flatMap((make) => make!.controls);
  const control = controls.find((one) => one.id === name);
  if (!control)
    book.wrong.note(
      `set ${target}`,
      at,
      `${id} has no control ${name === '' ? 'named' : name}`,
      suggest(
        target,
        controls.map((one) => `${id}.${one.id}`),
      ),
    );
  else {
    const wrong = wrongValue(control, value);
    if (wrong)
      book.errors.push(
        book.source.errorAt(
          [...path, 'value'],
          `${target} is set to ${JSON.stringify(value)}, expected ${wrong}`,
          'set it to that',
        ),
      );
  }
}

/** What a control wants instead of a value; undefined where the value will do. */
export function wrongValue(control: Control, value: unknown): string | undefined {
  if (typeof value !== 'string' && typeof value !== 'number') return undefined; // told by the schema
  if (control.type === 'choice') {
    const values = (control.choices ?? []).map((choice) => choice.value);
    return values.some((one) => one === value) ? undefined : `one of ${values.join(', ')}`;
  }
  if (control.type === 'press') return value === 'in' || value === 'out' ? undefined : 'in or out';
  const {min = -Infinity, max = Infinity} = control;
  return typeof value === 'number' && value >= min && value <= max
    ? undefined
    : `a number from ${min} to ${max}`;
}

function checkStepCheck(check: unknown, path: Path, book: NameBook): void {
  const between = valueAt(check, ['volts', 'between']);
  if (Array.isArray(between))
    between.forEach((ref: unknown, i) => book.terminal(ref, [...path, 'volts', 'between', i]));
  const through = textAt(valueAt(check, ['amps']), 'through');
  if (through !== undefined) checkWireId(through, [...path, 'amps', 'through'], book);
  const value = textAt(valueAt(check, ['plant']), 'value');
  if (value !== undefined) checkPlantValue(`plant.${value}`, [...path, 'plant', 'value'], book);
  for (const key of ['closed', 'open']) checkContact(textAt(check, key), [...path, key], book);
  const part = textAt(valueAt(check, ['state']), 'part');
  if (part !== undefined) book.part(part, [...path, 'state', 'part']);
}

/** Whether the unit starts with a plant value; `plant.roomDegF`. */
function checkPlantValue(target: string, path: Path, book: NameBook): boolean {
  const names = plantStart(book.source.value)?.map((key) => `plant.${key}`);
  if (!names || names.includes(target)) return names !== undefined;
  const name = target.slice('plant.'.length);
  const message = `the plant does not start with ${name}`;
  book.wrong.note(`plant ${target}`, path, message, suggest(target, names));
  return false;
}

function checkWireId(id: string, path: Path, book: NameBook): void {
  const ids = listAt(book.source.value, 'wires').map((wire) => textAt(wire, 'id'));
  // a doubled or unreadable id may be the one that was meant
  if (ids.includes(id) || ids.includes(undefined) || new Set(ids).size < ids.length) return;
  const names = ids.filter((one) => one !== undefined);
  book.wrong.note(`wire ${id}`, path, `there is no wire ${id}`, suggest(id, names));
}

function checkContact(ref: string | undefined, path: Path, book: NameBook): void {
  if (ref === undefined) return;
  const [id = '', name = ''] = ref.split('.', 2);
  if (!book.part(id, path)) return;
  const makes = book.partsOf(id)!.map(({make}) => make);
  if (makes.includes(undefined)) return;
  const contacts = makes.flatMap((make) => make!.contacts);
  if (!contacts.includes(name))
    book.wrong.note(
      `contact ${ref}`,
      path,
      `${id} has no contact ${name === '' ? 'named' : name}`,
      suggest(
        ref,
        contacts.map((one) => `${id}.${one}`),
      ),
    );
}
