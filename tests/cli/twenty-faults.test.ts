import {describe, expect, test} from 'vitest';
import {heatPump, states} from './run-cli.ts';

// The faults that an apprentice is asked about, each with what the trade expects the meter to show.
// Where no source stands beside one, it is common practice, no source.

/** A control circuit of a 40 VA transformer, loaded: 24 V nominal reads 22 to 27. */
const controlVolts = (volts: number): void => {
  expect(volts).toBeGreaterThan(22);
  expect(volts).toBeLessThan(27.5);
};
/** 240 V nominal at the unit. */
const lineVolts = (volts: number): void => {
  expect(volts).toBeGreaterThan(228);
  expect(volts).toBeLessThan(246);
};
const nothing = (volts: number): void => expect(volts).toBeLessThan(1);

describe('24 V side, cooling called for', () => {
  // Kirchhoff: all of the source stands across the one open switch (Lessons in Electric Circuits, DC ch. 6)
  test('1. open high-pressure switch: 24 V across it, nothing across the closed ones, nothing at the coil', async () => {
    const {volts} = heatPump('HPS:stuck-open', ...states.cooling);
    controlVolts(await volts('HPS.1', 'HPS.2'));
    nothing(await volts('LPS.1', 'LPS.2'));
    nothing(await volts('FS1.1', 'FS1.2'));
    nothing(await volts('K3.A1', 'K3.A2'));
  });

  test('2. charge lost: the low-pressure switch opens and has 24 V across it', async () => {
    const {volts} = heatPump('plant:charge-lost', ...states.cooling);
    controlVolts(await volts('LPS.1', 'LPS.2'));
    nothing(await volts('HPS.1', 'HPS.2'));
  });

  test('3. pan full: the float switch has 24 V across it, and the blower goes on', async () => {
    const {volts} = heatPump('plant:pan-full', ...states.cooling);
    controlVolts(await volts('FS1.1', 'FS1.2'));
    nothing(await volts('K3.A1', 'K3.A2'));
    lineVolts(await volts('M1.HI', 'M1.COM'));
  });

  test('4. blown control fuse: the transformer makes 24 V, and none of it reaches R', async () => {
    const {volts} = heatPump('F1:open', ...states.cooling);
    controlVolts(await volts('T1.X1', 'T1.X2'));
    controlVolts(await volts('F1.1', 'F1.2'));
    nothing(await volts('TB1.R', 'TB1.C'));
  });

  test('5. open transformer primary: line voltage in, nothing out', async () => {
    const {volts} = heatPump('T1:primary-open');
    lineVolts(await volts('T1.H1', 'T1.240'));
    nothing(await volts('T1.X1', 'T1.X2'));
  });

  test('6. open common of the contactor: both coil terminals read 24 V to C, and nothing across the coil', async () => {
    const {volts} = heatPump('W59:open', ...states.cooling);
    controlVolts(await volts('K3.A1', 'TB2.C'));
    controlVolts(await volts('K3.A2', 'TB2.C'));
    nothing(await volts('K3.A1', 'K3.A2'));
  });

  test('7. open contactor coil: 24 V across it and it does not pull in; isolated and lifted it reads OL', async () => {
    const called = heatPump('K3:coil-open', ...states.cooling);
    controlVolts(await called.volts('K3.A1', 'K3.A2'));
    lineVolts(await called.volts('K3.L1', 'K3.L2'));
    nothing(await called.volts('K3.T1', 'K3.T2'));
    const dead = heatPump('K3:coil-open', ...states.isolated, 'lift=W59.from');
    expect((await dead.ohms('K3.A1', 'K3.A2')).overload).toBe(true);
  });

  test('8. a healthy coil in circuit: lifting a wire takes the parallel paths away', async () => {
    const inCircuit = await heatPump(undefined, ...states.isolated).ohms('K3.A1', 'K3.A2');
    const lifted = await heatPump(undefined, ...states.isolated, 'lift=W59.from').ohms(
      'K3.A1',
      'K3.A2',
    );
    expect(lifted.value).toBeCloseTo(10.5, 0);
    expect(inCircuit.value!).toBeLessThanOrEqual(lifted.value!);
  });

  test('9. thermostat does not pass Y: 24 V from R to Y at the thermostat', async () => {
    const {volts} = heatPump('TS:Y-dead', ...states.cooling);
    controlVolts(await volts('TS.R', 'TS.Y'));
    nothing(await volts('TS.Y', 'TS.C'));
  });

  test('10. Y conductor open in the thermostat cable: 24 V at the thermostat, none at the strip', async () => {
    const {volts} = heatPump('W44:open', ...states.cooling);
    controlVolts(await volts('TS.Y', 'TS.C'));
    nothing(await volts('TB1.Y', 'TB1.C'));
  });

  test('11. 24 V wire on the metal: the fuse is blown, and the wire reads a short to the cabinet', async () => {
    const called = heatPump('W57:earth', ...states.cooling);
    nothing(await called.volts('TB1.R', 'TB1.C'));
    controlVolts(await called.volts('T1.X1', 'T1.X2'));
    const dead = heatPump(
      'W57:earth',
      ...states.cooling,
      'TS.mode=off',
      ...states.isolated,
      'lift=W57.to',
      'lift=W57.from',
    );
    expect((await dead.ohms('W57.from', 'GND5.E')).value).toBeLessThan(1);
  });

  test('12. burnt joint in the R lead: 24 V with no load, and it sags when the call comes', async () => {
    const rest = await heatPump('W33:high-resistance').volts('TB1.R', 'TB1.C');
    const drop = heatPump('W33:high-resistance', ...states.cooling);
    expect(rest).toBeGreaterThan(16);
    expect(await drop.volts('F1.2', 'TB1.R')).toBeGreaterThan(5);
    expect(await heatPump(undefined, ...states.cooling).volts('F1.2', 'TB1.R')).toBeLessThan(0.1);
  });

  test('13. open reversing-valve coil: 24 V across it in cooling, and no current', async () => {
    const {volts, amps} = heatPump('RVS:coil-open', ...states.cooling);
    controlVolts(await volts('RVS.1', 'RVS.2'));
    expect(await amps('W65')).toBeLessThan(0.02);
    expect(await heatPump(undefined, ...states.cooling).amps('W65')).toBeGreaterThan(0.15);
  });
});

