import {readFileSync} from 'node:fs';
import {describe, expect, it} from 'vitest';
import {
  readShippedUnit,
  readShippedUnitText,
  shippedUnitIds,
} from '../../src/content/node/read-shipped-unit.ts';
import {openSealed} from '../../src/bench/sealed-fault.ts';
import {Desk} from '../../src/pages/desk/desk.ts';
import type {DeskPort} from '../../src/pages/desk/desk.ts';
import {deskAnswers} from '../../src/pages/desk/desk-answers.ts';
import type {DeskReply, DeskRequest} from '../../src/pages/desk/desk-messages.ts';
import {replyTo} from '../../src/pages/desk/desk-reply.ts';
import type {DifficultyFile} from '../../src/diagnosis/difficulty-file.ts';
import {difficultyFileOf} from '../../src/diagnosis/node/read-difficulties.ts';
import {importAttempt} from '../../src/pages/history/import-attempt.ts';
import {MemoryStore} from '../../src/store/memory-store.ts';

const panel = {shipped: 'practice-panel'} as const;

/** A desk whose worker is this process; keeps all that came back to the page's side. */
function aDesk(): {desk: Desk; heard: DeskReply[]} {
  const heard: DeskReply[] = [];
  const answers = deskAnswers({
    ids: shippedUnitIds(),
    unit: async (id) => readShippedUnit(id),
    difficulty: async (id) =>
      JSON.parse(readFileSync(difficultyFileOf(id), 'utf8')) as DifficultyFile,
  });
  const desk = new Desk((): DeskPort => {
    let tell: (event: MessageEvent<DeskReply>) => void = () => undefined;
    return {
      postMessage: (request: DeskRequest) =>
        void replyTo(answers, request).then((data) => {
          heard.push(data);
          tell({data} as MessageEvent<DeskReply>);
        }),
      addEventListener: (type, listener) => {
        if (type === 'message') tell = listener;
      },
    };
  });
  return {desk, heard};
}

const own = readShippedUnitText('practice-panel')
  .replace('id: practice-panel', 'id: my-panel')
  .replace('title: Practice panel', 'title: My panel');
const kept = {
  id: 'my-panel',
  title: 'My panel',
  fileName: 'my-panel.yaml',
  text: own,
  keptAt: '2026-03-01T10:00:00.000Z',
};

describe('the desk', () => {
  it('lists our units first, then those opened from files', async () => {
    const store = new MemoryStore();
    await store.putUnit(kept);
    const units = await aDesk().desk.units(store);
    expect(units.map(({id, shipped}) => [id, shipped])).toEqual([
      ...shippedUnitIds().map((id) => [id, true]),
      ['my-panel', false],
    ]);
    expect(units.every(({unit}) => unit !== undefined)).toBe(true);
  });

  it('lists a kept file that no longer loads with its mistakes, and refuses to work on it', async () => {
    const store = new MemoryStore();
    await store.putUnit({...kept, text: own.replace('kind: relay', 'kind: realy')});
    const {desk} = aDesk();
    const broken = (await desk.units(store)).find(({id}) => id === 'my-panel');
    expect(broken?.unit).toBeUndefined();
    expect(broken?.mistakes.length).toBeGreaterThan(0);
    await expect(desk.unit(store, 'my-panel')).rejects.toThrow(/line \d+/);
  });

  it('says what to do about a unit that this device has not', async () => {
    await expect(aDesk().desk.unit(new MemoryStore(), 'elsewhere')).rejects.toThrow(
      'open that file',
    );
  });

  it('begins a random call of which the page learns only the complaint', async () => {
    const {desk, heard} = aDesk();
    const store = new MemoryStore();
    const [unit] = (await desk.units(store)).filter(({id}) => id === 'practice-panel');
    const head = await desk.beginCall(store, unit, 'easy');
    const opened = openSealed(head.sealed);
    if (!('hidden' in opened)) throw new Error(opened.reason);
    expect(opened.hidden.faults).toHaveLength(1);
    expect(head.complaint).toBe(opened.hidden.complaint);
    const told = JSON.stringify([...heard, head, await store.get(head.id)]);
    expect(told).not.toContain(JSON.stringify(opened.hidden.faults[0]));
  });

  it('begins a free run with nothing wrong', async () => {
    const {desk} = aDesk();
    const store = new MemoryStore();
    const head = await desk.beginHealthy(
      store,
      {id: 'practice-panel', title: 'Practice panel'},
      'free-run',
    );
    expect(openSealed(head.sealed)).toMatchObject({hidden: {unit: 'practice-panel', faults: []}});
  });

  it('derives a complaint that follows from what stops working', async () => {
    const {desk} = aDesk();
    expect(await desk.complaint(panel, ['K1:coil-open'])).toContain('lamp does not light');
    await expect(desk.complaint(panel, ['K9:coil-open'])).rejects.toThrow('K9:coil-open');
  });

  it('tells everyone who waits when its worker is lost, and starts another for the next question', async () => {
    let started = 0;
    let lose: () => void = () => undefined;
    const desk = new Desk(() => {
      started++;
      return {
        postMessage: () => undefined,
        addEventListener: (type, tell) => {
          if (type === 'error') lose = () => tell({} as ErrorEvent);
        },
      };
    });
    const waiting = [desk.ask('shippedIds', {}), desk.ask('opened', {sealed: 'x'})];
    lose();
    for (const each of waiting) await expect(each).rejects.toThrow('reload the page');
    desk.ask('shippedIds', {}).catch(() => undefined);
    expect(started).toBe(2);
  });
});

