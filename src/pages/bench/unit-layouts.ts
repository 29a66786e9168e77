import type {Unit} from '../../content/unit.ts';

// each layout is its own chunk: only the unit at work is fetched
const layouts = import.meta.glob<unknown>('../../../content/layouts/*.json', {import: 'default'});

/** The committed layout of a unit's connection drawing; undefined for a unit that came from a person's file. */
export async function layoutOf(unit: Unit): Promise<unknown> {
  return layouts[`../../../content/layouts/${unit.id}.json`]?.();
}