describe('line-voltage side', () => {
  test('14. welded contactor: no call, nothing at the coil, 240 V on the load side', async () => {
    const {volts, amps} = heatPump('K3:poles-welded');
    nothing(await volts('K3.A1', 'K3.A2'));
    lineVolts(await volts('K3.T1', 'K3.T2'));
    expect(await amps('W71')).toBeGreaterThan(8);
  });

  test('15. pitted pole: volts dropped across it under load, none across the good one, none without load', async () => {
    const {volts} = heatPump('K3:pole1-pitted', ...states.cooling);
    expect(await volts('K3.L1', 'K3.T1')).toBeGreaterThan(5);
    expect(await volts('K3.L2', 'K3.T2')).toBeLessThan(0.2);
    expect(await heatPump(undefined, ...states.cooling).volts('K3.L1', 'K3.T1')).toBeLessThan(0.2);
  });

  test('16. one pole burnt open: 240 V in, 240 V across the open pole, both sides of the load at one leg', async () => {
    const {volts} = heatPump('K3:pole1-open', ...states.cooling);
    lineVolts(await volts('K3.L1', 'K3.L2'));
    lineVolts(await volts('K3.L1', 'K3.T1'));
    nothing(await volts('K3.T1', 'K3.T2'));
    // dead between the load terminals, and 120 V from each of them to the metal
    expect(await volts('K3.T1', 'GND5.E')).toBeGreaterThan(110);
  });

  test('17. weak run capacitor: the current through it gives far less than the nameplate’s microfarads', async () => {
    // C = 2652.6·A/V at 60 Hz: X_C = 1/(2πfC), OpenStax College Physics 2e §23.11
    const microfarads = async (fault?: string): Promise<number> => {
      const {volts, amps} = heatPump(fault, ...states.cooling);
      return (2652.6 * (await amps('W73'))) / (await volts('C2.HERM', 'C2.C'));
    };
    expect(await microfarads()).toBeGreaterThan(45 * 0.94);
    expect(await microfarads()).toBeLessThan(45 * 1.06);
    expect(await microfarads('C2:herm-weak')).toBeLessThan(30);
  });

  test('18. open fan capacitor: the motor has its 240 V, hums, and draws more than when it turns', async () => {
    const {volts, amps} = heatPump('C2:fan-open', ...states.cooling);
    lineVolts(await volts('M2.BLK', 'M2.PUR'));
    const running = await heatPump(undefined, ...states.cooling).amps('W76');
    expect(running).toBeGreaterThan(1);
    expect(running).toBeLessThan(2);
    expect(await amps('W76')).toBeGreaterThan(1.4 * running);
  });

  test('19. open heater element: full volts across it, no amps', async () => {
    const {volts, amps} = heatPump('EH1:open', ...states.auxiliary);
    lineVolts(await volts('EH1.1', 'EH1.2'));
    expect(await amps('W27')).toBeLessThan(0.02);
    const healthy = await heatPump(undefined, ...states.auxiliary).amps('W27');
    // 5000 W at 240 V
    expect(healthy).toBeGreaterThan(19.5);
    expect(healthy).toBeLessThan(21);
  });

  test('20. open fusible link: full volts across the link, none across the element', async () => {
    const {volts} = heatPump('FL1:open', ...states.auxiliary);
    lineVolts(await volts('FL1.1', 'FL1.2'));
    nothing(await volts('EH1.1', 'EH1.2'));
  });

  // An open internal overload breaks both readings to common and leaves the one between the windings
  // (a trade tech tip on single-phase compressors, read)
  test('21. open internal overload: C–R and C–S read open, R–S does not', async () => {
    const {ohms} = heatPump(
      'CMP:overload-open',
      ...states.isolated,
      'lift=W71.to',
      'lift=W72.to',
      'lift=W73.to',
    );
    expect((await ohms('CMP.C', 'CMP.R')).overload).toBe(true);
    expect((await ohms('CMP.C', 'CMP.S')).overload).toBe(true);
    expect((await ohms('CMP.R', 'CMP.S')).value).toBeLessThan(10);
  });

  test('22. grounded compressor: the breaker trips, and a winding reads next to nothing to the shell', async () => {
    const called = heatPump('CMP:grounded', ...states.cooling);
    nothing(await called.volts('DS2.L1', 'DS2.L2'));
    const dead = heatPump(
      'CMP:grounded',
      ...states.isolated,
      'lift=W71.to',
      'lift=W72.to',
      'lift=W73.to',
    );
    expect((await dead.ohms('CMP.R', 'GND5.E')).value).toBeLessThan(5);
    const healthy = heatPump(
      undefined,
      ...states.isolated,
      'lift=W71.to',
      'lift=W72.to',
      'lift=W73.to',
    );
    expect((await healthy.ohms('CMP.R', 'GND5.E')).value ?? Infinity).toBeGreaterThan(1e6);
  });

  test('23. one pole of the disconnect open: 240 V in, none out, 240 V across the open pole', async () => {
    const {volts} = heatPump('DS2:pole1-open', ...states.cooling);
    lineVolts(await volts('DS2.L1', 'DS2.L2'));
    nothing(await volts('DS2.T1', 'DS2.T2'));
    lineVolts(await volts('DS2.L1', 'DS2.T1'));
  });

  test('24. outdoor fan relay of the board open: 240 V across F1–F2 and none at the fan', async () => {
    const {volts} = heatPump('DB1:fan-open', ...states.cooling);
    lineVolts(await volts('DB1.F1', 'DB1.F2'));
    nothing(await volts('M2.BLK', 'M2.PUR'));
  });

  // divider of 5 V through 10 kΩ (an equipment manual's table of resistance and volts, read)
  test('25. open coil sensor: 5 V across its terminals; shorted: none; healthy: in between', async () => {
    expect(await heatPump('RT1:open').directVolts('DB1.S1', 'DB1.S2')).toBeGreaterThan(4.9);
    expect(await heatPump('RT1:shorted').directVolts('DB1.S1', 'DB1.S2')).toBeLessThan(0.1);
    const healthy = await heatPump(undefined).directVolts('DB1.S1', 'DB1.S2');
    expect(healthy).toBeGreaterThan(1);
    expect(healthy).toBeLessThan(4);
  });
});

test('resistance on a live circuit is no reading but a warning', async () => {
  const reading = await heatPump(undefined, ...states.cooling).ohms('K3.A1', 'K3.A2');
  expect(reading).toMatchObject({display: 'OL', value: null, hazard: true});
});
