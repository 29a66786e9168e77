import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/open/open-page.element.ts';
import type {RbOpenPage} from '../../src/pages/open/open-page.element.ts';
import '../../src/pages/open/handed-page.element.ts';
import {deskInPage, inside, textOf, until} from './desk-in-page.ts';

const panel = {shipped: 'practice-panel'} as const;

async function opened(sealed: string): Promise<RbOpenPage> {
  const page = await fixture<RbOpenPage>(html`<rb-open-page .sealed=${sealed}></rb-open-page>`);
  await until(() => !textOf(page).includes('Opening the call'));
  return page;
}

describe('<rb-open-page>', () => {
  afterEach(() => history.replaceState(null, '', location.pathname + location.search));

  it('shows the complaint and the nameplate, not the fault, and is accessible', async () => {
    const {desk} = deskInPage();
    const {sealed} = await desk.seal(panel, ['K1:coil-open'], 'No light, says the customer.');
    const page = await opened(sealed);
    const text = textOf(page);
    expect(text).to.contain('No light, says the customer.');
    expect(text).to.contain('24 V, 40 VA');
    expect(page.outerHTML + text).not.to.match(/coil|K1/);
    await expect(page).to.be.accessible();
  });

  it('begins the call in place of the link, and offers to go on with it when the link is opened again', async () => {
    const {desk, store} = deskInPage();
    const {sealed} = await desk.seal(panel, ['K1:coil-open'], 'No light.');
    inside(await opened(sealed), 'rb-call-card button').click();
    await until(() => location.hash.startsWith('#/call/'));
    const [head] = await store.list();
    expect([head.sealed, head.complaint, head.purpose]).to.deep.equal([
      sealed,
      'No light.',
      'call',
    ]);
    const again = await opened(sealed);
    expect(inside<HTMLAnchorElement>(again, 'rb-call-card a').getAttribute('href')).to.equal(
      `#/call/${head.id}`,
    );
  });

  for (const [title, damage] of [
    ['cut short', (sealed: string) => sealed.slice(0, -5)],
    [
      'with a letter changed',
      (sealed: string) => (sealed.startsWith('A') ? 'B' : 'A') + sealed.slice(1),
    ],
    ['of something else', () => 'hello'],
  ] as const) {
    it(`says that a link ${title} is damaged, with a way out`, async () => {
      const {desk} = deskInPage();
      const {sealed} = await desk.seal(panel, ['K1:coil-open'], 'No light.');
      const page = await opened(damage(sealed));
      expect(textOf(page)).to.contain('damaged or cut short');
      expect(inside<HTMLAnchorElement>(page, 'a').getAttribute('href')).to.equal('#/');
    });
  }
});

describe('<rb-handed-page>', () => {
  it('shows the call to the next person and nothing of what was done', async () => {
    const {desk, store} = deskInPage();
    const hidden = await desk.seal(panel, ['K1:coil-open'], 'No light.');
    const {id} = await store.begin({
      ...hidden,
      unit: 'practice-panel',
      unitTitle: 'Practice panel',
      seed: 1,
      purpose: 'call',
    });
    const page = await fixture(html`<rb-handed-page .attemptId=${id}></rb-handed-page>`);
    const link = await until(() => page.shadowRoot?.querySelector('rb-call-card a'));
    expect(link.getAttribute('href')).to.equal(`#/call/${id}`);
    expect(textOf(page)).not.to.match(/coil|K1/);
    await expect(page).to.be.accessible();
  });

  it('says so when the call is gone', async () => {
    deskInPage();
    const page = await fixture(html`<rb-handed-page attemptId="gone"></rb-handed-page>`);
    await until(() => textOf(page).includes('not here'));
  });
});
