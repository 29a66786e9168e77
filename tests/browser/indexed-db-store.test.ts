import {expect} from '@open-wc/testing';
import {openIndexedDbStore, type IndexedDbStore} from '../../src/store/indexed-db-store.ts';
import {aCall, codeOf, storeContract} from '../store/attempt-store-contract.ts';

let count = 0;
const open: {store: IndexedDbStore; name: string}[] = [];

/** A store of its own database, or another tab's on the database of that name. */
async function openStore(
  name = `test-${Date.now()}-${count++}`,
  onLost: (reason: string) => void = () => undefined,
): Promise<IndexedDbStore> {
  const store = await openIndexedDbStore(onLost, name);
  open.push({store, name});
  return store;
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await nextTurn();
}

describe('the store in IndexedDB', () => {
  afterEach(() => {
    for (const {store, name} of open.splice(0)) {
      store.close();
      indexedDB.deleteDatabase(name);
    }
  });

  storeContract({it, equal: (found, expected) => expect(found).to.deep.equal(expected)}, () =>
    openStore(),
  );

  it('has everything again after it was closed and opened anew', async () => {
    const first = await openStore('kept');
    const {id} = await first.begin(aCall);
    await first.append(id, 0, {do: 'wait', seconds: 10});
    first.close();
    const second = await openStore('kept');
    await second.claim(id);
    expect((await second.get(id))?.actions).to.deep.equal([{do: 'wait', seconds: 10}]);
    await second.append(id, 1, {do: 'wait', seconds: 20});
    expect((await second.get(id))?.actions.length).to.equal(2);
  });

  it('keeps what an older version of the tutor wrote', async () => {
    const name = 'from-version-1';
    open.push({store: {close: () => undefined} as IndexedDbStore, name});
    await new Promise<void>((resolve, reject) => {
      const opening = indexedDB.open(name, 1);
      opening.onerror = () => reject(opening.error);
      opening.onupgradeneeded = () => {
        const {result: database} = opening;
        database.createObjectStore('heads', {keyPath: 'id'});
        for (const table of ['actions', 'units', 'settings']) database.createObjectStore(table);
        opening.transaction!.objectStore('settings').put('{"muted":true}', 'bench');
      };
      opening.onsuccess = () => {
        opening.result.close();
        resolve();
      };
    });
    const store = await openStore(name);
    expect(await store.setting('bench')).to.equal('{"muted":true}');
    expect(await store.hookups()).to.deep.equal([]);
  });

  it('tells the older of two tabs that the newer has taken over, and refuses what it still does', async () => {
    const older = await openStore('two-tabs');
    const {id} = await older.begin(aCall);
    await older.append(id, 0, {do: 'wait', seconds: 1});
    let told = false;
    older.onTakenOver(id, () => (told = true));
    const newer = await openStore('two-tabs');
    await newer.claim(id);
    await until(() => told);
    expect(await codeOf(older.append(id, 1, {do: 'wait', seconds: 2}))).to.equal('taken-over');
    await newer.append(id, 1, {do: 'wait', seconds: 3});
    expect((await newer.get(id))?.actions).to.deep.equal([
      {do: 'wait', seconds: 1},
      {do: 'wait', seconds: 3},
    ]);
  });

  it('keeps one row of actions when two tabs append at the same moment', async () => {
    const a = await openStore('race');
    const {id} = await a.begin(aCall);
    const b = await openStore('race');
    await b.claim(id);
    const codes = await Promise.all([
      codeOf(a.append(id, 0, {do: 'note', text: 'a'})),
      codeOf(b.append(id, 0, {do: 'note', text: 'b'})),
      codeOf(b.append(id, 0, {do: 'note', text: 'twice'})),
    ]);
    expect(codes).to.deep.equal(['taken-over', 'done', 'out-of-step']);
    expect((await b.get(id))?.actions).to.deep.equal([{do: 'note', text: 'b'}]);
    expect((await b.head(id))?.actionCount).to.equal(1);
  });

  it('lets another tab hear of changes', async () => {
    const here = await openStore('hear');
    const there = await openStore('hear');
    const heard: string[] = [];
    there.onChange(({what, id}) => heard.push(`${what} ${id}`));
    await here.putSetting('first', 'yes');
    await until(() => heard.length > 0);
    expect(heard).to.deep.equal(['setting first']);
  });

  it('makes way for a newer version of the tutor and says so', async () => {
    let lost = '';
    await openStore('newer', (reason) => (lost = reason));
    const newer = indexedDB.open('newer', 3);
    await new Promise((resolve, reject) => {
      newer.onsuccess = resolve;
      newer.onerror = reject;
    });
    newer.result.close();
    expect(lost).to.contain('newer version');
  });

  it('gives one sentence when the browser fails, and none of its own words', async () => {
    const store = await openStore('closed');
    store.close();
    let message = '';
    await store.list().catch((error: Error) => (message = error.message));
    expect(message).to.contain('Reload the page');
  });

  it('appends in a few milliseconds whatever the length of the attempt', async () => {
    const store = await openStore();
    const {id} = await store.begin(aCall);
    const times: number[] = [];
    for (let index = 0; index < 200; index++) {
      const begun = performance.now();
      await store.append(
        id,
        index,
        {do: 'read', red: 'TB2.Y', black: 'TB2.C'},
        {minutes: index, stage: 'working'},
      );
      times.push(performance.now() - begun);
    }
    const median = (part: number[]): number => [...part].sort((a, b) => a - b)[part.length / 2];
    // the last hundred must not cost more than the first: generous, because other work runs beside
    expect(median(times.slice(100))).to.be.lessThan(4 * median(times.slice(0, 100)) + 5);
    expect((await store.get(id))?.actions.length).to.equal(200);
  });
});
