import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {amps, is, secondsUntil, set, unitWith, value, volts} from './at-a-unit.ts';

// What everybody in the trade knows, and no standard says. Each is common practice, no source.

const heatPump = (...faults: string[]): OperatingUnit => unitWith('split-heat-pump', ...faults);
const cooling = (operating: OperatingUnit): OperatingUnit =>
  set(operating, {'plant.outdoorDegF': 92, 'plant.roomDegF': 80, 'TS.mode': 'cool'}, 60);

describe('common practice, no source: voltage', () => {
  test('across a closed switch a voltmeter shows nothing, across an open one the source', () => {
    expect(volts(cooling(heatPump()), 'HPS.1', 'HPS.2')).toBeLessThan(0.1);
    expect(volts(cooling(heatPump('HPS:stuck-open')), 'HPS.1', 'HPS.2')).toBeGreaterThan(22);
  });

  test('of two opens in series a voltmeter shows almost nothing across either: hop from the hot side', () => {
    const operating = cooling(heatPump('HPS:stuck-open', 'LPS:stuck-open'));
    // a little stray voltage on the floating piece between them, and far from 24 V
    expect(volts(operating, 'LPS.1', 'LPS.2')).toBeLessThan(5);
    // hopping from the hot side with black on C: the 24 V ends at the first open
    expect(volts(operating, 'HPS.1', 'TB2.C')).toBeGreaterThan(22);
    expect(volts(operating, 'HPS.2', 'TB2.C')).toBeLessThan(5);
  });

  test('a load with its full voltage and no current is open', () => {
    const operating = cooling(heatPump('K3:coil-open'));
    expect(volts(operating, 'K3.A1', 'K3.A2')).toBeGreaterThan(22);
    expect(amps(operating, 'W59')).toBeLessThan(0.02);
  });

  test('a “24 V” transformer reads higher unloaded than loaded', () => {
    const rest = volts(heatPump('TS:supply-open'), 'T1.X1', 'T1.X2');
    const loaded = volts(cooling(heatPump()), 'T1.X1', 'T1.X2');
    expect(rest).toBeGreaterThan(loaded);
    expect(loaded).toBeGreaterThan(23);
  });

  test('with one leg of a 240 V supply dead, the other still gives 120 V to ground all through the load', () => {
    const operating = heatPump('CB2:pole2-open');
    expect(volts(operating, 'DS2.L1', 'GND4.E')).toBeGreaterThan(115);
    expect(volts(operating, 'DS2.L1', 'DS2.L2')).toBeLessThan(130);
  });

  test('an open disconnect leaves its line side live', () => {
    const operating = heatPump();
    operating.set('DS2.position', 'open');
    expect(volts(operating, 'DS2.L1', 'DS2.L2')).toBeGreaterThan(235);
    expect(volts(operating, 'DS2.T1', 'DS2.T2')).toBeLessThan(1);
  });

  test('opening the outdoor disconnect does not take 24 V off the outdoor unit: it comes from indoors', () => {
    const operating = heatPump();
    operating.set('DS2.position', 'open');
    expect(volts(operating, 'TB2.R', 'TB2.C')).toBeGreaterThan(22);
  });

  test('voltage drop shows under load only', () => {
    const faulted = heatPump('K3:pole1-pitted');
    faulted.set('DS2.position', 'open');
    faulted.set('DS2.position', 'closed');
    const loaded = cooling(heatPump('K3:pole1-pitted'));
    expect(volts(loaded, 'K3.L1', 'K3.T1')).toBeGreaterThan(3);
    expect(amps(faulted, 'W71')).toBeLessThan(0.1);
    expect(volts(faulted, 'DS2.T1', 'K3.L1')).toBeLessThan(0.1);
  });
});

describe('common practice, no source: stray voltage', () => {
  test('a spare conductor in a live thermostat cable shows volts on 10 MΩ that vanish at low impedance', () => {
    const operating = cooling(heatPump());
    const high = volts(operating, 'TB1.X', 'TB1.C');
    expect(high).toBeGreaterThan(0.5);
    expect(value('low-impedance-volts', operating, 'TB1.X', 'TB1.C')).toBeLessThan(0.1);
  });

  test('the longer the cable, the more of it there is', () => {
    const withRuns = (times: number): OperatingUnit => {
      const unit = readShippedUnit('split-heat-pump');
      const wires = unit.wires.map((wire) =>
        wire.run ? {...wire, feet: wire.feet * times} : wire,
      );
      return cooling(operateUnit({...unit, wires}, []));
    };
    const [short, long] = [0.1, 1].map((times) => volts(withRuns(times), 'TB1.X', 'TB1.C'));
    expect(long).toBeGreaterThan(1.5 * short!);
  });
});

