import {expect, fixture, html, oneEvent} from '@open-wc/testing';
import '../../src/pages/unit/unit-file-opener.element.ts';
import type {RbUnitFileOpener} from '../../src/pages/unit/unit-file-opener.element.ts';
import {chooseFile, deskInPage, inside, panelText, textOf, until} from './desk-in-page.ts';

const opener = (): Promise<RbUnitFileOpener> =>
  fixture<RbUnitFileOpener>(html`<rb-unit-file-opener></rb-unit-file-opener>`);
const mine = panelText
  .replace('id: practice-panel', 'id: my-panel')
  .replace('title: Practice panel', 'title: My panel');

describe('<rb-unit-file-opener>', () => {
  afterEach(() => history.replaceState(null, '', location.pathname + location.search));

  it('keeps a file without mistakes and goes to its sheet', async () => {
    const {store} = deskInPage();
    const element = await opener();
    setTimeout(() => chooseFile(inside(element, '#file'), 'my-panel.yaml', mine));
    await oneEvent(element, 'unit-kept');
    await until(() => location.hash === '#/unit/my-panel');
    expect(
      (await store.units()).map(({id, title, fileName}) => [id, title, fileName]),
    ).to.deep.equal([['my-panel', 'My panel', 'my-panel.yaml']]);
  });

  it('lists every mistake with its line and how to mend it, and keeps nothing', async () => {
    const {store} = deskInPage();
    const element = await opener();
    const wrong = mine.replace('kind: lamp', 'kind: lmap').replace('gauge: 18', 'gauge: 17');
    chooseFile(inside(element, '#file'), 'my-panel.yaml', wrong);
    await until(() => (element.shadowRoot?.querySelectorAll('.mistakes li').length ?? 0) >= 2);
    const line = wrong.slice(0, wrong.indexOf('kind: lmap')).split('\n').length;
    expect(inside(element, '.mistakes .mono').textContent).to.match(
      new RegExp(`^my-panel.yaml:${line}:\\d+$`),
    );
    expect(textOf(element)).to.contain('Did you mean "lamp"?');
    expect(await store.units()).to.deep.equal([]);
    await expect(element).to.be.accessible();
  });

  it('will not let a file take the id of a unit that comes with the tutor', async () => {
    deskInPage();
    const element = await opener();
    chooseFile(inside(element, '#file'), 'copy.yaml', panelText);
    await until(() => textOf(element).includes('Not opened'));
    expect(textOf(element)).to.contain('another id');
  });
});
