import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/home/home-page.element.ts';
import type {RbHomePage} from '../../src/pages/home/home-page.element.ts';
import {aCall} from '../store/attempt-store-contract.ts';
import {deskInPage, inside, textOf, until} from './desk-in-page.ts';

async function home(): Promise<RbHomePage> {
  const page = await fixture<RbHomePage>(html`<rb-home-page></rb-home-page>`);
  await until(() => page.shadowRoot?.querySelector('rb-call-starter, .note.danger'));
  await until(() => !textOf(page).includes('Looking through'));
  return page;
}

describe('<rb-home-page>', () => {
  afterEach(() => history.replaceState(null, '', location.pathname + location.search));

  it('is accessible', async () => {
    deskInPage();
    await expect(await home()).to.be.accessible();
  });

  it('offers the first reading to a newcomer and says that there are no calls yet', async () => {
    deskInPage();
    const page = await home();
    expect(inside<HTMLAnchorElement>(page, '.guide a').getAttribute('href')).to.equal('#/guide');
    expect(textOf(page)).to.contain('None yet');
    expect(page.shadowRoot?.querySelector('.continue')).to.equal(null);
  });

  it('does not put the first reading first again once it was done', async () => {
    const {store} = deskInPage();
    await store.putSetting('first-reading-done', 'yes');
    const page = await home();
    expect(page.shadowRoot?.querySelector('.guide')).to.equal(null);
    expect(textOf(page)).to.contain('Take the first reading');
  });

  it('offers the latest unfinished call to go on with', async () => {
    const {store} = deskInPage();
    const finished = await store.begin({...aCall, complaint: 'Done with.'});
    await store.mark(finished.id, {minutes: 3, stage: 'named', verdict: 'right'});
    const {id} = await store.begin({...aCall, complaint: 'It hums.'});
    const page = await home();
    expect(inside<HTMLAnchorElement>(page, '.continue a').getAttribute('href')).to.equal(
      `#/call/${id}`,
    );
    expect(textOf(inside(page, '.continue'))).to.contain('It hums.');
    expect(textOf(inside(page, '.recent'))).to.contain('Found');
  });

  it('draws the unit from its own parts and wires', async () => {
    deskInPage();
    const page = await home();
    const picture = inside(page, 'rb-unit-picture');
    await until(() => picture.shadowRoot?.querySelector('.wire'));
    expect(picture.shadowRoot?.querySelectorAll('.wire').length).to.equal(22);
    expect(picture.shadowRoot?.querySelectorAll('.glyph').length).to.equal(15);
  });

  it('takes a call with a hidden fault at a press and goes to its bench', async () => {
    const {store} = deskInPage();
    const page = await home();
    inside(inside(page, 'rb-call-starter'), 'button').click();
    await until(() => location.hash.startsWith('#/call/'));
    const [head] = await store.list();
    expect(location.hash).to.equal(`#/call/${head.id}`);
    expect([head.purpose, head.difficulty, head.unit]).to.deep.equal([
      'call',
      'easy',
      'practice-panel',
    ]);
  });

  it('explores a healthy unit at a press', async () => {
    const {store} = deskInPage();
    const page = await home();
    inside(page, '.also button').click();
    await until(() => location.hash.startsWith('#/call/'));
    expect((await store.list())[0].purpose).to.equal('free-run');
  });

  it('says why there is no call, and stays', async () => {
    deskInPage({
      pick: () => Promise.reject(new Error('This unit has no fault of this difficulty.')),
    });
    const page = await home();
    const starter = inside(page, 'rb-call-starter');
    inside(starter, 'button').click();
    await until(() => textOf(starter).includes('no fault of this difficulty'));
    expect(location.hash).to.equal('');
    expect(inside<HTMLButtonElement>(starter, 'button').disabled).to.equal(false);
  });

  it('says so when the units do not load, and tries again at a press', async () => {
    let works = false;
    deskInPage({
      shippedIds: () => {
        if (!works) throw new Error('A part of Rungbench did not load.');
        return ['practice-panel'];
      },
    });
    const page = await home();
    expect(textOf(page)).to.contain('did not load');
    works = true;
    [...(page.shadowRoot?.querySelectorAll('button') ?? [])]
      .find((each) => each.textContent === 'Try again')
      ?.click();
    await until(() => page.shadowRoot?.querySelector('rb-call-starter'));
  });
});
