import type {Path} from './yaml-path.ts';

/** The plain value at a path, undefined where there is none. */
export function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const step of path) {
    if (at === null || typeof at !== 'object' || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<string | number, unknown>)[step];
  }
  return at;
}

/** A list of the file, empty where it cannot be read. */
export function listAt(value: unknown, key: string): readonly unknown[] {
  const list = valueAt(value, [key]);
  return Array.isArray(list) ? list : [];
}
