import {describe, expect, test} from 'vitest';
import {complaintOf} from '../../src/bench/complaint.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {
  behaviourHash,
  difficultyFile,
  readDifficulties,
  type DifficultyFile,
} from '../../src/diagnosis/difficulty-file.ts';
import {levelOf, levelsOf} from '../../src/diagnosis/difficulty-level.ts';
import {difficultiesOf} from '../../src/diagnosis/fault-difficulty.ts';
import {sectionOf} from '../../src/diagnosis/fault-section.ts';
import {shippedDifficulties} from '../../src/diagnosis/node/read-difficulties.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {difficulties} from '../../src/faults/difficulty.ts';

const panel = readShippedUnit('practice-panel');

describe('what has been worked out beforehand', () => {
  // where this fails: npm run difficulty
  test.each(shippedUnitIds())('fits %s as it is now, fault by fault', (id) => {
    const unit = readShippedUnit(id);
    const all = shippedDifficulties(unit);
    expect(all.map(({fault}) => fault)).toEqual(catalogue(unit).map((fault) => fault.id));
  });

  // complaints are the costly half; a few of each unit are worked out again in every run, the rest when the file is made
  test.each(shippedUnitIds())(
    'tells what a customer of %s would notice, tried on a sample',
    (id) => {
      const unit = readShippedUnit(id);
      const all = shippedDifficulties(unit);
      const faults = catalogue(unit);
      const step = Math.ceil(faults.length / 8);
      for (let at = 3; at < faults.length; at += step) {
        const {text, silent} = complaintOf(unit, [faults[at]]);
        expect(all[at], faults[at].id).toMatchObject({
          fault: faults[at].id,
          complaint: silent ? '' : text,
          silent,
          section: sectionOf(unit, faults[at]),
        });
      }
    },
  );

  test('is what the planner needs, worked out again for a whole unit', () => {
    const fresh = difficultiesOf(panel).map((each) =>
      each.silent ? {...each, complaint: ''} : each,
    );
    expect(shippedDifficulties(panel)).toEqual(fresh);
  });

  test.each(shippedUnitIds())('%s has calls of every level', (id) => {
    const levels = levelsOf(shippedDifficulties(readShippedUnit(id)));
    const found = new Set(catalogue(readShippedUnit(id)).map((fault) => levels(fault.id)));
    for (const level of difficulties) expect(found, level).toContain(level);
  });
});

describe('a difficulty file', () => {
  test('gives back what was written', () => {
    const all = shippedDifficulties(panel);
    const file = JSON.parse(difficultyFile(panel, all)) as DifficultyFile;
    expect(readDifficulties(panel, file)).toEqual(all);
  });

  test('of a unit that has changed since is not used', () => {
    const file = JSON.parse(difficultyFile(panel, [])) as DifficultyFile;
    const [first, ...rest] = panel.wires;
    const longer = {...panel, wires: [{...first, feet: first.feet + 1}, ...rest]};
    expect(behaviourHash(longer)).not.toBe(behaviourHash(panel));
    expect(readDifficulties(longer, file)).toBeUndefined();
    expect(() => shippedDifficulties(longer)).toThrow(/npm run difficulty -- practice-panel/);
  });

  test('words and nameplate do not make it stale', () => {
    expect(behaviourHash({...panel, about: 'Another text.', nameplate: []})).toBe(
      behaviourHash(panel),
    );
  });
});

test('three readings in eight minutes are easy, five in a quarter of an hour medium, the rest hard', () => {
  expect([levelOf(3, 8), levelOf(3, 9), levelOf(5, 15), levelOf(6, 4), levelOf(2, 16)]).toEqual([
    'easy',
    'medium',
    'medium',
    'hard',
    'hard',
  ]);
});
