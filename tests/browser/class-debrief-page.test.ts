import {expect, fixture, html} from '@open-wc/testing';
import type {ClassDebrief} from '../../src/classroom/protocol/rest.ts';
import {signIn} from '../../src/pages/class/class-api.ts';
import '../../src/pages/class/class-debrief-page.element.ts';
import type {ClassDebriefPage} from '../../src/pages/class/class-debrief-page.element.ts';
import {textOf, until} from './desk-in-page.ts';

const realFetch = window.fetch;
afterEach(() => {
  window.fetch = realFetch;
});

const set = {
  id: 'set0000001',
  class: 'class00001',
  title: 'Monday',
  unit: 'practice-panel',
  state: 'closed',
  coach: false,
  debriefWhen: 'named',
  createdAt: 0,
  counts: {students: 3, begun: 3, finished: 2},
} as const;

const ofCalls: ClassDebrief = {
  set: {...set, kind: 'same'},
  calls: [
    {
      faults: ['Wire W8 open'],
      complaint: 'The lamp does not light.',
      students: 3,
      right: 1,
      guesses: 2,
      wrong: [{name: 'High-pressure switch stuck open', count: 2}],
      bestRoute: {readings: 1, minutes: 4, steps: ['TB2.Y to TB2.C, AC volts: 0.0 V']},
      routes: [
        {
          name: 'Ana',
          readings: 3,
          minutes: 9,
          verdict: 'right',
          points: 84,
          steps: ['a', 'b', 'c'],
        },
        {name: 'Ben', readings: 1, minutes: 2, verdict: 'wrong', points: 21, steps: ['a']},
      ],
    },
  ],
  safety: [{text: 'Ohms on a live circuit.', severity: 'danger', count: 2}],
};

const ofWiring: ClassDebrief = {
  set: {...set, kind: 'hookup', unit: 'three-safeties'},
  calls: [],
  safety: [],
  hookup: {
    students: 2,
    right: 1,
    handIns: 3,
    findings: [
      {text: 'Safety bypassed', cause: 'X1 goes round HPS.', dangerous: true, students: 1},
    ],
    ways: [
      {
        name: 'Ana',
        stage: 'done',
        handIns: 2,
        firstRight: false,
        points: 90,
        wrong: [['Safety bypassed'], []],
      },
      {name: 'Ben', stage: 'working', handIns: 1, firstRight: false, wrong: [['Dead short']]},
    ],
  },
};

async function page(debrief: ClassDebrief): Promise<ClassDebriefPage> {
  const who = {name: 'Ada Field', csrf: 'token'};
  window.fetch = async (path) =>
    new Response(JSON.stringify(String(path).includes('debrief') ? debrief : who));
  await signIn('Ada Field', 'four cold copper coils');
  const element = await fixture<ClassDebriefPage>(
    html`<rb-class-debrief-page .classId=${'class00001'} .setId=${set.id}></rb-class-debrief-page>`,
  );
  await until(() => textOf(element).includes('Monday'));
  return element;
}

describe('<rb-class-debrief-page>', () => {
  it('tells guesses, what it was taken for, the planner’s way beside the class’s, and safety', async () => {
    const element = await page(ofCalls);
    const text = textOf(element);
    for (const words of [
      'Wire W8 open',
      'High-pressure switch stuck open (2)',
      'TB2.Y to TB2.C, AC volts: 0.0 V',
      'Ohms on a live circuit.',
    ])
      expect(text).to.contain(words);
    await expect(element).to.be.accessible();
  });

  it('unfolds every way before it is printed', async () => {
    const element = await page(ofCalls);
    const folded = [...element.shadowRoot!.querySelectorAll('details')];
    expect(folded.length).to.equal(2);
    dispatchEvent(new Event('beforeprint'));
    expect(folded.every(({open}) => open)).to.equal(true);
  });

  it('tells of a wiring task what was wrong, by how many, and how each came through', async () => {
    const element = await page(ofWiring);
    const text = textOf(element);
    expect(text).to.contain('Danger: Safety bypassed');
    expect(text).to.match(/1 ?: Safety bypassed/);
    expect(text).to.match(/1 ?: Dead short/);
    expect(text).not.to.contain('Nothing to talk over yet');
    await expect(element).to.be.accessible();
  });
});
