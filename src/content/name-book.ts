import type {ContentError} from './content-error.ts';
import type {KnownPart} from './known-parts.ts';
import {suggest, WrongNames} from './wrong-names.ts';
import type {Path} from './yaml-path.ts';
import type {YamlSource} from './yaml-source.ts';

/** Looks names up in the file and notes the wrong ones. */
export interface NameBook {
  readonly source: YamlSource;
  readonly errors: ContentError[];
  readonly wrong: WrongNames;
  /** Entries by id; undefined where the list of parts cannot be read (then nothing is judged). */
  partsOf(id: string): readonly KnownPart[] | undefined;
  /** Notes a part id that is not there. True where it is. */
  part(id: string, path: Path, local?: string): boolean;
  /** Notes a placed terminal (`K1.A1`) that is not there. */
  terminal(ref: unknown, path: Path): void;
}

/** A name book over the entries under `parts`. */
export function nameBook(source: YamlSource, parts: readonly KnownPart[] | undefined): NameBook {
  const errors: ContentError[] = [];
  const wrong = new WrongNames();
  const byId = new Map<string, KnownPart[]>();
  for (const part of parts ?? [])
    if (part.id !== undefined) byId.set(part.id, [...(byId.get(part.id) ?? []), part]);
  // parts whose own id is told as wrong elsewhere; an unknown name may be meant for one of them
  const nameless = [
    ...(parts ?? []).filter((part) => part.id === undefined),
    ...[...byId.values()].filter((same) => same.length > 1).flat(),
  ];
  const mayBeNameless = (local: string | undefined) =>
    nameless.some(({make}) => !make || local === undefined || make.terminals.includes(local));

  const part = (id: string, path: Path, local?: string): boolean => {
    if (!parts) return false;
    if (byId.has(id)) return true;
    if (!mayBeNameless(local))
      wrong.note(`part ${id}`, path, `there is no part ${id}`, suggest(id, [...byId.keys()]));
    return false;
  };
  const terminal = (ref: unknown, path: Path): void => {
    if (typeof ref !== 'string' || !parts) return;
    const dot = ref.indexOf('.');
    const id = dot < 0 ? ref : ref.slice(0, dot);
    const local = ref.slice(dot + 1);
    if (!part(id, path, dot < 0 ? undefined : local)) return;
    const makes = byId.get(id)!.map(({make}) => make);
    if (makes.includes(undefined)) return;
    const terminals = [...new Set(makes.flatMap((make) => make!.terminals))];
    if (dot < 0 || local === '')
      errors.push(
        source.errorAt(
          path,
          `${ref} names a part but no terminal`,
          `write one of ${terminals.map((t) => `${id}.${t}`).join(', ')}`,
        ),
      );
    else if (!terminals.includes(local))
      wrong.note(
        `terminal ${ref}`,
        path,
        `${id} has no terminal ${local}`,
        `${id} has ${terminals.join(', ')}; ${suggest(
          ref,
          terminals.map((t) => `${id}.${t}`),
        )}`,
      );
  };
  return {source, errors, wrong, part, terminal, partsOf: (id) => parts && (byId.get(id) ?? [])};
}
