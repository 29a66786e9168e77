import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {debriefOf} from '../../src/diagnosis/debrief.ts';
import {reasoningOf} from '../../src/diagnosis/reasoning.ts';
import {partsAt, talkingPoints} from '../../src/diagnosis/talking-points.ts';
import {catalogue} from '../../src/faults/catalogue.ts';

const unit = readShippedUnit('practice-panel');
const faults = catalogue(unit).filter(({id}) => id === 'HPS:stuck-open');
const setup = {unit, faults, complaint: 'The lamp does not light.', seed: 1};

const read = (red: string, black: string, value?: number): Action => ({
  do: 'read',
  red,
  black,
  ...(value === undefined ? {} : {expected: {value}}),
});
const call: Action = {do: 'set', target: 'S1.position', value: 'on'};
const name = (fault: string): Action => ({do: 'name', fault, evidence: []});

function talk(...actions: Action[]) {
  const bench = Bench.replay(setup, actions);
  const reasoning = reasoningOf(setup, actions);
  return {points: talkingPoints(debriefOf(bench), reasoning), reasoning, log: bench.view().log};
}

/** The planner's own way, done by hand. */
function plannedCall(): Action[] {
  const {reasoning} = talk(call, {do: 'wait', seconds: 10}, {do: 'give-up'});
  return reasoning.route.steps.map(({text}) => {
    const [, red, black] = /red on ([\w.]+), black on ([\w.]+)/.exec(text)!;
    return read(red, black, red === black ? 0 : 24);
  });
}

describe('what an instructor talks over', () => {
  test('a guess is talked over with the suspects that were still open', () => {
    const {points} = talk(call, {do: 'wait', seconds: 10}, name('HPS:stuck-open'));
    const guess = points.find(({title}) => title === 'A guess')!;
    expect(guess.text).toMatch(/was named while \d+ other suspects were open: /);
    expect(guess.ask).toContain('Which one reading');
  });

  test('a reading of a point against itself told nothing, and its entry is named', () => {
    const {points, log} = talk(
      call,
      {do: 'wait', seconds: 10},
      read('HPS.1', 'HPS.1'),
      name('HPS:stuck-open'),
    );
    const entry = log.findIndex(({kind}) => kind === 'reading') + 1;
    expect(points.find(({title}) => title.startsWith('A reading that could'))?.text).toBe(
      `Entry ${entry} could not have come out otherwise, whatever was wrong.`,
    );
  });

  test('the ways part at the first reading that asked for less than half of the best', () => {
    const {points, reasoning} = talk(
      call,
      {do: 'wait', seconds: 10},
      read('HPS.1', 'HPS.1'),
      name('HPS:stuck-open'),
    );
    const step = partsAt(reasoning)!;
    expect(step.expectedBits).toBeLessThan(step.best!.bits / 2);
    expect(points.some(({title}) => title === `The ways part at entry ${step.logIndex + 1}`)).toBe(
      true,
    );
  });

  test('expectations that did not come out are counted, with their entries', () => {
    const {points} = talk(
      call,
      {do: 'wait', seconds: 10},
      read('HPS.1', 'HPS.2', 0),
      name('HPS:stuck-open'),
    );
    expect(points.find(({title}) => title === 'Expected otherwise')?.text).toMatch(
      /^1 of 1 expectations did not come out: entry \d+\.$/,
    );
  });

  test('ohms on a live circuit are the first thing to talk over', () => {
    const {points} = talk(
      call,
      {do: 'wait', seconds: 10},
      {do: 'meter', function: 'ohms'},
      read('T1.H1', 'T1.H2'),
      {do: 'give-up'},
    );
    expect(points[0].title).toMatch(/^Danger, entry \d+$/);
    expect(points.at(-1)?.title).not.toBe('Nothing went wrong');
  });

  test('a call given up is walked together', () => {
    const {points} = talk({do: 'give-up'});
    expect(points.find(({title}) => title === 'Given up')?.ask).toContain('shortest way');
  });

  test('the planner’s own way leaves no parting of the ways', () => {
    const {reasoning, points} = talk(
      call,
      {do: 'wait', seconds: 10},
      ...plannedCall(),
      name('HPS:stuck-open'),
    );
    expect(partsAt(reasoning)).toBe(undefined);
    expect(points.map(({title}) => title)).not.toContain('Given up');
  });
});
