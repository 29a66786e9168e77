import type {Action} from '../../src/bench/actions.ts';
import type {AttemptRecord} from '../../src/bench/attempt.ts';
import type {AttemptStore, KeptHookup, NewAttempt, StoreChange} from '../../src/store/attempts.ts';

/** The few things that Mocha's and Vitest's ways of writing a test have in common. */
export interface TestWords {
  it(title: string, test: () => Promise<void>): void;
  equal(found: unknown, expected: unknown): void;
}

export const aCall: NewAttempt = {
  unit: 'practice-panel',
  unitTitle: 'Practice panel',
  complaint: 'The lamp does not light.',
  sealed: 'sealed-text',
  seed: 7,
  purpose: 'call',
};

export const aRecord: AttemptRecord = {
  format: 'rungbench-attempt',
  version: 1,
  id: 'imported-attempt',
  unit: 'practice-panel',
  complaint: 'The lamp does not light.',
  sealed: 'sealed-text',
  seed: 7,
  begunAt: '2026-03-01T10:00:00.000Z',
  actions: [
    {do: 'wait', seconds: 10},
    {do: 'note', text: 'quiet'},
  ],
};

const wait = (seconds: number): Action => ({do: 'wait', seconds});

/** The code with which the store refused, or `done`. */
export async function codeOf(work: Promise<unknown>): Promise<string> {
  try {
    await work;
    return 'done';
  } catch (error) {
    return (error as {code?: string}).code ?? String(error);
  }
}

/** What every store does, whether it keeps things or not. `open` gives an empty one. */
export function storeContract({it, equal}: TestWords, open: () => Promise<AttemptStore>): void {
  it('gives back an attempt as its actions, in order', async () => {
    const store = await open();
    const {id} = await store.begin(aCall);
    await store.append(id, 0, wait(10));
    await store.append(id, 1, {do: 'read', red: 'TB2.Y', black: 'TB2.C', expected: {value: 24}});
    const record = await store.get(id);
    equal(record?.actions, [
      wait(10),
      {do: 'read', red: 'TB2.Y', black: 'TB2.C', expected: {value: 24}},
    ]);
    equal(
      [record?.format, record?.version, record?.unit, record?.seed],
      ['rungbench-attempt', 1, 'practice-panel', 7],
    );
  });

  it('refuses an action that is out of step and writes nothing of it', async () => {
    const store = await open();
    const {id} = await store.begin(aCall);
    await store.append(id, 0, wait(1));
    equal(await codeOf(store.append(id, 0, wait(2))), 'out-of-step');
    equal(await codeOf(store.append(id, 5, wait(3))), 'out-of-step');
    equal((await store.get(id))?.actions, [wait(1)]);
    equal((await store.head(id))?.actionCount, 1);
  });

  it('keeps minutes, stage and verdict with the action that changed them', async () => {
    const store = await open();
    const {id} = await store.begin(aCall);
    await store.append(id, 0, wait(60), {minutes: 1, stage: 'working'});
    await store.mark(id, {minutes: 3, stage: 'named', verdict: 'right'});
    const head = await store.head(id);
    equal([head?.minutes, head?.stage, head?.verdict], [3, 'named', 'right']);
  });

  it('lists what was worked on last first', async () => {
    const store = await open();
    const first = await store.begin(aCall);
    await later();
    const second = await store.begin(aCall);
    equal(
      (await store.list()).map(({id}) => id),
      [second.id, first.id],
    );
    await later();
    await store.append(first.id, 0, wait(1));
    equal(
      (await store.list()).map(({id}) => id),
      [first.id, second.id],
    );
  });

  it('takes in a whole record once', async () => {
    const store = await open();
    const more = {
      unitTitle: 'Practice panel',
      purpose: 'call',
      progress: {minutes: 2, stage: 'working'},
    } as const;
    await store.add(aRecord, more);
    equal(await store.get(aRecord.id), aRecord);
    equal(await codeOf(store.add(aRecord, more)), 'already-here');
    equal((await store.list()).length, 1);
    await store.append(aRecord.id, 2, wait(5));
    equal((await store.get(aRecord.id))?.actions.length, 3);
  });

  it('deletes an attempt with all its actions', async () => {
    const store = await open();
    const {id} = await store.begin(aCall);
    await store.append(id, 0, wait(1));
    await store.remove(id);
    equal(await store.get(id), undefined);
    equal(await store.list(), []);
    equal(await codeOf(store.append(id, 1, wait(2))), 'not-found');
  });

  it('keeps units and settings by name and forgets them when told', async () => {
    const store = await open();
    await store.putUnit({
      id: 'mine',
      title: 'Mine',
      fileName: 'mine.yaml',
      text: 'id: mine',
      keptAt: '2026-03-01T10:00:00.000Z',
    });
    await store.putSetting('bench', '{}');
    equal(
      (await store.units()).map(({id}) => id),
      ['mine'],
    );
    equal(await store.setting('bench'), '{}');
    equal(await store.setting('other'), undefined);
    await store.removeUnit('mine');
    equal(await store.units(), []);
  });

  it('keeps work at wiring tasks, newest first, and refuses what another tab has overtaken', async () => {
    const store = await open();
    const work = (id: string, deedCount: number, touchedAt: string): KeptHookup => ({
      id,
      task: 'lamp-and-switch',
      taskTitle: 'A lamp and its switch',
      begunAt: '2026-03-01T10:00:00.000Z',
      touchedAt,
      deedCount,
      attempt: '{}',
      result: '{}',
    });
    await store.putHookup(work('one', 1, '2026-03-01T10:01:00.000Z'), 0);
    await store.putHookup(work('two', 1, '2026-03-01T10:02:00.000Z'), 0);
    equal(
      (await store.hookups()).map(({id}) => id),
      ['two', 'one'],
    );
    await store.putHookup(work('one', 2, '2026-03-01T10:03:00.000Z'), 1);
    // another tab that still believes in one deed
    equal(
      await codeOf(store.putHookup(work('one', 2, '2026-03-01T10:04:00.000Z'), 1)),
      'out-of-step',
    );
    equal((await store.hookup('one'))?.touchedAt, '2026-03-01T10:03:00.000Z');
    await store.removeHookup('one');
    equal(await store.hookup('one'), undefined);
    equal((await store.hookups()).length, 1);
  });

  it('keeps wiring tasks of a person by name and forgets them when told', async () => {
    const store = await open();
    await store.putTask({
      id: 'mine',
      title: 'Mine',
      fileName: 'mine.yaml',
      text: 'id: mine',
      keptAt: '2026-03-01T10:00:00.000Z',
    });
    equal(
      (await store.tasks()).map(({id}) => id),
      ['mine'],
    );
    equal(await store.units(), []);
    await store.removeTask('mine');
    equal(await store.tasks(), []);
  });

  it('tells of every change and which action it was', async () => {
    const store = await open();
    const told: StoreChange[] = [];
    const stop = store.onChange((change) => told.push(change));
    const {id} = await store.begin(aCall);
    await store.append(id, 0, wait(1));
    stop();
    await store.append(id, 1, wait(2));
    equal(told, [
      {what: 'attempt', id},
      {what: 'attempt', id, action: wait(1)},
    ]);
  });
}

/** Past the resolution of the clock that orders the list. */
function later(): Promise<void> {
  const begun = Date.now();
  return new Promise((resolve) => {
    const look = (): void => {
      if (Date.now() > begun) resolve();
      else setTimeout(look, 1);
    };
    look();
  });
}
