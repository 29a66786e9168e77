import {aTimeout, expect, fixture, html, oneEvent} from '@open-wc/testing';
import {sendKeys, sendMouse, setViewport} from '@web/test-runner-commands';
import panelText from '../../content/units/practice-panel.yaml?raw';
import panelLayout from '../../content/layouts/practice-panel.json';
import {loadUnit} from '../../src/content/load-unit.ts';
import type {Unit} from '../../src/content/unit.ts';
import '../../src/diagrams/unit-diagram.element.ts';
import type {UnitDiagram} from '../../src/diagrams/unit-diagram.element.ts';

const panel = loadUnit(panelText, 'practice-panel.yaml').unit as Unit;

type Properties = Partial<
  Pick<
    UnitDiagram,
    | 'view'
    | 'layout'
    | 'mode'
    | 'red'
    | 'black'
    | 'clamp'
    | 'lifted'
    | 'jumpers'
    | 'openEnclosures'
    | 'observations'
    | 'selectedPart'
    | 'selectedWire'
  >
>;

async function diagram(properties: Properties = {}): Promise<UnitDiagram> {
  const element = await fixture<UnitDiagram>(
    html`<rb-unit-diagram style="inline-size: 900px; block-size: 600px"></rb-unit-diagram>`,
  );
  Object.assign(element, {unit: panel, layout: panelLayout, ...properties});
  await element.updateComplete;
  // the frame is measured once it stands
  await aTimeout(60);
  await element.updateComplete;
  return element;
}

const all = (element: UnitDiagram, selector: string): Element[] => [
  ...element.renderRoot.querySelectorAll(selector),
];
const one = (element: UnitDiagram, selector: string): Element => {
  const found = element.renderRoot.querySelector(selector);
  if (!found) throw new Error(`Nothing matches ${selector}.`);
  return found;
};

/** Middle of an element on the page, as the mouse goes there. */
function middle(target: Element): [number, number] {
  const {left, top, width, height} = target.getBoundingClientRect();
  return [Math.round(left + width / 2), Math.round(top + height / 2)];
}

const markOf = (element: UnitDiagram, terminal: string): Element =>
  one(element, `[data-terminal="${terminal}"] .mark`);

