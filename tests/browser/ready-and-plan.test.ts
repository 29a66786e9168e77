import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/plan/plan-page.element.ts';
import type {RbPlanPage} from '../../src/pages/plan/plan-page.element.ts';
import '../../src/pages/ready/ready-page.element.ts';
import type {RbReadyPage} from '../../src/pages/ready/ready-page.element.ts';
import type {MemoryStore} from '../../src/store/memory-store.ts';
import {deskInPage, inside, textOf, until} from './desk-in-page.ts';

async function finishedCall(store: MemoryStore, right: boolean): Promise<void> {
  const {id} = await store.begin({
    unit: 'practice-panel',
    unitTitle: 'Practice panel',
    complaint: 'The lamp does not light.',
    sealed: '',
    seed: 1,
    purpose: 'call',
  });
  await store.mark(id, {
    minutes: 8,
    stage: 'named',
    judged: {
      points: 80,
      occasions: [
        {skill: 'safeties-in-series', right},
        {skill: 'meter-safety', right: true},
      ],
    },
  });
}

describe('<rb-ready-page>', () => {
  const open = async (): Promise<RbReadyPage> => {
    const page = await fixture<RbReadyPage>(html`<rb-ready-page></rb-ready-page>`);
    await until(() => page.shadowRoot!.querySelector('table'));
    return page;
  };

  it('is accessible, and has nothing shown before the first call', async () => {
    deskInPage();
    const page = await open();
    await expect(page).to.be.accessible();
    expect(textOf(page)).to.contain('Not yet.');
    expect(textOf(page)).to.match(/0 of the 7 skills/);
  });

  it('counts a skill as shown after a few calls that proved it, and proposes what is weakest next', async () => {
    const {store} = deskInPage();
    for (let i = 0; i < 2; i++) await finishedCall(store, true);
    await finishedCall(store, false);
    const page = await open();
    const row = [...page.shadowRoot!.querySelectorAll('tbody tr')].map(textOf);
    expect(row.find((each) => each.includes('Meter safety'))).to.match(/Shown .* 3 of 3 .*Met/);
    expect(row.find((each) => each.includes('Safeties in series'))).to.contain('2 of 3');
    expect(textOf(inside(page, '#next'))).to.contain('Safeties in series');
  });
});

describe('<rb-plan-page>', () => {
  const open = async (): Promise<RbPlanPage> => {
    const page = await fixture<RbPlanPage>(html`<rb-plan-page></rb-plan-page>`);
    await until(() => page.shadowRoot!.querySelector('.lines li'));
    return page;
  };
  const press = (page: RbPlanPage, name: string): void =>
    [...page.shadowRoot!.querySelectorAll('button')]
      .find((each) => textOf(each).includes(name))!
      .click();

  it('fills a set up to ten, makes a sealed link for each call, and keeps it', async () => {
    const {store} = deskInPage();
    const page = await open();
    press(page, 'Fill up to');
    await until(() => page.shadowRoot!.querySelectorAll('.set li').length === 10);
    await expect(page).to.be.accessible();
    press(page, 'Make the links');
    const links = await until(() => page.shadowRoot!.querySelector('textarea')?.value.split('\n'));
    expect(links).to.have.length(10);
    for (const link of links) expect(link).to.match(/#\/open\/[\w-]+$/);
    press(page, 'Keep');
    await until(() => page.shadowRoot!.querySelector('.kept li'));
    expect(JSON.parse((await store.setting('sets of calls'))!)).to.have.length(1);
  });

  it('lists what a customer notices, narrowed by section', async () => {
    deskInPage();
    const page = await open();
    const section = inside<HTMLSelectElement>(page, '#section');
    section.value = 'safeties';
    section.dispatchEvent(new Event('change'));
    await page.updateComplete;
    const lines = [...page.shadowRoot!.querySelectorAll('.lines li')].map(textOf);
    expect(lines.length).to.be.greaterThan(5);
    expect(lines.every((line) => line.includes('Safeties'))).to.equal(true);
  });
});
