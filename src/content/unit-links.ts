import type {ContentError} from './content-error.ts';
import {knownParts, plantStart, textAt, type KnownPart} from './known-parts.ts';
import {nameBook, type NameBook} from './name-book.ts';
import {doubledIds, suggest} from './wrong-names.ts';
import {checkSequences} from './sequence-links.ts';
import {listAt, valueAt} from './value-at.ts';
import type {Path} from './yaml-path.ts';
import type {YamlSource} from './yaml-source.ts';

/**
 * What one schema cannot say: ids are unique, and every name used in the file is the name of something
 * in it. Works on whatever could be read, beside the schema's own findings, so that all mistakes of a
 * file are told at once.
 */
export function checkLinks(source: YamlSource): ContentError[] {
  const file = source.value;
  const parts = knownParts(file);
  const book = nameBook(source, parts);
  const enclosures = idsOf(file, 'enclosures');
  const runs = idsOf(file, 'runs');

  for (const [list, one] of [
    ['enclosures', 'enclosure'],
    ['runs', 'run'],
    ['parts', 'part'],
    ['wires', 'wire'],
    ['circuits', 'circuit'],
    ['sequences', 'sequence'],
  ] as const)
    book.errors.push(...doubledIds(list, one, idsOf(file, list) ?? [], source));

  parts?.forEach((part) => checkPart(part, book, enclosures));
  listAt(file, 'enclosures').forEach((entry, i) => checkCabinet(entry, ['enclosures', i], book));
  listAt(file, 'wires').forEach((entry, i) => checkWire(entry, ['wires', i], book, runs));
  listAt(file, 'circuits').forEach((entry, i) => {
    const rails = valueAt(entry, ['rails']);
    if (Array.isArray(rails))
      rails.forEach((rail: unknown, j) => book.terminal(rail, ['circuits', i, 'rails', j]));
  });
  checkSpares(file, book);
  checkSequences(file, book);
  return [...book.errors, ...book.wrong.errors(source)];
}

function checkPart(part: KnownPart, book: NameBook, enclosures: Ids): void {
  const {make, path} = part;
  lookUp('enclosure', part.enclosure, [...path, 'enclosure'], enclosures, book);
  if (!make) return;
  const double = make.terminals.find((name, i) => make.terminals.indexOf(name) !== i);
  if (double !== undefined)
    book.errors.push(
      book.source.errorAt(
        [...path, 'data'],
        `${part.id ?? 'this part'} has two terminals ${double}`,
        'give one of them another name',
      ),
    );
  const start = plantStart(book.source.value);
  if (make.senses && start && !start.includes(make.senses))
    book.wrong.note(
      `senses ${make.senses}`,
      [...path, 'data', 'senses'],
      `${part.id ?? 'this part'} senses ${make.senses}, which the plant does not start with`,
      `add ${make.senses} under plant: start:`,
    );
}

function checkCabinet(entry: unknown, path: Path, book: NameBook): void {
  const cabinet = textAt(entry, 'cabinet');
  if (cabinet === undefined) return;
  book.terminal(cabinet, [...path, 'cabinet']);
  const lugs = book.partsOf(cabinet.split('.')[0]!);
  const id = textAt(entry, 'id');
  const elsewhere = lugs?.find((lug) => lug.enclosure !== undefined && lug.enclosure !== id);
  if (id !== undefined && elsewhere && lugs?.every((lug) => lug.enclosure !== id))
    book.errors.push(
      book.source.errorAt(
        [...path, 'cabinet'],
        `${cabinet} is bonded to ${id} but lies in ${elsewhere.enclosure}`,
        'name a ground lug of this enclosure',
      ),
    );
}

function checkWire(entry: unknown, path: Path, book: NameBook, runs: Ids): void {
  const from = textAt(entry, 'from');
  const to = textAt(entry, 'to');
  book.terminal(from, [...path, 'from']);
  if (from !== undefined && from === to)
    book.errors.push(
      book.source.errorAt(
        [...path, 'to'],
        `this wire begins and ends at ${from}`,
        'name the terminal at its other end',
      ),
    );
  else book.terminal(to, [...path, 'to']);
  lookUp('run', textAt(entry, 'run'), [...path, 'run'], runs, book);
}

/** A terminal kept as a spare exists, and no wire lands on it. */
function checkSpares(file: unknown, book: NameBook): void {
  const landed = new Set(
    listAt(file, 'wires').flatMap((wire) => [textAt(wire, 'from'), textAt(wire, 'to')]),
  );
  listAt(file, 'parts').forEach((entry, i) => {
    const id = textAt(entry, 'id');
    const spare = valueAt(entry, ['spare']);
    if (id === undefined || !Array.isArray(spare)) return;
    spare.forEach((name: unknown, j) => {
      const path = ['parts', i, 'spare', j];
      if (typeof name !== 'string') return;
      book.terminal(`${id}.${name}`, path);
      if (landed.has(`${id}.${name}`))
        book.errors.push(
          book.source.errorAt(
            path,
            `${id}.${name} is kept as a spare, but a wire lands on it`,
            'take it off the list of spares',
          ),
        );
    });
  });
}

type Ids = readonly (string | undefined)[] | undefined;

/** Notes a name that is not among the ids. A doubled or unreadable id may be the one that was meant: then nothing is said. */
function lookUp(
  what: string,
  name: string | undefined,
  path: Path,
  ids: Ids,
  book: NameBook,
): void {
  if (name === undefined || ids === undefined || ids.includes(name)) return;
  if (ids.includes(undefined) || new Set(ids).size < ids.length) return;
  const names = ids.filter((id) => id !== undefined);
  book.wrong.note(`${what} ${name}`, path, `there is no ${what} ${name}`, suggest(name, names));
}

/** The ids of a list's entries, in order; undefined where there is no such list. */
function idsOf(file: unknown, list: string): Ids {
  const entries = valueAt(file, [list]);
  return Array.isArray(entries) ? entries.map((entry: unknown) => textAt(entry, 'id')) : undefined;
}
