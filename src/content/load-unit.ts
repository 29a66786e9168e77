import {partKinds} from '../parts/part-kinds.ts';
import {inFileOrder, type ContentError} from './content-error.ts';
import {placeElements} from './place-part.ts';
import {shapeErrors} from './shape-errors.ts';
import {unitSchema, type UnitFile} from './unit-schema.ts';
import type {Part, Unit} from './unit.ts';
import {checkLinks} from './unit-links.ts';
import {readYaml} from './yaml-source.ts';

export interface LoadedUnit {
  /** Present when, and only when, there are no errors. */
  readonly unit?: Unit;
  /** All mistakes of the file, in file order. */
  readonly errors: readonly ContentError[];
}

/**
 * Read and check the text of a unit file. Never throws on bad content: every mistake comes back as one
 * error with its place. `fileName` is only used in the errors. Runs in a page, in a worker and in Node.
 */
export function loadUnit(text: string, fileName: string): LoadedUnit {
  const source = readYaml(text, fileName);
  if (source.value === undefined) return {errors: inFileOrder(source.errors)};
  const parsed = unitSchema.safeParse(source.value);
  const errors = [...source.errors];
  if (!parsed.success) errors.push(...shapeErrors(parsed.error.issues, unitSchema, source));
  if (source.value !== null && typeof source.value === 'object') errors.push(...checkLinks(source));
  if (!parsed.success || errors.length > 0) return {errors: inFileOrder(errors)};
  return {unit: toUnit(parsed.data), errors: []};
}

function toUnit(file: UnitFile): Unit {
  return {
    ...file,
    parts: file.parts.map(toPart),
    plant: {...file.plant, start: definedOnly(file.plant.start)},
  };
}

/** A part of a checked file with its terminals, placed elements, ways to fail and controls. */
export function toPart(entry: UnitFile['parts'][number]): Part {
  const kind = partKinds.get(entry.kind)!;
  const {data} = entry;
  return {
    ...entry,
    terminals: kind.terminals(data),
    elements: placeElements(entry.id, kind.elements(data)),
    modes: kind.modes(data),
    controls: kind.controls?.(data) ?? [],
  };
}

function definedOnly(values: Readonly<Record<string, number | undefined>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(values).filter((entry): entry is [string, number] => entry[1] !== undefined),
  );
}
