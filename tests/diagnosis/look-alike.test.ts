import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {lookAlike} from '../../src/diagnosis/look-alike.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {partOf} from '../sequences/fixtures/small-unit.ts';

const alike = (unitId: string, a: string, b: string): boolean => {
  const unit = readShippedUnit(unitId);
  const all = catalogue(unit);
  return lookAlike(unit, faultsById(all, [a]), faultsById(all, [b]));
};

describe('told apart', () => {
  test.each([
    // volts across the one and not across the other
    ['practice-panel', 'HPS:stuck-open', 'W17:open'],
    ['practice-panel', 'K1:coil-open', 'W20:open'],
    ['practice-panel', 'F1:open', 'W13:open'],
    // two pieces of one conductor: only with a wire lifted
    ['practice-panel', 'W15:earth', 'W16:earth'],
    // only by turning the pressure up by hand
    ['practice-panel', 'HPS:stuck-closed', 'LPS:stuck-closed'],
    ['split-heat-pump', 'HPS:stuck-open', 'LPS:stuck-open'],
    ['split-heat-pump', 'K3:coil-open', 'K3:armature-jammed'],
    ['split-heat-pump', 'CMP:seized', 'CMP:overload-open'],
  ])('%s: %s and %s', (unit, a, b) => {
    expect(alike(unit, a, b)).toBe(false);
    expect(alike(unit, b, a)).toBe(false);
  });
});

test('a weak capacitor that nothing runs on is told from a good one by its capacitance alone', () => {
  const panel = readShippedUnit('practice-panel');
  const spare = {
    ...partOf('C9', 'capacitor', {microfarads: 10, volts: 440}),
    enclosure: panel.enclosures[0].id,
  };
  const unit = {...panel, parts: [...panel.parts, spare]};
  const all = catalogue(unit);
  const weak = faultsById(all, ['C9:section-weak']);
  expect(lookAlike(unit, [], weak)).toBe(false);
  expect(lookAlike(unit, weak, weak.slice())).toBe(true);
  expect(lookAlike(unit, weak, faultsById(all, ['C9:section-wrong']))).toBe(false);
});

describe('not to be told apart', () => {
  test('a fault from itself', () => {
    for (const id of ['HPS:stuck-open', 'W19:earth'])
      expect(alike('practice-panel', id, id)).toBe(true);
  });

  test('on the heat pump: which of two safeties would not open, while the pressures never ask either', () => {
    expect(alike('split-heat-pump', 'HPS:stuck-closed', 'LPS:stuck-closed')).toBe(true);
  });
});
