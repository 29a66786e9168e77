import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {isolate} from '../../src/diagnosis/operating-states.ts';
import {OutcomeScale} from '../../src/diagnosis/outcome-scale.ts';
import {OutcomeSplit} from '../../src/diagnosis/outcome-split.ts';
import {outcomeTable, scaleOf} from '../../src/diagnosis/outcome-table.ts';
import {restingUnit} from '../../src/diagnosis/replayed-unit.ts';
import {differ} from '../../src/meter/accuracy.ts';
import {show} from '../../src/meter/display.ts';
import {readMeter} from '../../src/meter/read-meter.ts';

const heatPump = readShippedUnit('split-heat-pump');

describe('the scale of outcomes', () => {
  test('amounts that it puts apart are told apart by the meter', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ac-volts', 'ohms', 'dc-volts', 'clamp-amps'),
        fc.double({min: 0, max: 500, noNaN: true}),
        fc.double({min: 0.5, max: 1.5, noNaN: true}),
        (fn, amount, factor) => {
          const scale = scaleOf(fn);
          const [a, b] = [amount, amount * factor];
          // half a count of rounding on the display can hide what is only just apart
          const apart = Math.abs(scale.of(a) - scale.of(b)) > OutcomeScale.apart + 2;
          return !apart || differ(fn, show(fn, a), show(fn, b));
        },
      ),
      {numRuns: 2000},
    );
  });

  test('tells people an amount that has the same outcome', () => {
    for (const amount of [0.4, 24, 26.2, 119, 240]) {
      const scale = scaleOf('ac-volts');
      expect(scale.amountOf(scale.of(amount))! / amount).toBeCloseTo(1, 1);
    }
    expect(scaleOf('dc-volts').amountOf(scaleOf('dc-volts').of(-5))).toBeCloseTo(-5, 1);
    expect(scaleOf('ohms').amountOf(scaleOf('ohms').overload)).toBeUndefined();
  });
});

describe('the table of outcomes', () => {
  // every ninth suspect, in cooling and locked out: what the table says is what the meter shows
  const some = hypothesesOf(heatPump).filter((_, i) => i % 9 === 0);
  const cooling = heatPump.sequences.find(({id}) => id === 'cooling')!;
  const units = some.map(({faults}) => {
    const operating = restingUnit(heatPump, faults);
    for (const {target, value} of cooling.set) operating.set(target, value);
    operating.advance(cooling.waitSeconds * 1000);
    return operating;
  });
  const dead = units.map((unit) => isolate(heatPump, unit.fork()));
  const points = units[0].probePoints();

  test.each([
    ['ac-volts', units],
    ['low-impedance-volts', units],
    ['dc-volts', units],
    ['ohms', dead],
    ['ohms', units],
  ] as const)('%s agree with the meter at 600 places', (fn, read) => {
    const table = outcomeTable(fn, read, points);
    let checked = 0;
    for (let i = 0; i < 600; i += 1) {
      const suspect = i % read.length;
      const place = (i * 1013) % table.places;
      const [red, black] = [points[table.first[place]], points[table.second[place]]];
      const shown = readMeter(fn, read[suspect], {red, black});
      const expected = shown.hazard
        ? table.scale.hazard
        : shown.overload
          ? table.scale.overload
          : table.scale.of(shown.value!);
      const outcome = table.outcomes[place * table.suspects + suspect];
      expect(
        Math.abs(outcome - expected),
        `${some[suspect].id} ${red} ${black}`,
      ).toBeLessThanOrEqual(1);
      checked += 1;
    }
    expect(checked).toBe(600);
  });

  test('groups have all the suspects in them, and no gain is above log₂ of the groups', () => {
    const table = outcomeTable('ac-volts', units, points);
    const split = new OutcomeSplit(table);
    const all = Int32Array.from(some.keys());
    const weights = Float64Array.from(some, ({weight}) => weight);
    for (let place = 0; place < table.places; place += 97) {
      const bits = split.bits(place, all, weights);
      expect(split.groupCounts.reduce((sum, count) => sum + count, 0)).toBe(some.length);
      expect(bits).toBeLessThanOrEqual(Math.log2(split.groupCounts.length) + 1e-9);
    }
  });
});
