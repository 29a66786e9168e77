import type {Control, PartKind} from '../parts/part-kind.ts';
import {partKinds} from '../parts/part-kinds.ts';
import {plantValueNames} from '../parts/plant-value.ts';
import {valueAt} from './value-at.ts';
import type {Path} from './yaml-path.ts';

/**
 * What can be told of one entry under `parts`, whatever else is wrong in the file. `make` is absent where
 * the kind or its data cannot be read: then nothing that depends on it is judged, so that one mistake
 * gives one message.
 */
export interface KnownPart {
  readonly id: string | undefined;
  readonly path: Path;
  readonly enclosure: string | undefined;
  readonly make?: {
    readonly terminals: readonly string[];
    readonly contacts: readonly string[];
    readonly controls: readonly Control[];
    /** Name of the plant value that works it. */
    readonly senses?: string;
  };
}

/** Every entry under `parts`, undefined where there is no such list. */
export function knownParts(file: unknown): KnownPart[] | undefined {
  const entries = valueAt(file, ['parts']);
  if (!Array.isArray(entries)) return undefined;
  return entries.map((entry: unknown, i): KnownPart => {
    const kind = partKinds.get(String(valueAt(entry, ['kind'])));
    return {
      id: textAt(entry, 'id'),
      path: ['parts', i],
      enclosure: textAt(entry, 'enclosure'),
      make: kind && makeOf(kind, valueAt(entry, ['data']) ?? {}),
    };
  });
}

function makeOf(kind: PartKind, raw: unknown): KnownPart['make'] {
  const parsed = kind.data.safeParse(raw);
  if (!parsed.success) return undefined;
  const {data} = parsed;
  const senses = valueAt(data, ['senses']);
  return {
    terminals: kind.terminals(data),
    contacts: kind
      .elements(data)
      .flatMap((element) => (element.is === 'contact' ? [element.id] : [])),
    controls: kind.controls?.(data) ?? [],
    senses: typeof senses === 'string' ? senses : undefined,
  };
}

/** The text under a key of an entry, undefined where it is not there or not text. */
export function textAt(entry: unknown, key: string): string | undefined {
  const value = valueAt(entry, [key]);
  return typeof value === 'string' ? value : undefined;
}

/** Names of the plant values that a unit starts with; undefined where they cannot be read for sure. */
export function plantStart(file: unknown): string[] | undefined {
  const start = valueAt(file, ['plant', 'start']);
  if (start === null || typeof start !== 'object') return undefined;
  const names = Object.keys(start);
  // a misspelt name is told where it stands, not at everything that needs it
  const right: readonly string[] = plantValueNames;
  return names.every((name) => right.includes(name)) ? names : undefined;
}
