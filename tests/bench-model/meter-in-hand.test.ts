import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import type {LogEntry} from '../../src/bench/bench-view.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import type {MeterFlaw} from '../../src/meter/meter-condition.ts';
import type {MeterFunction} from '../../src/meter/meter-function.ts';

/** A bench with every cover off, and the last line of its log after doing these things. */
function at(unitId: string, faults: readonly string[] = [], meterFlaw?: MeterFlaw) {
  const unit = readShippedUnit(unitId);
  const bench = new Bench({
    unit,
    faults: faultsById(catalogue(unit), faults),
    complaint: '',
    seed: 0,
    ...(meterFlaw ? {meterFlaw} : {}),
  });
  const act = (...actions: Action[]): LogEntry => {
    for (const action of actions) {
      const result = bench.act(action);
      if ('refused' in result) throw new Error(`${action.do}: ${result.refused}`);
    }
    return bench.view().log.at(-1)!;
  };
  for (const {id} of unit.enclosures.filter(({cover}) => cover))
    act({do: 'open-cover', enclosure: id});
  const read = (fn: MeterFunction, red: string, black: string): LogEntry =>
    act({do: 'meter', function: fn}, {do: 'read', red, black});
  const findings = (): string[] => bench.view().safety.map(({id}) => id);
  const sequence = (id: string): void => {
    const {set, waitSeconds} = unit.sequences.find((each) => each.id === id)!;
    act(...set.map(({target, value}): Action => ({do: 'set', target, value})), {
      do: 'wait',
      seconds: waitSeconds,
    });
  };
  return {bench, act, read, findings, sequence};
}

describe('microamps in series', () => {
  test('the leads close the gap of a lifted rod wire: the flame is proved through the meter', () => {
    const {act, read, sequence, bench} = at('gas-furnace');
    act({do: 'set', target: 'DS1.position', value: 'open'}, {do: 'lift', end: 'W30.from'});
    expect(read('dc-microamps', 'IB1.FS', 'W30.from').display).toMatchObject({text: '0.00'});
    act({do: 'set', target: 'DS1.position', value: 'closed'});
    sequence('heating');
    const {display} = act({do: 'read', red: 'IB1.FS', black: 'W30.from'});
    expect(display!.value! * 1e6).toBeGreaterThan(1.5);
    // leads the other way round: only the sign changes
    expect(act({do: 'read', red: 'W30.from', black: 'IB1.FS'}).display!.value).toBeCloseTo(
      -display!.value!,
      8,
    );
    // the selector is turned: the gap is open, and the flame is not seen any more
    act({do: 'meter', function: 'ac-volts'}, {do: 'wait', seconds: 10});
    expect(bench.view().observations.find(({part}) => part === 'FR1')!.is).toBe('off');
  });

  test("across a source they blow the meter's fuse, and read zero until it is renewed", () => {
    const {act, read, findings, bench} = at('gas-furnace');
    const first = read('dc-microamps', 'IB1.R', 'IB1.C');
    expect(first).toMatchObject({fuseBlew: true, display: {text: '0.00', fuseBlew: true}});
    expect(findings()).toContain('microamps-across:IB1.R:IB1.C');
    // no fuse is left to blow a second time, and nothing is read
    expect(read('dc-microamps', 'IB1.FS', 'IB1.GND').display!.fuseBlew).toBeUndefined();
    expect(bench.view().log.at(-1)!.display!.text).toBe('0.00');
    expect(act({do: 'renew', what: 'fuse'}).text).toBe('Put a new fuse in the meter');
    expect(read('dc-microamps', 'IB1.R', 'IB1.C').fuseBlew).toBe(true);
  });

  test('the fuse also blows when power comes on with the leads across a source', () => {
    const {act, read, findings} = at('gas-furnace');
    act({do: 'set', target: 'DS1.position', value: 'open'});
    expect(read('dc-microamps', 'IB1.R', 'IB1.C').fuseBlew).toBeUndefined();
    expect(act({do: 'set', target: 'DS1.position', value: 'closed'}).fuseBlew).toBe(true);
    expect(findings()).toContain('microamps-across:IB1.R:IB1.C');
  });
});

