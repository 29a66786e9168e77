import {expect} from '@open-wc/testing';
import type {Action} from '../../src/bench/actions.ts';
import type {AttemptRecord} from '../../src/bench/attempt.ts';
import type {BenchView} from '../../src/bench/bench-view.ts';
import type {BenchLink} from '../../src/pages/bench/bench-link.ts';
import {BenchSession} from '../../src/pages/bench/bench-session.ts';
import {StoreError} from '../../src/store/attempt-store.ts';
import {MemoryStore} from '../../src/store/memory-store.ts';
import {smallUnit, viewOf} from './bench-fixtures.ts';

/** A bench that counts minutes, refuses to wait for nothing, and takes a moment for each action. */
function countingLink(): BenchLink {
  let minutes = 0;
  return {
    open: async (_unit, record: AttemptRecord) => {
      minutes = record.actions.length;
      return viewOf({minutes});
    },
    act: async (action: Action) => {
      await new Promise((resolve) => setTimeout(resolve, 1));
      if (action.do === 'wait' && action.seconds === 0) return {refused: 'Wait for what?'};
      return {view: viewOf({minutes: ++minutes})};
    },
    catalogue: async () => [],
    debrief: () => Promise.reject(new Error('not named')),
    close: () => undefined,
  };
}

async function begun(store: MemoryStore): Promise<AttemptRecord> {
  const {id} = await store.begin({
    unit: 'small',
    unitTitle: 'Small unit',
    complaint: 'It does not start.',
    sealed: 'sealed',
    seed: 1,
    purpose: 'call',
  });
  return (await store.get(id))!;
}

const note = (text: string): Action => ({do: 'note', text});

describe('a bench session', () => {
  it('keeps an action before it shows it', async () => {
    const store = new MemoryStore();
    const record = await begun(store);
    const order: string[] = [];
    const append = store.append.bind(store);
    store.append = async (...args) => {
      await append(...args);
      order.push('kept');
    };
    const session = await BenchSession.open(record, smallUnit, countingLink(), store, (view) =>
      order.push(`shown ${view.minutes}`),
    );
    await session.act(note('one'));
    expect(order).to.deep.equal(['shown 0', 'kept', 'shown 1']);
  });

  it('keeps actions in the order in which they were asked for, however fast', async () => {
    const store = new MemoryStore();
    const record = await begun(store);
    const session = await BenchSession.open(
      record,
      smallUnit,
      countingLink(),
      store,
      () => undefined,
    );
    await Promise.all(['a', 'b', 'c', 'd'].map((text) => session.act(note(text))));
    expect((await store.get(record.id))?.actions).to.deep.equal(['a', 'b', 'c', 'd'].map(note));
  });

  it('neither keeps nor shows what was refused, and goes on after it', async () => {
    const store = new MemoryStore();
    const record = await begun(store);
    const shown: BenchView[] = [];
    const session = await BenchSession.open(record, smallUnit, countingLink(), store, (view) =>
      shown.push(view),
    );
    expect(await session.act({do: 'wait', seconds: 0})).to.deep.equal({refused: 'Wait for what?'});
    expect(shown).to.have.length(1);
    await session.act(note('after'));
    expect((await store.get(record.id))?.actions).to.deep.equal([note('after')]);
  });

  it('does not show what could not be kept', async () => {
    const store = new MemoryStore();
    const record = await begun(store);
    const shown: BenchView[] = [];
    const session = await BenchSession.open(record, smallUnit, countingLink(), store, (view) =>
      shown.push(view),
    );
    store.append = () => Promise.reject(new StoreError('full', 'This device is full.'));
    let refused: unknown;
    await session.act(note('lost')).catch((error: unknown) => (refused = error));
    expect(refused).to.be.instanceOf(StoreError);
    expect(shown).to.have.length(1);
  });

  it('is resumed by its actions', async () => {
    const store = new MemoryStore();
    const record = await begun(store);
    const first = await BenchSession.open(
      record,
      smallUnit,
      countingLink(),
      store,
      () => undefined,
    );
    await first.act(note('one'));
    await first.act(note('two'));
    let resumed: BenchView | undefined;
    await BenchSession.open(
      (await store.get(record.id))!,
      smallUnit,
      countingLink(),
      store,
      (view) => (resumed = view),
    );
    expect(resumed?.minutes).to.equal(2);
  });
});
