import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/history/history-page.element.ts';
import type {RbHistoryPage} from '../../src/pages/history/history-page.element.ts';
import {aCall} from '../store/attempt-store-contract.ts';
import {chooseFile, deskInPage, inside, textOf, until} from './desk-in-page.ts';

const panel = {shipped: 'practice-panel'} as const;

async function historyPage(): Promise<RbHistoryPage> {
  const page = await fixture<RbHistoryPage>(html`<rb-history-page></rb-history-page>`);
  await until(() => !textOf(page).includes('Looking through'));
  return page;
}

const linkOf = (page: RbHistoryPage, index: number): string | null | undefined =>
  page.shadowRoot?.querySelectorAll('.do a')[index].getAttribute('href');

describe('<rb-history-page>', () => {
  it('leads to the first call when there is none', async () => {
    deskInPage();
    const page = await historyPage();
    expect(textOf(page)).to.contain('No calls yet');
    await expect(page).to.be.accessible();
  });

  it('lists unit, complaint, result and minutes, and leads to the bench or the debrief', async () => {
    const {store} = deskInPage();
    const done = await store.begin({...aCall, complaint: 'It hums.'});
    await store.append(
      done.id,
      0,
      {do: 'give-up'},
      {minutes: 12, stage: 'given-up', verdict: 'given-up'},
    );
    const open = await store.begin(aCall);
    await store.append(open.id, 0, {do: 'wait', seconds: 5}, {minutes: 4, stage: 'working'});
    const page = await historyPage();
    const text = textOf(page);
    for (const each of [
      'It hums.',
      'Given up',
      '12 min',
      'Not finished',
      '4 min',
      'Practice panel',
    ])
      expect(text).to.contain(each);
    expect([linkOf(page, 0), linkOf(page, 1)].sort()).to.deep.equal([
      `#/call/${open.id}`,
      `#/debrief/${done.id}`,
    ]);
    await expect(page).to.be.accessible();
  });

  it('deletes only after asking', async () => {
    const {store} = deskInPage();
    await store.begin(aCall);
    const page = await historyPage();
    inside(page, '.delete').click();
    const dialog = inside<HTMLDialogElement>(page, 'dialog');
    await until(() => dialog.open);
    await expect(page).to.be.accessible();
    inside(page, 'dialog .button:not(.danger)').click();
    await until(() => !dialog.open);
    expect((await store.list()).length).to.equal(1);
    inside(page, '.delete').click();
    await until(() => dialog.open);
    inside(page, 'dialog .danger').click();
    await until(() => textOf(page).includes('No calls yet'));
    expect(await store.list()).to.deep.equal([]);
  });

  it('imports an exported call and refuses a damaged one with the reason', async () => {
    const {desk, store} = deskInPage();
    const hidden = await desk.seal(panel, ['K1:coil-open'], 'No light.');
    const {id} = await store.begin({
      ...hidden,
      unit: 'practice-panel',
      unitTitle: 'Practice panel',
      seed: 1,
      purpose: 'call',
    });
    await store.append(id, 0, {do: 'set', target: 'S1.position', value: 'on'});
    const text = await desk.ask('exported', {record: (await store.get(id))!});
    await store.remove(id);
    const page = await historyPage();
    chooseFile(inside(page, '#file'), 'half.json', text.slice(0, 80));
    await until(() => textOf(page).includes('Not imported'));
    expect(textOf(page)).to.contain('half.json: This is not a whole JSON file');
    expect(await store.list()).to.deep.equal([]);
    chooseFile(inside(page, '#file'), 'whole.json', text);
    await until(() => textOf(page).includes('Imported: Practice panel, 1 actions'));
    expect((await store.get(id))?.actions).to.deep.equal([
      {do: 'set', target: 'S1.position', value: 'on'},
    ]);
  });
});
