import {describe, expect, test} from 'vitest';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {debriefOf, goesOn} from '../../src/diagnosis/debrief.ts';
import {catalogue} from '../../src/faults/catalogue.ts';

const unit = readShippedUnit('practice-panel');

function benchWith(...ids: string[]): Bench {
  const faults = catalogue(unit).filter(({id}) => ids.includes(id));
  return new Bench({unit, faults, complaint: 'The lamp does not light.', seed: 0});
}

const name = (bench: Bench, fault: string): void => {
  expect(bench.act({do: 'name', fault, evidence: []})).toHaveProperty('entry');
};

describe('two hidden faults', () => {
  test('the search goes on when one is named and right, and ends with the other', () => {
    const bench = benchWith('W17:open', 'HPS:stuck-open');
    expect(goesOn(bench)).toBe(false);
    name(bench, 'HPS:stuck-open');
    expect(goesOn(bench)).toBe(true);
    name(bench, 'W17:open');
    expect(goesOn(bench)).toBe(false);
    expect(debriefOf(bench)).toMatchObject({verdict: 'right', left: []});
  });

  test('naming one twice does not find the other', () => {
    const bench = benchWith('W17:open', 'HPS:stuck-open');
    name(bench, 'W17:open');
    name(bench, 'W17:open');
    expect(debriefOf(bench).left.map(({id}) => id)).toEqual(['HPS:stuck-open']);
  });

  test('the other may be given up, once; the debrief then tells it', () => {
    const bench = benchWith('W17:open', 'HPS:stuck-open');
    name(bench, 'W17:open');
    expect(bench.act({do: 'give-up'})).toHaveProperty('entry');
    expect(goesOn(bench)).toBe(false);
    expect(debriefOf(bench)).toMatchObject({verdict: 'given-up', left: [{id: 'HPS:stuck-open'}]});
    expect(bench.act({do: 'give-up'})).toEqual({refused: 'The call is already closed.'});
  });

  test('a wrong name ends the search, as with one fault', () => {
    const bench = benchWith('W17:open', 'HPS:stuck-open');
    name(bench, 'LT1:open');
    expect(goesOn(bench)).toBe(false);
    expect(debriefOf(bench).verdict).toBe('wrong');
  });
});

test('one hidden fault, named, leaves nothing to go on for', () => {
  const bench = benchWith('HPS:stuck-open');
  name(bench, 'HPS:stuck-open');
  expect(goesOn(bench)).toBe(false);
});
