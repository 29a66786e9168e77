import {describe, expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const highPressure = (reset: 'auto' | 'manual') =>
  new BenchPart(
    partOf('HPS', 'pressure-switch', {
      senses: 'dischargePsig',
      opensOn: 'rise',
      reset,
      cutOutPsig: 610,
      cutInPsig: 500,
    }),
  );
const at = (dischargePsig: number) => ({plant: {dischargePsig}});

describe('a high-pressure switch', () => {
  test('opens at cut-out and not a pound before', () => {
    const hps = highPressure('auto').show(at(609));
    expect(hps.isClosed('contact')).toBe(true);
    expect(hps.show(at(610)).isClosed('contact')).toBe(false);
  });

  test('stays open between cut-out and cut-in, and closes at cut-in', () => {
    const hps = highPressure('auto').show(at(650)).show(at(501));
    expect(hps.isClosed('contact')).toBe(false);
    expect(hps.show(at(500)).isClosed('contact')).toBe(true);
  });

  test('with manual reset stays open until its button is pressed', () => {
    const hps = highPressure('manual').show(at(650)).show(at(200));
    expect(hps.isClosed('contact')).toBe(false);
    expect(hps.set('reset', 'pressed').isClosed('contact')).toBe(true);
  });

  test('will not reset by hand while the pressure is still up', () => {
    const hps = highPressure('manual').show(at(650)).show(at(550));
    expect(hps.set('reset', 'pressed').isClosed('contact')).toBe(false);
  });
});

test('a low-pressure switch opens on a fall and closes again when the pressure has come back', () => {
  const lps = new BenchPart(
    partOf('LPS', 'pressure-switch', {
      senses: 'suctionPsig',
      opensOn: 'fall',
      cutOutPsig: 25,
      cutInPsig: 45,
    }),
  );
  expect(lps.show({plant: {suctionPsig: 26}}).isClosed('contact')).toBe(true);
  expect(lps.show({plant: {suctionPsig: 25}}).isClosed('contact')).toBe(false);
  expect(lps.show({plant: {suctionPsig: 44}}).isClosed('contact')).toBe(false);
  expect(lps.show({plant: {suctionPsig: 45}}).isClosed('contact')).toBe(true);
});

test('a switch for a value that this plant does not have stays closed', () => {
  expect(highPressure('auto').show({plant: {}}).isClosed('contact')).toBe(true);
});

test('a fusible link opens once and stays open when it has cooled', () => {
  const link = new BenchPart(
    partOf('FL1', 'fusible-link', {senses: 'heaterDegF', opensAtDegF: 333}),
  );
  expect(link.show({plant: {heaterDegF: 332}}).isClosed('link')).toBe(true);
  expect(link.show({plant: {heaterDegF: 333}}).isClosed('link')).toBe(false);
  expect(link.show({plant: {heaterDegF: 70}}).isClosed('link')).toBe(false);
});
