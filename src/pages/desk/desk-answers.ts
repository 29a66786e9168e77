import {loadUnit} from '../../content/load-unit.ts';
import type {Unit} from '../../content/unit.ts';
import {catalogue} from '../../faults/catalogue.ts';
import {shippedIds, shippedText} from '../units/shipped-texts.ts';
import type {DeskAnswers, DeskQuestion, LoadedUnit, UnitSource} from './desk-messages.ts';

type Answering = {
  readonly [Q in DeskQuestion]?: (ask: DeskAnswers[Q]['ask']) => DeskAnswers[Q]['answer'] | Promise<DeskAnswers[Q]['answer']>;
};

const loaded = new Map<string, Promise<LoadedUnit>>();

function load(source: UnitSource): Promise<LoadedUnit> {
  const key = JSON.stringify(source);
  let loading = loaded.get(key);
  if (!loading) {
    loading = read(source);
    loaded.set(key, loading);
    loading.catch(() => loaded.delete(key));
  }
  return loading;
}

async function read(source: UnitSource): Promise<LoadedUnit> {
  const [text, fileName] = 'shipped' in source ? [await shippedText(source.shipped), `${source.shipped}.yaml`] : [source.text, source.fileName];
  const {unit, errors} = loadUnit(text, fileName);
  return {unit, mistakes: errors.map(({line, column, message, mend}) => ({line, column, message, mend}))};
}

async function unitOf(source: UnitSource): Promise<Unit> {
  const {unit, mistakes} = await load(source);
  if (!unit) throw new Error(`The unit's file has mistakes; the first at line ${mistakes[0]?.line ?? 1}: ${mistakes[0]?.message ?? ''}`);
  return unit;
}

/** What the desk's worker answers to each question. */
export const answers: Answering = {
  shippedIds: () => shippedIds,
  unit: ({source}) => load(source),
  catalogue: async ({source}) => catalogue(await unitOf(source)).map(({id, name, site, mode}) => ({id, name, site, mode})),
};
