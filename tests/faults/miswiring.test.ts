import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const magnitude = ({re, im}: {re: number; im: number}) => Math.hypot(re, im);
const rooftop = readShippedUnit('rooftop-unit');
const heatPump = readShippedUnit('split-heat-pump');

function running(unit: typeof rooftop, fault: string, sequence: string): OperatingUnit {
  const found = unit.sequences.find(({id}) => id === sequence)!;
  return inSequence(operateUnit(unit, faultsById(catalogue(unit), [fault])), found);
}
const seen = (unit: OperatingUnit, part: string) =>
  unit.observations().find((each) => each.part === part);

describe('a control transformer on the wrong primary tap', () => {
  test('208 V on the 230 V tap leaves the 24 V a tenth low', () => {
    // turns ratio: 208/230 of what the right tap gives (common practice, no source)
    const wrong = rooftop.wires.find(({to}) => to === 'T1.H2')!;
    const sound = inSequence(operateUnit(rooftop, []), rooftop.sequences[0]!);
    const low = running(rooftop, `${wrong.id}:on-tap-H3`, 'off');
    const ratio =
      magnitude(low.acVolts('T1.X1', 'T1.X2')) / magnitude(sound.acVolts('T1.X1', 'T1.X2'));
    expect(ratio).toBeCloseTo(208 / 230, 2);
  });
});

describe('two phases swapped at the disconnect', () => {
  const swap = catalogue(rooftop).find(
    ({mode, name}) => mode === 'swapped' && name.endsWith('at DS1'),
  )!;

  test('the phase monitor says so and keeps the whole unit off', () => {
    const unit = running(rooftop, swap.id, 'cooling-2');
    expect(seen(unit, 'PM1')!.display).toBe('three flashes: phases in the wrong order');
    expect(seen(unit, 'CMP1')!.is).toBe('off');
    expect(seen(unit, 'TS')!.is).toBe('blank');
  });

  test('with the monitor jumpered out, scrolls turn backwards: loud, little current, no pumping', () => {
    const unit = operateUnit(rooftop, faultsById(catalogue(rooftop), [swap.id]));
    unit.jumper('PM1.COM', 'PM1.NO');
    // a thermostat that gets its power back takes some seconds
    unit.advance(30_000);
    inSequenceOn(unit, 'cooling-2');
    expect(seen(unit, 'CMP1')!.is).toBe('noisy');
    expect(magnitude(unit.amps('CMP1.winding1'))).toBeLessThan(0.65 * 15.8);
    const {dischargePsig, suctionPsig} = unit.plantValues();
    expect(dischargePsig! - suctionPsig!).toBeLessThan(5);
  });
});

function inSequenceOn(unit: OperatingUnit, sequence: string): void {
  const {set, waitSeconds} = rooftop.sequences.find(({id}) => id === sequence)!;
  for (const {target, value} of set) unit.set(target, value);
  unit.advance(waitSeconds * 1000);
}

describe('a run capacitor of the wrong value', () => {
  test('half as many µF again: 2652 × A/V finds it out', () => {
    // µF = 2652·A/V at 60 Hz: 10⁶/(2π·60)
    const [wrong] = catalogue(heatPump).filter(({id}) => id.endsWith(':fan-wrong'));
    const unit = running(heatPump, wrong!.id, 'cooling');
    const part = wrong!.id.split(':')[0]!;
    const amps = magnitude(unit.amps(`${part}.fan`));
    const volts = magnitude(unit.acVolts(`${part}.FAN`, `${part}.C`));
    expect((2652 * amps) / volts).toBeCloseTo(7.5, 1);
  });
});

describe('a live conductor on metal whose equipment ground is broken', () => {
  test.each([
    [rooftop, 120],
    [heatPump, 120],
  ])('trips no breaker and stands at the line’s volts to earth (%#)', (unit, volts) => {
    const fault = catalogue(unit).find(({mode}) => mode === 'live-metal')!;
    const operating = running(unit, fault.id, unit.sequences[0]!.id);
    const cabinet = fault.paths[0]!.b;
    expect(magnitude(operating.acVolts(cabinet, 'SUP.G'))).toBeGreaterThan(0.9 * volts);
    expect(operating.observations().some(({is}) => is === 'tripped')).toBe(false);
  });

  test('with the equipment ground sound the same wire on the metal trips the breaker', () => {
    const fault = catalogue(rooftop).find(({mode}) => mode === 'live-metal')!;
    const operating = operateUnit(rooftop, [{...fault, changes: []}]);
    expect(seen(operating, 'CB1')!.is).toBe('tripped');
  });
});
