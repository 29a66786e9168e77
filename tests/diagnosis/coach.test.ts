import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {hintMinutes} from '../../src/bench/action-costs.ts';
import {Coach} from '../../src/diagnosis/coach.ts';
import {Suspects} from '../../src/diagnosis/suspects.ts';
import {show} from '../../src/meter/display.ts';

const panel = readShippedUnit('practice-panel');

function called(): Suspects {
  const suspects = new Suspects(panel);
  suspects.do({do: 'set', target: 'S1.position', value: 'on'});
  suspects.do({do: 'wait', seconds: 2});
  return suspects;
}

describe('the coach', () => {
  test('first of all has the unit put into the mode that the customer complains of', () => {
    expect(new Coach(new Suspects(panel)).hint(1).text).toMatch(/Put it into the mode/);
  });

  test('gives away more with each level, and each costs more', () => {
    const coach = new Coach(called());
    const [question, place, reading] = ([1, 2, 3] as const).map((level) => coach.hint(level));
    const {red, black, wire} = reading.proposal!;
    const where = wire ?? red!;
    expect(question.text).not.toContain(where);
    expect(question.proposal).toBeUndefined();
    expect(place.text).toContain(where.split('.')[0]);
    expect(place.text).not.toContain(where);
    expect(reading.text).toContain(where);
    if (black) expect(reading.text).toContain(black);
    expect(reading.text).toMatch(/splits \d+ suspects \d+\/\d+/);
    expect(hintMinutes[1] < hintMinutes[2] && hintMinutes[2] < hintMinutes[3]).toBe(true);
  });

  test('says so when the log leaves one suspect', () => {
    const suspects = called();
    suspects.read('ac-volts', {red: 'HPS.1', black: 'HPS.2'}, show('ac-volts', 26.2));
    expect(new Coach(suspects).hint(3).text).toMatch(/leaves one suspect/);
  });

  test('says so when no single fault explains the log', () => {
    const suspects = called();
    suspects.read('ac-volts', {red: 'HPS.1', black: 'HPS.2'}, show('ac-volts', 26.2));
    suspects.read('ac-volts', {red: 'TB1.L', black: 'TB1.N'}, show('ac-volts', 3));
    expect(new Coach(suspects).hint(1).text).toMatch(/There may be two/);
  });

  test('explains why a reading was useless, and is silent where it could have told something', () => {
    const suspects = called();
    const at = {red: 'HPS.1', black: 'HPS.2'};
    const first = suspects.read('ac-volts', at, show('ac-volts', 0));
    expect(Coach.uselessness(first)).toBeUndefined();
    expect(Coach.uselessness(suspects.read('ac-volts', at, show('ac-volts', 0)))).toMatch(
      /could not have come out otherwise/,
    );
  });
});