describe("the student's own meter", () => {
  const live = ['IB1.L', 'IB1.N'] as const;

  test('a broken lead reads zero on a known live source: the first step of live-dead-live shows it', () => {
    const {act, read} = at('gas-furnace', [], 'broken-lead');
    expect(read('ac-volts', ...live).display!.value).toBe(0);
    // leads held together ought to read next to nothing
    expect(read('ohms', 'IB1.L', 'IB1.L').display!.overload).toBe(true);
    act({do: 'renew', what: 'leads'});
    expect(read('ac-volts', ...live).display!.value).toBeGreaterThan(110);
    expect(read('ohms', 'IB1.L', 'IB1.L').display!.value).toBe(0);
  });

  test('with it nobody gets the circuit proved dead, and the caution says what is missing', () => {
    const proved = (flaw?: MeterFlaw): string => {
      const {act, read, bench} = at('gas-furnace', [], flaw);
      read('ac-volts', 'SUP.L', 'SUP.N');
      act({do: 'set', target: 'CB1.position', value: 'off'}, {do: 'lock', part: 'CB1'});
      read('ac-volts', ...live);
      read('ac-volts', 'SUP.L', 'SUP.N');
      return bench
        .view()
        .cautions.map(({id}) => id)
        .find((id) => /^(prove|discharge):blower/.test(id))!;
    };
    expect(proved()).toBe('discharge:blower-compartment');
    expect(proved('broken-lead')).toBe('prove:blower-compartment');
    expect(proved('weak-battery')).toBe('prove:blower-compartment');
  });

  test('a weak battery reads low and says so; a fresh one ends it', () => {
    const {act, read} = at('gas-furnace', [], 'weak-battery');
    const {display} = read('ac-volts', ...live);
    expect(display!.batteryLow).toBe(true);
    expect(display!.value).toBeLessThan(80);
    act({do: 'renew', what: 'battery'});
    expect(read('ac-volts', ...live).display!.batteryLow).toBeUndefined();
  });

  test('the view tells that the meter is to be proved, never what is wrong with it', () => {
    const views = (['sound', 'broken-lead', 'weak-battery', 'blown-fuse'] as const).map((flaw) =>
      JSON.stringify(at('gas-furnace', [], flaw).bench.view()),
    );
    expect(new Set(views).size).toBe(1);
    expect(at('gas-furnace').bench.view().meter.toProve).toBeUndefined();
  });
});

describe('what the glass keeps', () => {
  test('least and most catch the current of a motor that starts', () => {
    const {act, sequence, bench} = at('gas-furnace');
    act({do: 'meter', function: 'clamp-amps'}, {do: 'keep', what: 'extremes'});
    act({do: 'clamp', wire: 'W10'});
    sequence('heating');
    const running = act({do: 'clamp', wire: 'W10'}).display!.value!;
    const {least, most} = bench.view().meter.extremes!;
    expect(least.value).toBe(0);
    // locked rotor is several times the running current
    expect(most.value).toBeGreaterThan(2 * running);
  });

  test('hold keeps the last reading when the unit changes, and says that it is not now', () => {
    const {act, read, bench} = at('gas-furnace');
    read('ac-volts', 'IB1.L', 'IB1.N');
    act({do: 'keep', what: 'last'}, {do: 'set', target: 'DS1.position', value: 'open'});
    expect(bench.view().meter).toMatchObject({held: true, display: {unit: 'V AC'}});
    expect(act({do: 'read', red: 'IB1.L', black: 'IB1.N'}).display!.value).toBeLessThan(5);
    expect(bench.view().meter.held).toBeUndefined();
  });

  test('recording changes nothing of what happens to the unit', () => {
    const [plain, recording] = [at('gas-furnace'), at('gas-furnace')];
    recording.act({do: 'keep', what: 'extremes'}, {do: 'read', red: 'IB1.R', black: 'IB1.C'});
    for (const each of [plain, recording]) each.sequence('heating');
    expect(recording.bench.operating.plantValues()).toEqual(plain.bench.operating.plantValues());
    expect(recording.bench.view().observations).toEqual(plain.bench.view().observations);
  });
});