describe('importing an exported call', () => {
  async function exportedText(): Promise<string> {
    const {desk} = aDesk();
    const store = new MemoryStore();
    const hidden = await desk.seal(panel, ['K1:coil-open'], 'The lamp does not light.');
    const {id} = await store.begin({
      ...hidden,
      unit: 'practice-panel',
      unitTitle: 'Practice panel',
      seed: 5,
      purpose: 'call',
    });
    await store.append(id, 0, {do: 'set', target: 'S1.position', value: 'on'});
    await store.append(id, 1, {do: 'read', red: 'K1.1', black: 'K1.3', expected: {value: 24}});
    const record = await store.get(id);
    if (!record) throw new Error('not kept');
    return desk.ask('exported', {record});
  }
  const fileOf = (text: string) => ({size: text.length, text: async () => text});

  it('brings it back whole and knows how far it came', async () => {
    const store = new MemoryStore();
    const text = await exportedText();
    const head = await importAttempt(aDesk().desk, store, fileOf(text));
    expect(head).toMatchObject({
      unit: 'practice-panel',
      purpose: 'call',
      stage: 'working',
      actionCount: 2,
    });
    expect(head.minutes).toBeGreaterThan(0);
    expect(await aDesk().desk.ask('exported', {record: (await store.get(head.id))!})).toBe(text);
  });

  it.each([
    ['a file that is cut short', (text: string) => text.slice(0, text.length / 2), 'JSON'],
    ['a file of something else', () => '{"a": 1}', 'format'],
    [
      'an action that does not exist',
      (text: string) => text.replace('"do":"read"', '"do":"guess"'),
      'actions',
    ],
    [
      'a seal that was touched',
      (text: string) => text.replace(/"sealed": "..../, '"sealed": "AAAA'),
      'damaged',
    ],
    [
      'another unit written over',
      (text: string) => text.replace('"unit": "practice-panel"', '"unit": "split-heat-pump"'),
      'changed by hand',
    ],
    ['an action that cannot be done', (text: string) => text.replace('K1.1', 'K7.1'), 'Action 2'],
  ])('refuses %s with a reason and keeps nothing', async (_title, damage, reason) => {
    const store = new MemoryStore();
    await expect(
      importAttempt(aDesk().desk, store, fileOf(damage(await exportedText()))),
    ).rejects.toThrow(reason);
    expect(await store.list()).toEqual([]);
  });

  it('refuses the same call twice', async () => {
    const store = new MemoryStore();
    const text = await exportedText();
    await importAttempt(aDesk().desk, store, fileOf(text));
    await expect(importAttempt(aDesk().desk, store, fileOf(text))).rejects.toThrow('already kept');
    expect(await store.list()).toHaveLength(1);
  });

  it('refuses in words to hide the same fault twice', async () => {
    const {desk} = aDesk();
    const twice = ['HPS:stuck-open', 'HPS:stuck-open'];
    await expect(desk.complaint(panel, twice)).rejects.toThrow('is given twice');
    await expect(desk.seal(panel, twice, 'No lamp.')).rejects.toThrow('is given twice');
  });
});
