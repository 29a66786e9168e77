import {expect, test} from 'vitest';
import {transformer} from '../../src/parts/transformer.ts';
import type {Transformer} from '../../src/parts/element.ts';

function coreOf(data: object): Transformer {
  const core = transformer.elements(transformer.data.parse(data))[0]!;
  if (core.is !== 'transformer') throw new Error('a transformer is made of its core');
  return core;
}

const winding = (core: Transformer, id: string) => core.windings.find((one) => one.id === id)!;

/** Secondary volts with a resistive load, the primary at its rated volts, magnetising current neglected. */
function loadedVolts(core: Transformer, primaryVolts: number, loadOhms: number): number {
  const secondary = winding(core, 'secondary');
  const primaries = core.windings.filter((one) => one.id !== 'secondary');
  const ratio = secondary.turnsVolts / primaries.reduce((sum, one) => sum + one.turnsVolts, 0);
  const ohms = secondary.ohms + ratio ** 2 * primaries.reduce((sum, one) => sum + one.ohms, 0);
  const reactance =
    secondary.reactanceOhms +
    ratio ** 2 * primaries.reduce((sum, one) => sum + one.reactanceOhms, 0);
  return (primaryVolts * ratio * loadOhms) / Math.hypot(loadOhms + ohms, reactance);
}

test('at full load the secondary gives its rated volts, at no load more by the regulation', () => {
  // 24 V, 40 VA, regulation 6.87 %: 25.65 V open (references.json G04-15; definition of regulation in
  // Lessons in Electric Circuits, AC chapter 9); rated current 1.667 A (G04-11)
  const core = coreOf({
    va: 40,
    taps: [{terminal: 'H2', volts: 120}],
    secondaryVolts: 24,
    regulationPercent: 6.87,
  });
  expect(winding(core, 'secondary').turnsVolts).toBeCloseTo(25.65, 2);
  const fullLoadOhms = 24 / 1.667;
  expect(Math.abs(loadedVolts(core, 120, fullLoadOhms) - 24)).toBeLessThan(0.15);
  // half load, where the sag is linear: 24.82 V
  expect(Math.abs(loadedVolts(core, 120, fullLoadOhms * 2) - 24.82)).toBeLessThan(0.1);
});

test('taps are sections in series whose volts add up', () => {
  const core = coreOf({
    va: 40,
    taps: [
      {terminal: '208', volts: 208},
      {terminal: '240', volts: 240},
    ],
    secondaryVolts: 24,
  });
  expect(winding(core, 'primary-208')).toMatchObject({a: 'H1', b: '208', turnsVolts: 208});
  expect(winding(core, 'primary-240')).toMatchObject({a: '208', b: '240', turnsVolts: 32});
});

test('with 208 V on the 208 V tap the secondary is as with 240 V on the 240 V tap', () => {
  const core = coreOf({
    va: 40,
    taps: [
      {terminal: '208', volts: 208},
      {terminal: '240', volts: 240},
    ],
    secondaryVolts: 24,
  });
  const secondary = winding(core, 'secondary').turnsVolts;
  expect((208 * secondary) / winding(core, 'primary-208').turnsVolts).toBeCloseTo(
    (240 * secondary) / 240,
    9,
  );
});

test('a primary tapped in falling order, or two taps of one voltage, are refused', () => {
  const data = {va: 40, secondaryVolts: 24};
  const taps = (a: number, b: number) => ({
    ...data,
    taps: [
      {terminal: 'P1', volts: a},
      {terminal: 'P2', volts: b},
    ],
  });
  expect(transformer.data.safeParse(taps(208, 240)).success).toBe(true);
  expect(transformer.data.safeParse(taps(240, 208)).success).toBe(false);
  expect(transformer.data.safeParse(taps(240, 240)).success).toBe(false);
});

test('windings of a small control transformer read as a technician knows them', () => {
  // common practice, no source: secondary of a 40 VA, 24 V transformer well under 5 Ω, 240 V primary some tens to 150 Ω
  const core = coreOf({
    va: 40,
    taps: [
      {terminal: '208', volts: 208},
      {terminal: '240', volts: 240},
    ],
    secondaryVolts: 24,
  });
  const primary = winding(core, 'primary-208').ohms + winding(core, 'primary-240').ohms;
  expect(winding(core, 'secondary').ohms).toBeGreaterThan(0.3);
  expect(winding(core, 'secondary').ohms).toBeLessThan(5);
  expect(primary).toBeGreaterThan(20);
  expect(primary).toBeLessThan(150);
});
