import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/bench/bench-desk.element.ts';
import type {BenchDesk} from '../../src/pages/bench/bench-desk.element.ts';
import type {BenchView} from '../../src/bench/bench-view.ts';
import {eventFrom, smallUnit, viewOf, volts} from './bench-fixtures.ts';

const deskWith = (changes: Partial<BenchView> = {}): Promise<BenchDesk> =>
  fixture<BenchDesk>(
    html`<rb-bench-desk .unit=${smallUnit} .view=${viewOf(changes)}></rb-bench-desk>`,
  );

const inDesk = (desk: BenchDesk, host: string): Element | null => {
  for (const root of [
    desk.renderRoot,
    ...[...desk.renderRoot.querySelectorAll('rb-drawing-board, rb-probe-panel')].map(
      (each) => each.shadowRoot!,
    ),
  ]) {
    const found = root.querySelector(host);
    if (found) return found;
  }
  return null;
};

/** What is inside an element of the desk; the drawing and the probing have elements of their own around theirs. */
const within = <E extends Element>(desk: BenchDesk, host: string, selector: string): E => {
  const element = inDesk(desk, host);
  const found = element?.shadowRoot?.querySelector<E>(selector);
  if (!found) throw new Error(`There is no ${selector} in ${host}.`);
  return found;
};

/** A person picks a terminal on the drawing. */
async function pick(desk: BenchDesk, terminal: string): Promise<void> {
  inDesk(desk, 'rb-unit-diagram')?.dispatchEvent(
    new CustomEvent('terminal-picked', {detail: {terminal}, bubbles: true, composed: true}),
  );
  await desk.updateComplete;
}

const where = (desk: BenchDesk, lead: 'red' | 'black'): string | undefined =>
  within(desk, 'rb-meter-face', `[data-lead=${lead}] .where`).textContent?.trim();

describe('<rb-bench-desk>', () => {
  it('puts red down first, then black, and then hops red', async () => {
    const desk = await deskWith();
    await pick(desk, 'S1.1');
    await pick(desk, 'K1.3');
    await pick(desk, 'S1.2');
    expect(where(desk, 'red')).to.equal('S1.2');
    expect(where(desk, 'black')).to.equal('K1.3');
  });

  it('asks to read with both leads and what is expected', async () => {
    const desk = await deskWith();
    await pick(desk, 'S1.1');
    await pick(desk, 'S1.2');
    const input = within<HTMLInputElement>(desk, 'rb-expectation-form', 'input');
    input.value = '24';
    input.dispatchEvent(new Event('input'));
    const asked = eventFrom<object>(desk, 'action-asked');
    desk.read();
    expect(await asked).to.deep.equal({
      action: {do: 'read', red: 'S1.1', black: 'S1.2', expected: {value: 24}},
    });
  });

  it('does not read with one lead down', async () => {
    const desk = await deskWith();
    let asked = 0;
    desk.addEventListener('action-asked', () => asked++);
    await pick(desk, 'S1.1');
    desk.read();
    expect(asked).to.equal(0);
  });

  it('blanks the glass when a lead moves: an old reading is never beside new leads', async () => {
    const desk = await deskWith({
      meter: {function: 'ac-volts', red: 'S1.1', black: 'S1.2', display: volts('26.30')},
    });
    const digits = (): string | undefined =>
      within(desk, 'rb-meter-face', '.digits').textContent?.trim();
    expect(digits()).to.equal('26.30');
    await pick(desk, 'K1.1');
    await desk.renderRoot.querySelector('rb-meter-face')?.updateComplete;
    expect(digits()).to.not.match(/\d/);
  });

  it('clamps a wire on clamp amps', async () => {
    const desk = await deskWith({meter: {function: 'clamp-amps'}});
    inDesk(desk, 'rb-unit-diagram')?.dispatchEvent(
      new CustomEvent('wire-picked', {detail: {wire: 'W2'}, bubbles: true, composed: true}),
    );
    await desk.updateComplete;
    const asked = eventFrom<object>(desk, 'action-asked');
    desk.read();
    expect(await asked).to.deep.equal({action: {do: 'clamp', wire: 'W2'}});
  });

  it('lifts the end that is chosen of a picked wire', async () => {
    const desk = await deskWith();
    desk.showPanel('wires');
    await desk.updateComplete;
    inDesk(desk, 'rb-unit-diagram')?.dispatchEvent(
      new CustomEvent('wire-picked', {detail: {wire: 'W1'}, bubbles: true, composed: true}),
    );
    await desk.updateComplete;
    await desk.renderRoot.querySelector('rb-wire-work')?.updateComplete;
    const asked = eventFrom<object>(desk, 'action-asked');
    within<HTMLButtonElement>(desk, 'rb-wire-work', '[data-end="W1.to"]').click();
    expect(await asked).to.deep.equal({action: {do: 'lift', end: 'W1.to'}});
  });

  it('lays a jumper between two picked terminals, and frees its ends when it hangs', async () => {
    const desk = await deskWith();
    desk.showPanel('wires');
    await desk.updateComplete;
    const work = desk.renderRoot.querySelector('rb-wire-work')!;
    work.renderRoot.querySelectorAll<HTMLButtonElement>('.segments button')[1].click();
    await desk.updateComplete;
    await pick(desk, 'S1.1');
    await pick(desk, 'S1.2');
    await work.updateComplete;
    const asked = eventFrom<object>(desk, 'action-asked');
    within<HTMLButtonElement>(desk, 'rb-wire-work', '.primary').click();
    expect(await asked).to.deep.equal({action: {do: 'jumper', from: 'S1.1', to: 'S1.2'}});
    desk.view = viewOf({jumpers: [['S1.1', 'S1.2']]});
    await desk.updateComplete;
    await work.updateComplete;
    expect(work.from).to.equal(undefined);
    expect(work.renderRoot.querySelector('[aria-label="Jumpers on the unit"]')).to.not.equal(null);
  });

  it('shows a refused reading at the meter', async () => {
    const desk = await deskWith();
    desk.refusal = {
      action: {do: 'read', red: 'K1.1', black: 'K1.3'},
      sentence: 'K1.1 is behind the cover of the relay box; open that cover first.',
    };
    await desk.updateComplete;
    expect(within(desk, 'rb-probe-panel', '[role=alert]').textContent).to.contain(
      'behind the cover',
    );
  });
});
