import {expect, fixture, html} from '@open-wc/testing';
import {openSealed} from '../../src/bench/sealed-fault.ts';
import '../../src/pages/hide/hide-page.element.ts';
import type {RbHidePage} from '../../src/pages/hide/hide-page.element.ts';
import {deskInPage, inside, textOf, until} from './desk-in-page.ts';

async function hidePage(unit = 'practice-panel'): Promise<RbHidePage> {
  const page = await fixture<RbHidePage>(html`<rb-hide-page .unitId=${unit}></rb-hide-page>`);
  await until(
    () =>
      page.shadowRoot?.querySelector('rb-fault-list')?.shadowRoot?.querySelector('.modes button') ??
      textOf(page).includes('No fault'),
  );
  return page;
}

function modes(page: RbHidePage): HTMLButtonElement[] {
  return [
    ...(inside(page, 'rb-fault-list').shadowRoot?.querySelectorAll<HTMLButtonElement>(
      '.modes button',
    ) ?? []),
  ];
}

async function choose(page: RbHidePage, words: string): Promise<void> {
  const search = inside<HTMLInputElement>(inside(page, 'rb-fault-list'), '#words');
  search.value = words;
  search.dispatchEvent(new Event('input'));
  await until(() => modes(page).length === 1);
  modes(page)[0].click();
  search.value = '';
  search.dispatchEvent(new Event('input'));
  await until(() => modes(page).length > 1);
}

const complaint = (page: RbHidePage): HTMLTextAreaElement => inside(page, '#complaint');
const button = (page: RbHidePage, words: string): HTMLButtonElement =>
  [...(page.shadowRoot?.querySelectorAll<HTMLButtonElement>('.hand button') ?? [])].find((each) =>
    textOf(each).includes(words),
  )!;

describe('<rb-hide-page>', () => {
  afterEach(() => history.replaceState(null, '', location.pathname + location.search));

  it('is accessible, empty and with a fault chosen', async () => {
    deskInPage();
    const page = await hidePage();
    await expect(page).to.be.accessible();
    await choose(page, 'relay coil open');
    await until(() => complaint(page).value);
    await expect(page).to.be.accessible();
  });

  it('derives what the customer says from the chosen fault', async () => {
    deskInPage();
    const page = await hidePage();
    await choose(page, 'relay coil open');
    expect(button(page, 'Hand over').disabled).to.equal(true);
    await until(() => complaint(page).value.includes('lamp does not light'));
    expect(button(page, 'Hand over').disabled).to.equal(false);
  });

  it('takes two faults and no third, and gives them back', async () => {
    deskInPage();
    const page = await hidePage();
    await choose(page, 'relay coil open');
    await choose(page, 'LT1 filament');
    await until(() => page.shadowRoot?.querySelectorAll('.chosen li').length === 2);
    const third = modes(page).find((each) => each.getAttribute('aria-pressed') === 'false')!;
    expect(third.getAttribute('aria-disabled')).to.equal('true');
    third.click();
    expect(page.shadowRoot?.querySelectorAll('.chosen li').length).to.equal(2);
    inside(page, '.chosen button').click();
    await until(() => page.shadowRoot?.querySelectorAll('.chosen li').length === 1);
    expect(third.getAttribute('aria-disabled')).to.equal(null);
  });

  it('keeps the words that a person wrote when the fault changes, and gives the derived ones at a press', async () => {
    deskInPage();
    const page = await hidePage();
    await choose(page, 'relay coil open');
    await until(() => complaint(page).value);
    complaint(page).value = 'It never lights.';
    complaint(page).dispatchEvent(new Event('input'));
    await choose(page, 'LT1 filament');
    await until(() => textOf(page).includes('Take what follows'));
    expect(complaint(page).value).to.equal('It never lights.');
    [...(page.shadowRoot?.querySelectorAll<HTMLButtonElement>('button.plain') ?? [])]
      .find((each) => textOf(each).includes('Take what follows'))!
      .click();
    await until(() => complaint(page).value.includes('lamp does not light'));
  });

  it('makes a link in which nothing of the fault can be read', async () => {
    deskInPage();
    const page = await hidePage();
    await choose(page, 'relay coil open');
    await until(() => complaint(page).value);
    button(page, 'Make a link').click();
    const share = await until(() => page.shadowRoot?.querySelector('rb-share-link'));
    const {link} = share;
    expect(link).to.match(/#\/open\/[\w-]+$/);
    for (const word of ['coil-open', 'practice', 'complaint', 'lamp'])
      expect(link.split('#')[1]).not.to.contain(word);
    const opened = openSealed(link.split('#/open/')[1]);
    expect(opened).to.deep.equal({
      hidden: {unit: 'practice-panel', faults: ['K1:coil-open'], complaint: complaint(page).value},
    });
  });

  it('closes the lid: the next page takes its place, nothing chosen is left, nothing readable is kept', async () => {
    const {store} = deskInPage();
    history.replaceState(null, '', '#/hide/practice-panel');
    const entries = history.length;
    const page = await hidePage();
    await choose(page, 'relay coil open');
    await until(() => complaint(page).value);
    button(page, 'Hand over').click();
    await until(() => location.hash.startsWith('#/handed/'));
    expect(history.length).to.equal(entries);
    await page.updateComplete;
    expect(page.shadowRoot?.querySelectorAll('.chosen li').length).to.equal(0);
    expect(complaint(page).value).to.equal('');
    const [head] = await store.list();
    expect(location.hash).to.equal(`#/handed/${head.id}`);
    expect(JSON.stringify(head)).not.to.contain('coil');
  });

  it('says so for a unit that is not on this device', async () => {
    deskInPage();
    const page = await hidePage('elsewhere');
    expect(textOf(page)).to.contain('This device has no unit');
    expect(inside<HTMLAnchorElement>(page, 'a').getAttribute('href')).to.equal('#/');
  });
});
