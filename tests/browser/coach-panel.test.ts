import {expect, fixture, html, oneEvent} from '@open-wc/testing';
import type {LogEntry} from '../../src/bench/bench-view.ts';
import '../../src/diagnosis/coach-panel.element.ts';
import type {CoachPanel, CoachState} from '../../src/diagnosis/coach-panel.element.ts';
import {textOf} from './desk-in-page.ts';

const entry = (index: number, hint: LogEntry['hint'], text: string): LogEntry => ({
  index,
  kind: 'done',
  timeMs: 0,
  minutes: 1,
  state: 'At rest',
  text,
  findings: [],
  ...(hint ? {hint} : {}),
});

const panel = (state: CoachState, log: readonly LogEntry[] = [], over = false) =>
  fixture<CoachPanel>(
    html`<rb-coach-panel .state=${state} .log=${log} ?over=${over}></rb-coach-panel>`,
  );

describe('<rb-coach-panel>', () => {
  it('is accessible with hints said', async () => {
    const log = [entry(0, undefined, 'Waited 5 s'), entry(1, 2, 'Look in the outdoor unit.')];
    await expect(await panel({is: 'ready', useless: 'It told nothing.'}, log)).to.be.accessible();
  });

  it('says what each hint costs before it is asked for', async () => {
    const [question, place, reading] = [
      ...(await panel({is: 'ready'})).shadowRoot!.querySelectorAll('button'),
    ].map(textOf);
    expect(question).to.contain('1 min, 1 point');
    expect(place).to.contain('3 min, 3 points');
    expect(reading).to.contain('6 min, 6 points');
  });

  it('asks for the hint that was pressed', async () => {
    const element = await panel({is: 'ready'});
    const [, place] = element.shadowRoot!.querySelectorAll('button');
    setTimeout(() => place.click());
    const {detail} = (await oneEvent(element, 'hint-asked')) as CustomEvent<object>;
    expect(detail).to.deep.equal({level: 2});
  });

  it('does not ask twice, nor once the call is answered', async () => {
    for (const element of [
      await panel({is: 'thinking', level: 1}),
      await panel({is: 'ready'}, [], true),
    ]) {
      let asked = 0;
      element.addEventListener('hint-asked', () => asked++);
      for (const button of element.shadowRoot!.querySelectorAll('button')) button.click();
      expect(asked).to.equal(0);
    }
  });

  it('tells the hints of the log, latest first, with what they cost in all', async () => {
    const text = textOf(
      await panel({is: 'ready'}, [entry(0, 1, 'First.'), entry(3, 3, 'Second.')]),
    );
    expect(text).to.contain('7 min of work, 7 of 30 points');
    expect(text.indexOf('Second.')).to.be.below(text.indexOf('First.'));
  });

  it('says why the last reading told nothing, and how far it is with the log', async () => {
    expect(textOf(await panel({is: 'ready', useless: 'All alike.'}))).to.contain('All alike.');
    expect(textOf(await panel({is: 'following', steps: 3}))).to.contain('3 steps to go');
  });
});