describe('charge on a capacitor', () => {
  // the wire lifted live leaves the capacitor as full as it was, and no winding beside it
  const charged = () => {
    const bench = at('split-heat-pump');
    bench.sequence('cooling');
    bench.act({do: 'lift', end: 'W73.from'});
    bench.act({do: 'set', target: 'DS2.position', value: 'open'});
    return bench;
  };
  const herm = ['C2.C', 'C2.HERM'] as const;

  test('runs off through the windings in a sound unit', () => {
    const {act, read, sequence} = at('split-heat-pump');
    sequence('cooling');
    act({do: 'set', target: 'DS2.position', value: 'open'});
    expect(read('dc-volts', ...herm).display!.value).toBeCloseTo(0, 2);
  });

  test('stays where the way round is open, shows on volts DC, and spoils ohms and capacitance', () => {
    const {read, findings} = charged();
    expect(Math.abs(read('dc-volts', ...herm).display!.value!)).toBeGreaterThan(200);
    expect(read('ohms', ...herm).display).toMatchObject({text: 'OL', hazard: true, charged: true});
    expect(read('capacitance', ...herm).display).toMatchObject({hazard: true, charged: true});
    expect(findings()).toContain('on-charge:C2.C:C2.HERM');
  });

  test('a hand on its other wire is a danger: dead is not discharged', () => {
    const {act, findings} = charged();
    act({do: 'lift', end: 'W78.to'});
    expect(findings()).toContain('charged:C2');
  });

  test('a bleed resistor takes it away, and then ohms climb', () => {
    const {act, read} = charged();
    act({do: 'discharge', from: herm[0], to: herm[1]});
    expect(Math.abs(read('dc-volts', ...herm).display!.value!)).toBeLessThan(0.1);
    expect(read('ohms', ...herm).display).toMatchObject({climbed: true});
  });

  test('low impedance takes it away too, ten megohms in many minutes', () => {
    const {act, read} = charged();
    const before = Math.abs(read('dc-volts', ...herm).display!.value!);
    act({do: 'wait', seconds: 60});
    const after = Math.abs(act({do: 'read', red: herm[0], black: herm[1]}).display!.value!);
    expect(after).toBeLessThan(before);
    expect(after).toBeGreaterThan(0.5 * before);
    read('low-impedance-volts', ...herm);
    expect(Math.abs(read('dc-volts', ...herm).display!.value!)).toBeLessThan(0.1);
  });

  test('the caution to discharge goes once volts DC have been read between the terminals', () => {
    const {act, read, bench} = at('split-heat-pump');
    const cautions = (): string[] => bench.view().cautions.map(({id}) => id);
    read('ac-volts', 'CB2.L1', 'CB2.L2');
    act({do: 'set', target: 'DS2.position', value: 'open'}, {do: 'lock', part: 'DS2'});
    read('ac-volts', 'K3.L1', 'K3.L2');
    read('ac-volts', 'CB2.L1', 'CB2.L2');
    expect(cautions()).toContain('discharge:outdoor-unit');
    read('dc-volts', 'C2.C', 'C2.HERM');
    expect(cautions()).toContain('discharge:outdoor-unit');
    read('dc-volts', 'C2.C', 'C2.FAN');
    expect(cautions()).not.toContain('discharge:outdoor-unit');
  });

  test('a bleed resistor on a live circuit is a finding', () => {
    const {act, findings} = at('gas-furnace');
    act({do: 'discharge', from: 'IB1.L', to: 'IB1.N'});
    expect(findings()).toContain('bleed-on-live:IB1.L:IB1.N');
  });
});

describe('capacitance at a unit', () => {
  const herm = ['C2.C', 'C2.HERM'] as const;
  const off: Action = {do: 'set', target: 'DS2.position', value: 'open'};
  test('isolated it reads its microfarads, weak ones less; with the windings beside it, it does not settle', () => {
    const microfarads = (faults: readonly string[], lift: boolean): number => {
      const {act, read} = at('split-heat-pump', faults);
      act(off, ...(lift ? [{do: 'lift', end: 'W73.from'} as const] : []));
      return (read('capacitance', ...herm).display!.value ?? Infinity) * 1e6;
    };
    const good = microfarads([], true);
    expect(good).toBeGreaterThan(10);
    expect(microfarads(['C2:herm-weak'], true)).toBeCloseTo(0.55 * good, 1);
    expect(microfarads([], false)).toBe(Infinity);
  });

  test('on a live circuit there is no reading, and a finding', () => {
    const {read, findings} = at('split-heat-pump');
    expect(read('capacitance', 'CB2.L1', 'CB2.L2').display).toMatchObject({hazard: true});
    expect(findings()).toContain('capacitance-on-live:CB2.L1:CB2.L2');
  });
});

describe('hertz', () => {
  test('are counted on volts and in the clamp, and not where there is nothing to count', () => {
    const {act, read, sequence} = at('gas-furnace');
    sequence('fan');
    expect(read('hertz', 'IB1.L', 'IB1.N').display).toMatchObject({text: '60.00', unit: 'Hz'});
    expect(read('hertz', 'IB1.W', 'IB1.C').display!.value).toBe(0);
    act({do: 'meter', function: 'clamp-hertz'});
    expect(act({do: 'clamp', wire: 'W10'}).display!.text).toBe('60.00');
    expect(act({do: 'clamp', wire: 'W28'}).display!.value).toBe(0);
  });
});