describe('common practice, no source: resistance', () => {
  const dead = (...faults: string[]): OperatingUnit => {
    const operating = heatPump(...faults);
    for (const part of ['CB1', 'CB2']) operating.set(`${part}.position`, 'off');
    return operating;
  };

  test('a blown fuse reads open, a good one next to nothing', () => {
    const lifted = (operating: OperatingUnit): OperatingUnit => {
      operating.lift('W32.to');
      return operating;
    };
    expect(value('ohms', lifted(dead()), 'F1.1', 'F1.2')).toBeLessThan(1);
    expect(value('ohms', lifted(dead('F1:open')), 'F1.1', 'F1.2')).toBeGreaterThan(1e6);
  });

  test('a fuse in circuit may read low although it is blown: the load and the transformer lie beside it', () => {
    const reading = value('ohms', dead('F1:open'), 'F1.1', 'F1.2');
    expect(reading).toBeGreaterThan(10);
    expect(reading).toBeLessThan(50_000);
  });

  test('a compressor reads open to its shell; a grounded one does not', () => {
    const off = (operating: OperatingUnit): OperatingUnit => {
      for (const end of ['W71.to', 'W72.to', 'W73.to']) operating.lift(end);
      return operating;
    };
    expect(value('ohms', off(dead()), 'CMP.C', 'GND5.E')).toBeGreaterThan(1e6);
    expect(value('ohms', off(dead('CMP:grounded')), 'CMP.C', 'GND5.E')).toBeLessThan(10);
  });

  test('a heating element reads V²/W: about 11.5 Ω for 5 kW at 240 V', () => {
    const operating = dead();
    operating.lift('W27.to');
    expect(value('ohms', operating, 'EH1.1', 'EH1.2')).toBeCloseTo(11.5, 0);
  });

  test('a motor’s run winding reads less than its start winding', () => {
    const operating = dead();
    for (const end of ['W76.to', 'W77.from', 'W78.from']) operating.lift(end);
    expect(value('ohms', operating, 'M2.BLK', 'M2.PUR')).toBeLessThan(
      value('ohms', operating, 'M2.BLK', 'M2.BRN'),
    );
  });

  test('a cold lamp reads about a tenth of what it is when lit', () => {
    const panel = unitWith('practice-panel');
    panel.set('CB1.position', 'off');
    panel.lift('W10.to');
    const hot = 120 ** 2 / 25;
    expect(value('ohms', panel, 'LT1.1', 'LT1.2') / hot).toBeCloseTo(0.1, 2);
  });
});

describe('common practice, no source: motors', () => {
  test('a single-phase compressor at standstill draws its locked-rotor amps, four to eight times the running amps', () => {
    const running = amps(cooling(heatPump()), 'W71');
    const seized = heatPump('CMP:seized');
    seized.set('plant.roomDegF', 80);
    seized.set('TS.mode', 'cool');
    seized.advance(1000);
    const ratio = amps(seized, 'W71') / running;
    expect(ratio).toBeGreaterThan(4);
    expect(ratio).toBeLessThan(8);
  });

  test('a compressor on locked rotor goes off on its own overload in seconds, and comes back by itself later', () => {
    const operating = heatPump('CMP:seized');
    operating.set('plant.roomDegF', 80);
    operating.set('TS.mode', 'cool');
    operating.advance(1000);
    expect(is(operating, 'CMP')).toContain('humming');
    operating.advance(60_000);
    expect(amps(operating, 'W71')).toBeLessThan(0.1);
    let back = false;
    for (let minutes = 0; minutes < 60 && !back; minutes += 1) {
      operating.advance(60_000);
      back = operating.isClosed('CMP.overload');
    }
    expect(back).toBe(true);
  });

  test('a permanent-split-capacitor motor does not start without its capacitor: it hums', () => {
    expect(is(cooling(heatPump('C2:fan-open')), 'M2')).toContain('humming');
    expect(is(cooling(heatPump('C1:section-open')), 'M1')).toContain('humming');
  });

  test('on a fifth less than its lowest volts a compressor does not start: it hums at locked rotor and trips', () => {
    const unit = readShippedUnit('split-heat-pump');
    const parts = unit.parts.map((part) => ({
      ...part,
      elements: part.elements.map((element) =>
        element.is === 'acSource' ? {...element, volts: element.volts * 0.72} : element,
      ),
    }));
    const operating = operateUnit({...unit, parts}, []);
    // the 24 V side is as low, so the contactor is pushed in by hand: its pole bridged
    operating.jumper('K3.L1', 'K3.T1');
    operating.jumper('K3.L2', 'K3.T2');
    expect(is(operating, 'CMP')).toContain('humming');
    const seconds = secondsUntil(operating, () => !operating.isClosed('CMP.overload'), 120);
    expect(seconds).toBeGreaterThan(2);
  });

  test('the volts on a run capacitor of a turning motor are higher than the line’s', () => {
    const operating = cooling(heatPump());
    expect(volts(operating, 'C2.HERM', 'C2.C')).toBeGreaterThan(
      volts(operating, 'K3.T1', 'K3.T2') * 1.2,
    );
  });

  test('with the outdoor fan dead in cooling, the high-pressure switch opens within minutes', () => {
    const operating = cooling(heatPump('M2:seized'));
    let opened = false;
    for (let seconds = 0; seconds < 600 && !opened; seconds += 5) {
      operating.advance(5000);
      opened = !operating.isClosed('HPS.contact');
    }
    expect(opened).toBe(true);
  });
});

