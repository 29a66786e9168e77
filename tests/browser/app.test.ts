import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/app/app.element.ts';
import type {RbApp} from '../../src/pages/app/app.element.ts';
import {deskInPage, inside, until} from './desk-in-page.ts';

/** The element that has the focus, whatever shadow root it is in. */
function focused(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
}

async function app(hash: string): Promise<RbApp> {
  deskInPage();
  history.replaceState(null, '', hash);
  const element = await fixture<RbApp>(html`<rb-app></rb-app>`);
  await until(() => element.shadowRoot?.querySelector('main > :not(.loading)'));
  return element;
}

describe('<rb-app>', () => {
  afterEach(() => {
    history.replaceState(null, '', location.pathname + location.search);
    localStorage.removeItem('rungbench-theme');
    delete document.documentElement.dataset.theme;
  });

  it('shows the page of the address, titles the document and marks its place in the navigation', async () => {
    const element = await app('#/about');
    expect(inside(element, 'main > *').localName).to.equal('rb-about-page');
    expect(document.title).to.equal('Safety and about · Rungbench');
    expect(inside(element, '[aria-current=page]').textContent).to.equal('Safety');
    await expect(element).to.be.accessible();
  });

  it('moves the focus to the heading of the next page', async () => {
    const element = await app('#/about');
    location.hash = '#/history';
    await until(() => focused()?.textContent === 'History');
    expect(focused()?.localName).to.equal('h1');
    expect(inside(element, 'main > *').localName).to.equal('rb-history-page');
  });

  it('has a way out of an address that leads nowhere', async () => {
    const element = await app('#/no/where');
    const page = inside(element, 'rb-unknown-page');
    expect(inside<HTMLAnchorElement>(page, 'a').getAttribute('href')).to.equal('#/');
    expect(page.shadowRoot?.textContent).to.contain('#/no/where');
  });

  it('skips from the first stop of the keyboard to the page', async () => {
    const element = await app('#/about');
    inside(element, '.skip').click();
    expect(focused()?.id).to.equal('main');
    expect(location.hash).to.equal('#/about');
  });

  it('goes round the themes, shows each and remembers', async () => {
    const element = await app('#/about');
    const button = inside<HTMLButtonElement>(inside(element, 'rb-theme-switch'), 'button');
    const seen: (string | undefined)[] = [];
    for (let press = 0; press < 3; press++) {
      button.click();
      seen.push(localStorage.getItem('rungbench-theme') ?? 'system');
    }
    expect([...seen].sort()).to.deep.equal(['dark', 'light', 'system']);
    while (localStorage.getItem('rungbench-theme') !== 'dark') button.click();
    expect(document.documentElement.dataset.theme).to.equal('dark');
  });
});