describe('<rb-unit-diagram>', () => {
  beforeEach(() => setViewport({width: 1000, height: 700}));

  for (const view of ['ladder', 'connection'] as const)
    for (const mode of ['red', 'clamp', 'select'] as const)
      it(`is accessible as ${view} while picking for ${mode}`, async () => {
        await expect(await diagram({view, mode})).to.be.accessible();
      });

  it('says that the connection drawing is being laid out until there is a layout', async () => {
    const element = await diagram({view: 'connection', layout: undefined});
    expect(one(element, '[role="status"]').textContent).to.contain(
      'Laying out the connection drawing…',
    );
    await expect(element).to.be.accessible();
    element.layout = panelLayout;
    await element.updateComplete;
    expect(all(element, '[role="status"]')).to.have.length(0);
    expect(all(element, '.wire').length).to.be.greaterThan(0);
    element.layout = undefined;
    element.layoutFailed = true;
    await element.updateComplete;
    expect(all(element, '[role="status"]')).to.have.length(0);
  });

  it('names every part, terminal and wire alike in both views', async () => {
    const ladder = await diagram({view: 'ladder'});
    const names = (element: UnitDiagram, kind: string): Set<string | null> =>
      new Set(all(element, `[data-${kind}]`).map((it) => it.getAttribute(`data-${kind}`)));
    const connection = await diagram({view: 'connection'});
    for (const terminal of names(ladder, 'terminal'))
      expect(names(connection, 'terminal')).to.include(terminal);
    for (const wire of names(ladder, 'wire')) expect(names(connection, 'wire')).to.include(wire);
    expect(names(connection, 'wire').size).to.equal(panel.wires.length);
  });

  it('tells which terminal a person picked with the mouse', async () => {
    const element = await diagram();
    setTimeout(() => sendMouse({type: 'click', position: middle(markOf(element, 'HPS.1'))}));
    const {detail} = await oneEvent(element, 'terminal-picked');
    expect(detail).to.deep.equal({terminal: 'HPS.1'});
  });

  it('picks the nearest terminal when the mouse is a little beside it', async () => {
    const element = await diagram();
    const [x, y] = middle(markOf(element, 'LPS.2'));
    setTimeout(() => sendMouse({type: 'click', position: [x + 5, y - 6]}));
    const {detail} = await oneEvent(element, 'terminal-picked');
    expect(detail.terminal).to.equal('LPS.2');
  });

  it('picks a wire for the clamp', async () => {
    const element = await diagram({mode: 'clamp', view: 'connection'});
    const path = one(element, '[data-wire="W17"] .core') as SVGPathElement;
    const at = path
      .getPointAtLength(path.getTotalLength() / 2)
      .matrixTransform(path.getScreenCTM()!);
    setTimeout(() => sendMouse({type: 'click', position: [Math.round(at.x), Math.round(at.y)]}));
    const {detail} = await oneEvent(element, 'wire-picked');
    expect(detail).to.deep.equal({wire: 'W17'});
  });

  it('says nothing when it is only given new properties', async () => {
    const element = await diagram();
    let said = 0;
    for (const name of ['terminal-picked', 'wire-picked', 'part-picked'])
      element.addEventListener(name, () => said++);
    element.red = 'K1.1';
    element.view = 'connection';
    element.selectedPart = 'HPS';
    await element.updateComplete;
    expect(said).to.equal(0);
  });

  it('reaches a terminal by Tab and arrow keys and picks it with Enter', async () => {
    const element = await diagram();
    element.focus();
    const current = (): Element | null => element.shadowRoot!.activeElement;
    expect(current()?.getAttribute('role')).to.equal('button');
    expect(all(element, '.terminal[tabindex="0"]')).to.have.length(1);
    await sendKeys({press: 'Home'});
    const first = current();
    await sendKeys({press: 'ArrowRight'});
    expect(current()).not.to.equal(first);
    const terminal = current()!.getAttribute('data-terminal');
    setTimeout(() => sendKeys({press: 'Enter'}));
    const {detail} = await oneEvent(element, 'terminal-picked');
    expect(detail.terminal).to.equal(terminal);
  });

  it('gives a terminal a name for the ear', async () => {
    const element = await diagram();
    expect(one(element, '[data-terminal="TB2.Y"]').getAttribute('aria-label')).to.equal(
      'TB2 terminal Y, 24 V strip',
    );
  });

  it('is zoomed and fitted by keys, and moved by arrow keys when the drawing itself has the focus', async () => {
    const element = await diagram();
    const transform = (): string => (one(element, '.world') as SVGGElement).style.transform;
    const fitted = transform();
    (one(element, '.frame') as HTMLElement).focus();
    await sendKeys({press: '+'});
    const zoomed = transform();
    expect(zoomed).not.to.equal(fitted);
    await sendKeys({press: 'ArrowDown'});
    expect(transform()).not.to.equal(zoomed);
    await sendKeys({press: '0'});
    expect(transform()).to.equal(fitted);
  });

  it('is dragged without picking anything', async () => {
    const element = await diagram();
    let picked = 0;
    element.addEventListener('terminal-picked', () => picked++);
    const before = (one(element, '.world') as SVGGElement).style.transform;
    const [x, y] = middle(markOf(element, 'HPS.1'));
    await sendMouse({type: 'move', position: [x, y]});
    await sendMouse({type: 'down'});
    await sendMouse({type: 'move', position: [x + 60, y + 30]});
    await sendMouse({type: 'up'});
    expect((one(element, '.world') as SVGGElement).style.transform).not.to.equal(before);
    expect(picked).to.equal(0);
  });

  it('shows the leads by letter, not by colour alone', async () => {
    const element = await diagram({red: 'K1.1', black: 'K1.3'});
    expect(one(element, '[data-lead="red"] text').textContent).to.equal('R');
    expect(one(element, '[data-lead="black"] text').textContent).to.equal('B');
  });

  it('closes what is behind a cover: hidden in the connection view, hollow in the ladder, out of reach in both', async () => {
    const connection = await diagram({view: 'connection', openEnclosures: []});
    expect(one(connection, '.covered').textContent).to.contain('Cover closed');
    expect(one(connection, '[data-terminal="CB1.T1"]').getAttribute('role')).to.equal(null);
    expect(one(connection, '[data-terminal="DS1.L1"]').getAttribute('role')).to.equal('button');
    const ladder = await diagram({view: 'ladder', openEnclosures: []});
    const mark = one(ladder, '[data-terminal="CB1.T1"]');
    expect(mark.classList.contains('closed')).to.equal(true);
    expect(mark.getAttribute('role')).to.equal(null);
    let picked = '';
    ladder.addEventListener(
      'terminal-picked',
      (event) => (picked = (event as CustomEvent<{terminal: string}>).detail.terminal),
    );
    await sendMouse({
      type: 'click',
      position: middle(one(ladder, '[data-terminal="CB1.T1"] .mark')),
    });
    expect(picked).not.to.equal('CB1.T1');
  });

  it('shows what is seen and heard at a part', async () => {
    const element = await diagram({
      observations: [
        {part: 'K1', is: 'pulled-in'},
        {part: 'LT1', is: 'lit'},
      ],
    });
    expect(one(element, '[data-badge="K1"]').textContent?.trim()).to.equal('pulled in');
    expect(one(element, '[data-badge="LT1"]').textContent?.trim()).to.equal('lit');
  });

  it('shows a lifted wire end, which can be probed', async () => {
    const element = await diagram({view: 'connection', lifted: ['W17.to']});
    const tip = one(element, '[data-lifted="W17.to"] .lifted-tip');
    setTimeout(() => sendMouse({type: 'click', position: middle(tip)}));
    const {detail} = await oneEvent(element, 'terminal-picked');
    expect(detail.terminal).to.equal('W17.to');
  });

  it('highlights the same part and wire in both views', async () => {
    for (const view of ['ladder', 'connection'] as const) {
      const element = await diagram({view, selectedPart: 'HPS', selectedWire: 'W17'});
      expect(all(element, '.chosen-part')).to.have.length(1);
      expect(one(element, '.wire.chosen').getAttribute('data-wire')).to.equal('W17');
    }
  });

  it('brings a terminal into view', async () => {
    const element = await diagram();
    (one(element, '.frame') as HTMLElement).focus();
    for (let i = 0; i < 6; i++) await sendKeys({press: '+'});
    element.reveal('LT1.2');
    await aTimeout(260);
    const {left, top, right, bottom} = markOf(element, 'LT1.2').getBoundingClientRect();
    const frame = element.getBoundingClientRect();
    expect(left).to.be.greaterThan(frame.left);
    expect(right).to.be.lessThan(frame.right);
    expect(top).to.be.greaterThan(frame.top);
    expect(bottom).to.be.lessThan(frame.bottom);
  });

  it('says that the drawing is being laid out while it has no layout', async () => {
    const element = await fixture<UnitDiagram>(
      html`<rb-unit-diagram .unit=${panel} view="connection"></rb-unit-diagram>`,
    );
    expect(element.shadowRoot!.textContent).to.contain('Laying out');
  });
});
