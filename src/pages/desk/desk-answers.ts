import type {MeterFlaw} from '../../meter/meter-condition.ts';
import {nonceBytes, openSealed, sealFaults} from '../../bench/sealed-fault.ts';
import type {Unit} from '../../content/unit.ts';
import type {DifficultyFile} from '../../diagnosis/difficulty-file.ts';
import type {FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
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

/** The units that come with Rungbench: their ids, and each of them, checked when the tutor was built. */
export interface ShippedUnits {
  readonly ids: readonly string[];
  unit(id: string): Promise<Unit>;
  /** How hard the faults of one are, worked out beforehand. */
  difficulty?(id: string): Promise<DifficultyFile | undefined>;
}

// Opening a link needs a cipher and nothing else. What reads files, lists faults or simulates is large, and comes when
// it is first asked for.
const work = () => import('./fault-work.ts');
const unitFiles = () => import('../../content/load-unit.ts');
const attemptFiles = () => import('../../bench/attempt-file.ts');
const faultLists = () => import('../../faults/catalogue.ts');
const difficultyFiles = () => import('../../diagnosis/difficulty-file.ts');

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
    const {readDifficulties} = await difficultyFiles();
    return readDifficulties(unit, file) ?? (await work()).difficultiesOf(unit, tell);
  };

  return {
    shippedIds: () => shipped.ids,
    unit: ({source}) => load(source),
    catalogue: async ({source}) => {
      const {catalogue} = await faultLists();
      return catalogue(await unitOf(source)).map(({id, name, site, mode}) => ({
        id,
        name,
        site,
        mode,
      }));
    },
    complaint: async ({source, faults}) =>
      (await work()).derivedComplaint(await unitOf(source), faults),
    seal: async ({source, faults, complaint, meter}) => {
      const unit = await unitOf(source);
      const {catalogue, faultsById} = await faultLists();
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
    exported: async ({record}) => (await attemptFiles()).attemptFile(record),
    imported: async ({text}) => {
      const read = (await attemptFiles()).readAttemptFile(text);
      if ('reason' in read) throw new Error(read.reason);
      return read.attempt;
    },
    appraised: async ({source, record}) => (await work()).appraise(await unitOf(source), record),
  };
}

async function read(shipped: ShippedUnits, source: UnitSource): Promise<LoadedUnit> {
  if ('shipped' in source) return {unit: await shipped.unit(source.shipped), mistakes: []};
  const {loadUnit} = await unitFiles();
  const {unit, errors} = loadUnit(source.text, source.fileName);
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
