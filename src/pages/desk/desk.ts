import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {Unit} from '../../content/unit.ts';
import {behaviourHash} from '../../diagnosis/difficulty-file.ts';
import type {FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
import type {AttemptHead, AttemptStore} from '../../store/attempts.ts';
import type {
  CatalogueEntry,
  DeskAnswers,
  DeskQuestion,
  DeskReply,
  DeskRequest,
  Difficulty,
  FileMistake,
  HiddenFault,
  LoadedUnit,
  UnitSource,
  WantedFault,
} from './desk-messages.ts';

/** A unit as the pages list it. `unit` is absent where its file does not load any more. */
export interface ListedUnit {
  readonly id: string;
  readonly title: string;
  readonly shipped: boolean;
  readonly fileName?: string;
  readonly unit?: Unit;
  readonly mistakes: readonly FileMistake[];
}

/** What the desk's worker looks like from here; a test puts its own in. */
export interface DeskPort {
  postMessage(request: DeskRequest): void;
  terminate?(): void;
  addEventListener(
    type: 'message' | 'error',
    tell: (event: MessageEvent<DeskReply> | ErrorEvent) => void,
  ): void;
}

/** Why the desk said no, in a sentence for people. */
export class DeskRefusal extends Error {}

/**
 * Prepares service calls: loads units, hides faults, opens sealed ones. All of it happens in a worker, so that the page
 * never blocks and no fault is ever on the page's side unless the person here is the one who hides it.
 */
export class Desk {
  private readonly openPort: () => DeskPort;
  private port: DeskPort | undefined;
  private readonly waiting = new Map<
    number,
    {resolve(answer: unknown): void; reject(reason: Error): void; tell(share: number): void}
  >();
  private readonly loaded = new Map<string, Promise<LoadedUnit>>();
  private asked = 0;

  constructor(openPort: () => DeskPort) {
    this.openPort = openPort;
  }

  /** All units of this device: ours first, then those opened from files. */
  async units(store: AttemptStore): Promise<ListedUnit[]> {
    const [ids, kept] = await Promise.all([this.ask('shippedIds', {}), store.units()]);
    const ours = ids.map(async (id) =>
      listed({id, title: id, shipped: true}, await this.load({shipped: id})),
    );
    const theirs = kept.map(async ({id, title, fileName, text}) =>
      listed({id, title, fileName, shipped: false}, await this.load({text, fileName})),
    );
    return Promise.all([...ours, ...theirs]);
  }

  /** Where the unit's text is; rejects when this device has no such unit. */
  async source(store: AttemptStore, id: string): Promise<UnitSource> {
    const ids = await this.ask('shippedIds', {});
    if (ids.includes(id)) return {shipped: id};
    const kept = (await store.units()).find((unit) => unit.id === id);
    if (kept) return {text: kept.text, fileName: kept.fileName};
    throw new DeskRefusal(
      `This device has no unit "${id}". If it came from a file, open that file on the first page, then come back to this address.`,
    );
  }

  /** The unit of that id, ready to be worked on. Rejects with a DeskRefusal when there is none or its file has mistakes. */
  async unit(store: AttemptStore, id: string): Promise<Unit> {
    const {unit, mistakes} = await this.load(await this.source(store, id));
    if (unit) return unit;
    const first = mistakes[0];
    throw new DeskRefusal(
      first
        ? `The file of unit "${id}" has ${mistakes.length} mistake${mistakes.length === 1 ? '' : 's'}; the first at line ${first.line}: ${first.message} ${first.mend}`
        : `The unit "${id}" could not be loaded. Reload the page and try again.`,
    );
  }

  /** Validates a unit's text. The same text is validated once. */
  load(source: UnitSource): Promise<LoadedUnit> {
    const key = JSON.stringify(source);
    const known = this.loaded.get(key);
    if (known) return known;
    const loading = this.ask('unit', {source});
    this.loaded.set(key, loading);
    loading.catch(() => this.loaded.delete(key));
    return loading;
  }

  catalogue(source: UnitSource): Promise<readonly CatalogueEntry[]> {
    return this.ask('catalogue', {source});
  }

  complaint(source: UnitSource, faults: readonly string[]): Promise<string> {
    return this.ask('complaint', {source, faults});
  }

  seal(
    source: UnitSource,
    faults: readonly string[],
    complaint: string,
    meter?: MeterFlaw,
  ): Promise<HiddenFault> {
    return this.ask('seal', {source, faults, complaint, ...(meter ? {meter} : {})});
  }

  /**
   * How hard each fault of a unit is to find. Known beforehand for our own units; that of a person's unit is worked out
   * in a worker of its own, so that the desk goes on answering, and kept for the next time.
   *
   * @param tell hears how far the work is, 0 … 1
   */
  async difficulties(
    store: AttemptStore,
    id: string,
    tell: (share: number) => void = () => undefined,
  ): Promise<readonly FaultDifficulty[]> {
    const source = await this.source(store, id);
    if ('shipped' in source) return this.ask('difficulties', {source}, tell);
    const name = `difficulty ${behaviourHash(await this.unit(store, id))}`;
    const kept = await store.setting(name).catch(() => undefined);
    if (kept) return JSON.parse(kept) as FaultDifficulty[];
    const apart = new Desk(this.openPort);
    const found = await apart.ask('difficulties', {source}, tell).finally(() => apart.close());
    await store.putSetting(name, JSON.stringify(found)).catch(() => undefined);
    return found;
  }

  /** Hides one fault of the kind wanted, drawn at random, and begins the attempt on it. */
  async beginCall(
    store: AttemptStore,
    unit: {id: string; title: string},
    wanted: Difficulty | WantedFault,
    tell?: (share: number) => void,
  ): Promise<AttemptHead> {
    const kind = typeof wanted === 'string' ? {difficulty: wanted} : wanted;
    const seed = randomSeed();
    const source = await this.source(store, unit.id);
    // what is known of our own units never leaves the worker
    const known = 'shipped' in source ? {} : {known: await this.difficulties(store, unit.id, tell)};
    const hidden = await this.ask('pick', {source, wanted: kind, ...known, seed}, tell);
    return store.begin({
      ...hidden,
      unit: unit.id,
      unitTitle: unit.title,
      seed,
      purpose: 'call',
      ...(kind.difficulty ? {difficulty: kind.difficulty} : {}),
    });
  }

  /** Begins an attempt on a healthy unit. */
  async beginHealthy(
    store: AttemptStore,
    unit: {id: string; title: string},
    purpose: 'free-run' | 'first-reading',
  ): Promise<AttemptHead> {
    const source = await this.source(store, unit.id);
    const complaint =
      purpose === 'free-run'
        ? 'Free run: nothing is wrong with this unit.'
        : 'First reading: nothing is wrong with this panel.';
    const hidden = await this.seal(source, [], complaint);
    return store.begin({
      ...hidden,
      unit: unit.id,
      unitTitle: unit.title,
      seed: randomSeed(),
      purpose,
    });
  }

  /** Asks the worker. Rejects with a DeskRefusal that carries its sentence. */
  ask<Q extends DeskQuestion>(
    question: Q,
    ask: DeskAnswers[Q]['ask'],
    tell: (share: number) => void = () => undefined,
  ): Promise<DeskAnswers[Q]['answer']> {
    const number = this.asked++;
    const port = (this.port ??= this.connect());
    return new Promise((resolve, reject) => {
      this.waiting.set(number, {resolve: resolve as (answer: unknown) => void, reject, tell});
      port.postMessage({number, question, ask} as DeskRequest);
    });
  }

  /** Ends the worker, where it was asked something. */
  close(): void {
    this.port?.terminate?.();
    this.port = undefined;
  }

  private connect(): DeskPort {
    const port = this.openPort();
    port.addEventListener('message', (event) => this.hear((event as MessageEvent<DeskReply>).data));
    port.addEventListener('error', () => this.lose());
    return port;
  }

  private hear(reply: DeskReply): void {
    const waiting = this.waiting.get(reply.number);
    if ('share' in reply) return waiting?.tell(reply.share);
    this.waiting.delete(reply.number);
    if ('refused' in reply) waiting?.reject(new DeskRefusal(reply.refused));
    else waiting?.resolve(reply.answer);
  }

  /** The worker did not start (a lost file, an old tab after an update). Everyone waiting is told; the next question tries anew. */
  private lose(): void {
    this.port = undefined;
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const {reject} of waiting)
      reject(
        new DeskRefusal(
          'A part of Rungbench did not load. Check that it is still being served, then reload the page.',
        ),
      );
  }
}

function listed(known: Omit<ListedUnit, 'mistakes'>, {unit, mistakes}: LoadedUnit): ListedUnit {
  return {...known, title: unit?.title ?? known.title, unit, mistakes};
}

/** A seed for the random fault and the meter; 31 bits, so that it stays a small integer everywhere. */
export function randomSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] >>> 1;
}

let theDesk: Desk | undefined;

/** The desk of this tab. */
export function desk(): Desk {
  theDesk ??= new Desk(
    () => new Worker(new URL('./desk.worker.ts', import.meta.url), {type: 'module'}) as DeskPort,
  );
  return theDesk;
}

/** For tests: makes `other` the desk that {@link desk} gives. */
export function useDesk(other: Desk): void {
  theDesk = other;
}
