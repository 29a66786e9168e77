import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {copperShare} from '../../src/parts/copper.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';

const rooftop = readShippedUnit('rooftop-unit');
const running = (id: string) =>
  inSequence(
    operateUnit(rooftop, []),
    rooftop.sequences.find((sequence) => sequence.id === id)!,
  );

// 2 V shut, 10 V wide open: the range of damper actuators (common practice, no source); the divider by hand
describe('the 2–10 V signal to a damper', () => {
  test.each([
    ['cooling-1', 0.2],
    ['free-cooling', 1],
  ])('%s: with nothing on it, it stands at 2 V + 8 V × %f', (sequence, share) => {
    const operating = running(sequence);
    const wire = rooftop.wires.find(({from, to}) => [from, to].includes('DA1.SIG'))!;
    operating.lift(wire.to === 'DA1.SIG' ? `${wire.id}.to` : `${wire.id}.from`);
    const end = wire.to === 'DA1.SIG' ? `${wire.id}.to` : `${wire.id}.from`;
    const volts = Number(readMeter('dc-volts', operating, {red: end, black: 'DA1.COM'}).text);
    expect(Math.abs(volts - (2 + 8 * share))).toBeLessThan(0.015 * (2 + 8 * share));
  });

  test("the actuator's 100 kΩ take less than a hundredth of it", () => {
    const volts = running('cooling-1').dcVolts('DA1.SIG', 'DA1.COM');
    // 10 V through 10 Ω and the divider's 1778 Ω to 1 kΩ beside 100 kΩ: 10 × 990.1/2777.9 = 3.564 V
    expect(volts).toBeCloseTo(3.564, 2);
  });
});

// R2 = R1 (234.5 + t2)/(234.5 + t1) for copper: IEEE 112 and IEEE C57.12.90, by hand
test.each([
  [77, 1],
  [248, 1.366],
  [32, 0.9037],
])('a copper winding at %i °F has %f times its ohms at 25 °C', (degF, share) => {
  expect(copperShare(degF)).toBeCloseTo(share, 3);
});
