import {expect, fixture, html} from '@open-wc/testing';
import type {Debrief} from '../../src/bench/debrief.ts';
import '../../src/diagnosis/instructor-sheet.element.ts';
import type {InstructorSheet} from '../../src/diagnosis/instructor-sheet.element.ts';
import '../../src/diagnosis/reasoning-sheet.element.ts';
import type {ReasoningSheet} from '../../src/diagnosis/reasoning-sheet.element.ts';
import type {Reasoning} from '../../src/diagnosis/reasoning.ts';
import {readingEntry} from './bench-fixtures.ts';

const reasoning: Reasoning = {
  suspectsAtStart: 103,
  steps: [
    {
      logIndex: 0,
      kind: 'look',
      suspectsBefore: 103,
      suspectsAfter: 38,
      expectedBits: 1.4,
      bits: 1.4,
    },
    {
      logIndex: 2,
      kind: 'reading',
      suspectsBefore: 38,
      suspectsAfter: 13,
      expectedBits: 0.4,
      bits: 1.2,
      best: {bits: 1.06, text: 'Volts AC, red on T1.X2, black on TB2.R'},
      useless: false,
    },
    {
      logIndex: 3,
      kind: 'reading',
      suspectsBefore: 13,
      suspectsAfter: 13,
      expectedBits: 0,
      bits: 0,
      best: {bits: 1, text: 'Volts AC, red on HPS.2, black on TB2.R'},
      useless: true,
    },
  ],
  namings: [
    {
      id: 'HPS:stuck-open',
      name: 'High-pressure switch HPS: contact stuck open',
      right: true,
      proof: {
        is: 'guessed',
        open: [{id: 'W17:open', name: 'Wire W17 open', share: 0.2}],
        share: 0.3,
      },
      dollars: 40,
    },
  ],
  calibration: {asked: 2, right: 1},
  minutes: 4,
  dollars: 40,
  route: {
    readings: 1,
    minutes: 3,
    steps: [{text: 'Volts AC, red on HPS.1, black on HPS.2', shown: '26.24 V AC', suspectsLeft: 1}],
  },
  grade: {points: 42, outcome: 12, method: 10, hints: 4, work: 10, safety: 10},
  hints: [
    {logIndex: 4, level: 1, text: '13 suspects are open.', minutes: 1, points: 1},
    {logIndex: 5, level: 2, text: 'Look in the outdoor unit.', minutes: 3, points: 3},
  ],
  occasions: [],
  practise: 'Practise the last reading.',
};

const text = (sheet: ReasoningSheet): string =>
  sheet.renderRoot.textContent?.replace(/\s+/g, ' ') ?? '';

describe('<rb-reasoning-sheet>', () => {
  it('is accessible', async () => {
    const sheet = await fixture<ReasoningSheet>(
      html`<rb-reasoning-sheet .reasoning=${reasoning}></rb-reasoning-sheet>`,
    );
    await expect(sheet).to.be.accessible();
  });

  it('plots a point for the start and for each step, and marks those that could not come out otherwise', async () => {
    const sheet = await fixture<ReasoningSheet>(
      html`<rb-reasoning-sheet .reasoning=${reasoning}></rb-reasoning-sheet>`,
    );
    expect(sheet.renderRoot.querySelectorAll('circle')).to.have.length(4);
    expect(sheet.renderRoot.querySelectorAll('circle.useless')).to.have.length(1);
    expect(text(sheet)).to.contain('Could not have come out otherwise');
  });

  it('goes down with the suspects, never up', async () => {
    const sheet = await fixture<ReasoningSheet>(
      html`<rb-reasoning-sheet .reasoning=${reasoning}></rb-reasoning-sheet>`,
    );
    const heights = [...sheet.renderRoot.querySelectorAll('circle')].map((dot) =>
      Number(dot.getAttribute('cy')),
    );
    expect(heights).to.deep.equal([...heights].sort((a, b) => a - b));
  });

  it('says what was proved, what was still open, what it would have cost, and the shortest way', async () => {
    const sheet = await fixture<ReasoningSheet>(
      html`<rb-reasoning-sheet .reasoning=${reasoning}></rb-reasoning-sheet>`,
    );
    expect(text(sheet)).to.contain('It was a guess');
    expect(text(sheet)).to.contain('Wire W17 open');
    expect(text(sheet)).to.contain('about $40 of parts');
    expect(text(sheet)).to.contain('It shows 26.24 V AC; 1 left.');
    expect(text(sheet)).to.contain('Practise the last reading.');
  });

  it('is empty without a reasoning', async () => {
    const sheet = await fixture<ReasoningSheet>(html`<rb-reasoning-sheet></rb-reasoning-sheet>`);
    expect(text(sheet).trim()).to.equal('');
  });
});

const debrief: Debrief = {
  verdict: 'right',
  named: {id: 'HPS:stuck-open', name: 'High-pressure switch HPS: contact stuck open'},
  left: [],
  faults: [{id: 'HPS:stuck-open', name: 'High-pressure switch HPS: contact stuck open'}],
  sequence: {title: 'Call', steps: []},
  readings: [],
  safety: [{severity: 'danger', text: 'Ohms on a live circuit.', logIndex: 6, id: 'ohms-live'}],
  minutes: 4,
};

describe('<rb-instructor-sheet>', () => {
  const sheet = (): Promise<InstructorSheet> =>
    fixture<InstructorSheet>(
      html`<rb-instructor-sheet
        .debrief=${debrief}
        .reasoning=${reasoning}
        .unitTitle=${'Practice panel'}
        .complaint=${'The lamp does not light.'}
        .log=${[readingEntry(2, {red: 'T1.X2', black: 'TB2.R'})]}
      ></rb-instructor-sheet>`,
    );

  it('is accessible', async () => {
    await expect(await sheet()).to.be.accessible();
  });

  it('tells the fault, what was named and how well it was proved', async () => {
    const told = (await sheet()).renderRoot.querySelector('.facts')!.textContent!;
    expect(told).to.contain('contact stuck open');
    expect(told.replace(/\s+/g, ' ')).to.contain('right, a guess');
    expect(told).to.contain('42 of 100');
    expect(told).to.contain('1 danger');
  });

  it('lays the student’s way beside the shortest, and marks where they part', async () => {
    const [student, shortest] = [...(await sheet()).renderRoot.querySelectorAll('.way')];
    const items = [...student.children].map((item) => item.textContent!.replace(/\s+/g, ' '));
    expect(items).to.have.length(3);
    expect(items[1]).to.contain('T1.X2 to TB2.R').and.to.contain('13 left');
    expect(items.map((item) => item.includes('Here the ways part.'))).to.deep.equal([
      false,
      true,
      false,
    ]);
    expect(shortest.textContent).to.contain('26.24 V AC').and.to.contain('1 left');
  });

  it('begins what is to be talked over with what was dangerous', async () => {
    const [first] = [...(await sheet()).renderRoot.querySelectorAll('.points li')];
    expect(first.textContent).to.contain('Danger, entry 7');
  });
});
