import {expect, fixture, html} from '@open-wc/testing';
import {emulateMedia, setViewport} from '@web/test-runner-commands';
import pumpText from '../../content/units/split-heat-pump.yaml?raw';
import pumpLayout from '../../content/layouts/split-heat-pump.json';
import {loadUnit} from '../../src/content/load-unit.ts';
import type {Unit} from '../../src/content/unit.ts';
import type {UnitDiagram} from '../../src/diagrams/unit-diagram.element.ts';
import '../../src/pages/bench/bench-desk.element.ts';
import type {BenchDesk} from '../../src/pages/bench/bench-desk.element.ts';
import type {BenchSettings} from '../../src/pages/bench/remembered.ts';
import {viewOf} from './bench-fixtures.ts';

const pump = loadUnit(pumpText, 'split-heat-pump.yaml').unit as Unit;
type Drawing = BenchSettings['view'];

/** The desk of the heat pump with every cover off, as large as the screen. */
async function deskOf(width: number, height: number): Promise<BenchDesk> {
  await setViewport({width, height});
  const desk = await fixture<BenchDesk>(
    html`<rb-bench-desk
      style="block-size: ${height}px"
      .unit=${pump}
      .layout=${pumpLayout}
      .view=${viewOf({enclosures: pump.enclosures.map(({id}) => ({id, open: true}))})}
    ></rb-bench-desk>`,
  );
  desk.addEventListener('settings-changed', (event) => {
    desk.settings = (event as CustomEvent<{settings: BenchSettings}>).detail.settings;
  });
  await drawn();
  return desk;
}

/** The frame is measured, and the view shown, within two frames of the screen. */
async function drawn(): Promise<void> {
  for (let i = 0; i < 3; i++) await new Promise(requestAnimationFrame);
}

const boardOf = (desk: BenchDesk): ShadowRoot =>
  desk.renderRoot.querySelector('rb-drawing-board')!.shadowRoot!;
const diagramOf = (desk: BenchDesk): UnitDiagram => boardOf(desk).querySelector('rb-unit-diagram')!;

async function show(desk: BenchDesk, drawing: Drawing): Promise<void> {
  const at = drawing === 'ladder' ? 0 : 1;
  boardOf(desk).querySelectorAll<HTMLButtonElement>('.segments button')[at].click();
  await drawn();
}

async function pick(
  desk: BenchDesk,
  kind: 'terminal' | 'wire' | 'part',
  id: string,
): Promise<void> {
  diagramOf(desk).dispatchEvent(
    new CustomEvent(`${kind}-picked`, {detail: {[kind]: id}, bubbles: true, composed: true}),
  );
  await drawn();
}

/** Whether a mark lies inside the frame, clear of its edges. */
function isInView(desk: BenchDesk, selector: string): boolean {
  const frame = diagramOf(desk).getBoundingClientRect();
  const marks = [...diagramOf(desk).renderRoot.querySelectorAll(selector)];
  if (marks.length === 0) throw new Error(`Nothing matches ${selector}.`);
  return marks.some((mark) => {
    const {left, right, top, bottom} = mark.getBoundingClientRect();
    return left >= frame.left && right <= frame.right && top >= frame.top && bottom <= frame.bottom;
  });
}

const scaleOf = (desk: BenchDesk): number =>
  1 /
  Number(
    diagramOf(desk).renderRoot.querySelector<SVGElement>('.world')!.style.getPropertyValue('--k'),
  );

describe('the part under the last lead, in both drawings', () => {
  beforeEach(() => emulateMedia({reducedMotion: 'reduce'}));

  for (const [size, width, height] of [
    ['laptop', 1280, 800],
    ['phone', 390, 844],
  ] as const) {
    it(`is marked and in view after each change of the drawing, on a ${size}`, async () => {
      const desk = await deskOf(width, height);
      // from the service panel to the far end of the outdoor unit, each picked on the ladder
      for (const terminal of ['CB2.T1', 'TS.Y', 'HPS.2', 'K3.A1', 'CMP.S', 'EH1.1', 'RT2.1']) {
        await pick(desk, 'terminal', terminal);
        for (const drawing of ['connection', 'ladder', 'connection', 'ladder'] as const) {
          await show(desk, drawing);
          expect(
            isInView(desk, `[data-terminal="${terminal}"] .mark`),
            `${terminal}, ${drawing}`,
          ).to.equal(true);
          expect(
            diagramOf(desk).renderRoot.querySelectorAll('.chosen-part').length,
            `${terminal} marked, ${drawing}`,
          ).to.be.greaterThan(0);
        }
      }
    });
  }

  it('is found again at the scale at which a person left each drawing', async () => {
    const desk = await deskOf(1280, 800);
    await pick(desk, 'terminal', 'HPS.2');
    diagramOf(desk).zoom(1.7);
    await drawn();
    const ladder = scaleOf(desk);
    await show(desk, 'connection');
    diagramOf(desk).zoom(1.3);
    await drawn();
    const connection = scaleOf(desk);
    await pick(desk, 'terminal', 'CMP.S');
    await show(desk, 'ladder');
    expect(scaleOf(desk)).to.be.closeTo(ladder, 1e-9);
    expect(isInView(desk, '[data-terminal="CMP.S"] .mark')).to.equal(true);
    await show(desk, 'connection');
    expect(scaleOf(desk)).to.be.closeTo(connection, 1e-9);
    expect(isInView(desk, '[data-terminal="CMP.S"] .mark')).to.equal(true);
  });

  it('comes into view where it was found in the list', async () => {
    const desk = await deskOf(1280, 800);
    await show(desk, 'connection');
    const list = desk.renderRoot
      .querySelector('rb-probe-panel')!
      .shadowRoot!.querySelector('rb-pick-list')!;
    for (const id of ['CB2.T1', 'RT2.1', 'TS.Y']) {
      list.dispatchEvent(new CustomEvent('picked', {detail: {id}, bubbles: true, composed: true}));
      await drawn();
      expect(isInView(desk, `[data-terminal="${id}"] .mark`), id).to.equal(true);
    }
  });

  it('can be a wire or a part that was picked to look at', async () => {
    const desk = await deskOf(1280, 800);
    await pick(desk, 'part', 'RVS');
    await show(desk, 'connection');
    expect(isInView(desk, '.chosen-part')).to.equal(true);
    await pick(desk, 'wire', 'W23');
    for (const drawing of ['ladder', 'connection'] as const) {
      await show(desk, drawing);
      expect(
        diagramOf(desk).renderRoot.querySelector('.wire.chosen')?.getAttribute('data-wire'),
      ).to.equal('W23');
    }
  });

  it('stays in view when the frame gets smaller', async () => {
    const desk = await deskOf(1280, 800);
    await pick(desk, 'terminal', 'RT2.1');
    await show(desk, 'connection');
    desk.style.blockSize = '420px';
    await drawn();
    expect(isInView(desk, '[data-terminal="RT2.1"] .mark')).to.equal(true);
  });
});