describe('common practice, no source: control', () => {
  test('after the call the blower runs on a while', () => {
    const operating = cooling(heatPump());
    operating.set('TS.mode', 'off');
    operating.advance(10_000);
    expect(is(operating, 'M1')).toContain('running');
    expect(is(operating, 'CMP')).not.toContain('running');
    operating.advance(120_000);
    expect(is(operating, 'M1')).not.toContain('running');
  });

  test('a call that comes back too soon waits for the anti-short-cycle timer', () => {
    const operating = cooling(heatPump());
    operating.set('TS.mode', 'off');
    operating.advance(30_000);
    operating.set('TS.mode', 'cool');
    operating.advance(60_000);
    expect(volts(operating, 'TD1.IN', 'TB2.C')).toBeGreaterThan(22);
    expect(volts(operating, 'TD1.OUT', 'TB2.C')).toBeLessThan(1);
    operating.advance(5 * 60_000);
    expect(is(operating, 'CMP')).toContain('running');
  });

  test('a 24 V wire on the metal blows the control fuse, not the breaker', () => {
    const operating = cooling(heatPump('W57:earth'));
    expect(operating.isClosed('F1.link')).toBe(false);
    expect(operating.valueOf('CB1.position')).toBe('on');
  });

  test('a dead-shorted contactor coil blows the control fuse', () => {
    const operating = cooling(heatPump('K3:coil-shorted'));
    expect(operating.isClosed('F1.link')).toBe(false);
  });

  test('without common a thermostat goes blank', () => {
    expect(is(heatPump('W43:open'), 'TS')).toContain('blank');
  });

  test('with the reversing valve dead a heat pump heats when it should cool', () => {
    const operating = cooling(heatPump('RVS:coil-open'));
    operating.advance(5 * 60_000);
    expect(operating.plantValues().supplyAirDegF).toBeGreaterThan(80);
  });
});

