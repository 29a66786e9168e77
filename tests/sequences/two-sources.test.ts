import {describe, expect, test} from 'vitest';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {unaltered} from '../../src/circuits/build-network.ts';
import type {Fault} from '../../src/faults/fault.ts';
import {partOf, smallUnit} from './fixtures/small-unit.ts';

const magnitude = ({re, im}: {re: number; im: number}) => Math.hypot(re, im);
const volts = (unit: OperatingUnit, a: string, b: string) => magnitude(unit.acVolts(a, b));

const control = {va: 40, taps: [{terminal: 'H2', volts: 120}], secondaryVolts: 24};

/** Two control transformers on one 120 V leg, each behind its own switch; commons joined. */
function twoTransformers(secondWire: readonly string[]): OperatingUnit {
  const unit = operateUnit(
    smallUnit(
      [
        partOf('S', 'supply', {legs: [{terminal: 'L', volts: 120, degrees: 0}]}),
        partOf('A', 'toggle-switch'),
        partOf('B', 'toggle-switch'),
        partOf('T1', 'transformer', control),
        partOf('T2', 'transformer', control),
        partOf('F', 'fuse', {amps: 3}),
      ],
      [
        'S.L-A.1',
        'S.L-B.1',
        'A.2-T1.H1',
        'B.2-T2.H1',
        'T1.H2-S.N',
        'T2.H2-S.N',
        'T1.X1-F.1',
        ...secondWire,
      ],
    ),
    [],
  );
  unit.set('A.position', 'on');
  unit.set('B.position', 'on');
  return unit;
}

describe('two control transformers with their commons joined', () => {
  // how transformers are phased before they are paralleled (common practice, no source)
  test('in phase show nothing between their hot ends', () => {
    expect(volts(twoTransformers(['T1.X2-T2.X2']), 'T1.X1', 'T2.X1')).toBeLessThan(0.1);
  });

  test('out of phase show twice 24 V between their hot ends', () => {
    const unit = twoTransformers(['T1.X2-T2.X1']);
    const one = volts(unit, 'T1.X1', 'T1.X2');
    expect(volts(unit, 'T1.X1', 'T2.X2')).toBeCloseTo(2 * one, 1);
  });

  test('paralleled in phase go on at 24 V', () => {
    const unit = twoTransformers(['T1.X2-T2.X2', 'F.2-T2.X1']);
    expect(unit.isClosed('F.link')).toBe(true);
    expect(volts(unit, 'F.2', 'T1.X2')).toBeGreaterThan(25);
    expect(magnitude(unit.amps('F.link'))).toBeLessThan(0.05);
  });

  test('paralleled out of phase blow the fuse between them within a second', () => {
    const unit = twoTransformers(['T1.X2-T2.X1', 'F.2-T2.X2']);
    unit.advance(1000);
    expect(unit.isClosed('F.link')).toBe(false);
  });
});

describe('back-feed', () => {
  test('a transformer that is switched off has line volts on its primary when another feeds its secondary', () => {
    // ratio 120/26.4 of the secondary's no-load volts, by the other's 26.4 V: line volts less the drops
    const unit = twoTransformers(['T1.X2-T2.X2', 'F.2-T2.X1']);
    unit.set('A.position', 'off');
    expect(volts(unit, 'T1.H1', 'T1.H2')).toBeGreaterThan(100);
    expect(volts(unit, 'A.2', 'S.G')).toBeGreaterThan(100);
  });

  test('with the jumper between the two control circuits taken off it is dead', () => {
    const unit = twoTransformers(['T1.X2-T2.X2', 'F.2-T2.X1']);
    unit.set('A.position', 'off');
    unit.lift('W9.from');
    expect(volts(unit, 'T1.H1', 'T1.H2')).toBeLessThan(1);
  });
});

describe('without a fuse', () => {
  test('transformers paralleled out of phase burn out within minutes', () => {
    // circulating amps are dead-short amps for both (common practice, no source)
    const unit = twoTransformers(['T1.X2-T2.X1', 'T1.X1-T2.X2']);
    unit.advance(5 * 60_000);
    const burnt = unit.observations().filter(({is}) => is === 'burnt');
    expect(burnt.length).toBeGreaterThan(0);
  });
});

describe('a loose lug in a heater’s line', () => {
  const loose: Fault = {
    id: 'W2:high-resistance',
    site: {on: 'wire', wire: 'W2'},
    mode: 'high-resistance',
    name: 'loose lug',
    ...unaltered,
    changes: [{element: 'W2', seriesOhms: 1}],
    behaviour: {},
    plant: {},
    weight: 1,
  };
  const heater = (): OperatingUnit =>
    operateUnit(
      smallUnit(
        [
          partOf('S', 'supply', {legs: [{terminal: 'L', volts: 240, degrees: 0}]}),
          partOf('A', 'toggle-switch'),
          partOf('H', 'heater', {watts: 5000, volts: 240}),
        ],
        ['S.L-A.1', 'A.2-H.1', 'H.2-S.N'],
      ),
      [loose],
    );

  test('drops nothing with no load on it', () => {
    const unit = heater();
    expect(volts(unit, 'A.2', 'H.1')).toBeLessThan(0.01);
  });

  test('drops volts under load, and turns volts times amps into heat at the joint', () => {
    const unit = heater();
    unit.set('A.position', 'on');
    // Ohm's law: 240 V over 1 Ω and 11.52 Ω are 19.2 A, 19.2 V and 367 W
    const amps = 240 / (1 + 240 ** 2 / 5000);
    expect(volts(unit, 'A.2', 'H.1')).toBeCloseTo(amps, 0);
    expect(volts(unit, 'A.2', 'H.1') * magnitude(unit.amps('W2'))).toBeGreaterThan(350);
    expect(volts(unit, 'H.1', 'H.2')).toBeLessThan(0.93 * 240);
  });
});
