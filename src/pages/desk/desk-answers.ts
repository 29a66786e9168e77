import type {MeterFlaw} from '../../meter/meter-condition.ts';
import {attemptFile, readAttemptFile} from '../../bench/attempt-file.ts';
import {nonceBytes, openSealed, sealFaults} from '../../bench/sealed-fault.ts';
import {loadUnit} from '../../content/load-unit.ts';
import type {Unit} from '../../content/unit.ts';
import {readDifficulties, type DifficultyFile} from '../../diagnosis/difficulty-file.ts';
import type {FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
import {catalogue, faultsById} from '../../faults/catalogue.ts';
import type {
  DeskAnswers,
  DeskQuestion,
  HiddenFault,
  LoadedUnit,
  UnitSource,
} from './desk-messages.ts';

/** Answers one question with what its ask and answer are. */
export type DeskAnswering = {
  readonly [Q in DeskQuestion]: (
    ask: DeskAnswers[Q]['ask'],
    tell: (share: number) => void,
  ) => DeskAnswers[Q]['answer'] | Promise<DeskAnswers[Q]['answer']>;
};

/** The units that come with Rungbench: their ids, and the text of each. */
export interface ShippedUnits {
  readonly ids: readonly string[];
  text(id: string): Promise<string>;
  /** How hard the faults of one are, worked out beforehand. */
  difficulty?(id: string): Promise<DifficultyFile | undefined>;
}

/** The simulation is large; listing units and opening links does not need it. */
const work = () => import('./fault-work.ts');

/** What the desk's worker answers to each question. A refusal is a thrown Error with one sentence for people. */
export function deskAnswers(shipped: ShippedUnits): DeskAnswering {
  const loaded = new Map<string, Promise<LoadedUnit>>();

  const load = (source: UnitSource): Promise<LoadedUnit> => {
    const key = JSON.stringify(source);
    let loading = loaded.get(key);
    if (!loading) {
      loading = read(shipped, source);
      loaded.set(key, loading);
      loading.catch(() => loaded.delete(key));
    }
    return loading;
  };

  const unitOf = async (source: UnitSource): Promise<Unit> => {
    const {unit, mistakes} = await load(source);
    if (unit) return unit;
    throw new Error(
      `The unit's file has mistakes; the first at line ${mistakes[0].line}: ${mistakes[0].message}`,
    );
  };

  const difficulties = async (
    source: UnitSource,
    tell: (share: number) => void,
  ): Promise<readonly FaultDifficulty[]> => {
    const unit = await unitOf(source);
    const file = 'shipped' in source ? await shipped.difficulty?.(source.shipped) : undefined;
    return readDifficulties(unit, file) ?? (await work()).difficultiesOf(unit, tell);
  };

  return {
    shippedIds: () => shipped.ids,
    unit: ({source}) => load(source),
    catalogue: async ({source}) =>
      catalogue(await unitOf(source)).map(({id, name, site, mode}) => ({id, name, site, mode})),
    complaint: async ({source, faults}) =>
      (await work()).derivedComplaint(await unitOf(source), faults),
    seal: async ({source, faults, complaint, meter}) => {
      const unit = await unitOf(source);
      return seal(
        unit,
        faultsById(catalogue(unit), faults).map(({id}) => id),
        complaint,
        meter,
      );
    },
    difficulties: ({source}, tell) => difficulties(source, tell),
    pick: async ({source, wanted, known, seed}, tell) => {
      const unit = await unitOf(source);
      const all = known ?? (await difficulties(source, tell));
      const {fault, complaint} = (await work()).pickedFault(unit, all, wanted, seed);
      return seal(unit, [fault], complaint);
    },
    opened: ({sealed}) => {
      const opened = openSealed(sealed);
      if ('reason' in opened) throw new Error(opened.reason);
      return {unit: opened.hidden.unit, complaint: opened.hidden.complaint};
    },
    exported: ({record}) => attemptFile(record),
    imported: ({text}) => {
      const read = readAttemptFile(text);
      if ('reason' in read) throw new Error(read.reason);
      return read.attempt;
    },
    appraised: async ({source, record}) => (await work()).appraise(await unitOf(source), record),
  };
}

async function read(shipped: ShippedUnits, source: UnitSource): Promise<LoadedUnit> {
  const [text, fileName] =
    'shipped' in source
      ? [await shipped.text(source.shipped), `${source.shipped}.yaml`]
      : [source.text, source.fileName];
  const {unit, errors} = loadUnit(text, fileName);
  return {
    unit,
    mistakes: errors.map(({line, column, message, mend}) => ({line, column, message, mend})),
  };
}

/** Seals with a fresh nonce; the same fault sealed twice gives two texts. */
function seal(
  unit: Unit,
  faults: readonly string[],
  complaint: string,
  meter?: MeterFlaw,
): HiddenFault {
  const sealed = sealFaults(
    {unit: unit.id, faults, complaint, ...(meter ? {meter} : {})},
    crypto.getRandomValues(new Uint8Array(nonceBytes)),
  );
  return {sealed, complaint};
}