describe('common practice, no source: how a heat pump shows its faults', () => {
  test('across an open pole with its load connected stands the full line', () => {
    const operating = cooling(heatPump('K3:pole1-open'));
    expect(volts(operating, 'K3.L1', 'K3.T1')).toBeGreaterThan(200);
    expect(is(operating, 'CMP')).not.toContain('running');
  });

  test('welded contacts run the compressor with no volts on the coil', () => {
    const operating = set(heatPump('K3:poles-welded'), {'TS.mode': 'off'}, 30);
    expect(volts(operating, 'K3.A1', 'K3.A2')).toBeLessThan(5);
    expect(is(operating, 'CMP')).toContain('running');
  });

  test('24 V on a contactor that does not pull in: the coil or the armature, not the safeties', () => {
    for (const fault of ['K3:coil-open', 'K3:armature-jammed']) {
      const operating = cooling(heatPump(fault));
      expect(volts(operating, 'K3.A1', 'K3.A2')).toBeGreaterThan(20);
      expect(is(operating, 'CMP')).not.toContain('running');
    }
  });

  test('a jammed armature draws inrush amps for good and hums', () => {
    const held = amps(cooling(heatPump()), 'W59');
    const jammed = cooling(heatPump('K3:armature-jammed'));
    expect(amps(jammed, 'W59')).toBeGreaterThan(held * 2.5);
    expect(is(jammed, 'K3')).toContain('humming');
  });

  test('a good primary with 240 V on it and no volts from the secondary: an open transformer', () => {
    const operating = heatPump('T1:secondary-open');
    expect(volts(operating, 'T1.H1', 'T1.240')).toBeGreaterThan(225);
    expect(volts(operating, 'T1.X1', 'T1.X2')).toBeLessThan(1);
  });

  test('a blown control fuse holds the 24 V across itself', () => {
    const operating = heatPump('F1:open');
    expect(volts(operating, 'F1.1', 'F1.2')).toBeGreaterThan(22);
    expect(volts(operating, 'F1.2', 'TB1.C')).toBeLessThan(5);
  });

  test('a jumper from R to G at the strip runs the blower without the thermostat', () => {
    const operating = set(heatPump('TS:G-dead'), {'TS.mode': 'off', 'TS.fan': 'on'}, 30);
    expect(is(operating, 'M1')).not.toContain('running');
    operating.jumper('TB1.R', 'TB1.G');
    operating.advance(30_000);
    expect(is(operating, 'M1')).toContain('running');
  });

  test('a lost charge opens the low-pressure switch and stops the compressor', () => {
    const operating = cooling(heatPump('plant:charge-lost'));
    operating.advance(10 * 60_000);
    expect(operating.isClosed('LPS.contact')).toBe(false);
    expect(is(operating, 'CMP')).not.toContain('running');
  });

  test('a blocked outdoor coil drives the head pressure up until the high-pressure switch opens', () => {
    const operating = cooling(heatPump('plant:outdoor-coil-blocked'));
    expect(
      secondsUntil(operating, () => !operating.isClosed('HPS.contact'), 1800, 5),
    ).toBeDefined();
  });

  test('a full drain pan stops the cooling call and leaves the thermostat lit', () => {
    const operating = cooling(heatPump('plant:pan-full'));
    expect(is(operating, 'TS')).toContain('display');
    expect(is(operating, 'CMP')).not.toContain('running');
  });

  test('in defrost the outdoor fan stops, the compressor runs on and the electric heat tempers the air', () => {
    const operating = heatPump();
    set(operating, {'plant.outdoorDegF': 30, 'plant.roomDegF': 66, 'TS.mode': 'heat'}, 300);
    const defrost = secondsUntil(
      operating,
      () => is(operating, 'CMP').includes('running') && !is(operating, 'M2').includes('running'),
      3 * 3600,
      10,
    );
    expect(defrost).toBeDefined();
    operating.advance(5000);
    expect(is(operating, 'CMP')).toContain('running');
    expect(amps(operating, 'W27')).toBeGreaterThan(15);
  });

  test('a weak run capacitor leaves a fan turning with more amps; 2652·A/V tells how weak', () => {
    const microfarads = (operating: OperatingUnit): number =>
      (2652.6 * amps(operating, 'W78')) / volts(operating, 'C2.FAN', 'C2.C');
    const good = cooling(heatPump());
    const weak = cooling(heatPump('C2:fan-weak'));
    expect(is(weak, 'M2')).toContain('running');
    expect(amps(weak, 'W76')).toBeGreaterThan(amps(good, 'W76') * 1.1);
    expect(microfarads(good)).toBeGreaterThan(4.7);
    expect(microfarads(weak)).toBeLessThan(3);
  });

  test('a compressor with a weak capacitor hums against its pressure and goes off on its overload', () => {
    const operating = heatPump('C2:herm-weak');
    set(operating, {'plant.outdoorDegF': 92, 'plant.roomDegF': 80, 'TS.mode': 'cool'}, 1);
    expect(is(operating, 'CMP')).toContain('humming');
    expect(secondsUntil(operating, () => !operating.isClosed('CMP.overload'), 120)).toBeDefined();
  });

  test('a pitted contactor warms under load: its volts times its amps are watts', () => {
    const loaded = cooling(heatPump('K3:pole1-pitted'));
    const watts = volts(loaded, 'K3.L1', 'K3.T1') * amps(loaded, 'W71');
    expect(watts).toBeGreaterThan(30);
  });
});
