import {describe, expect, test} from 'vitest';
import {loadTorque, motorOhms, motorTorque} from '../../src/circuits/motor-impedance.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import {motorAmpsBehind, windingSource} from '../../src/circuits/winding-source.ts';
import type {Network} from '../../src/circuits/network.ts';
import type {Complex, Element, Motor, MotorModel} from '../../src/parts/element.ts';

const magnitude = (p: Complex) => Math.hypot(p.re, p.im);

/** A three-ton compressor: 45 µF, 240 V. */
const model: MotorModel = {
  ratedVolts: 230,
  poles: 2,
  mainOhms: 0.8,
  mainReactanceOhms: 0.69,
  startOhms: 2,
  startReactanceOhms: 1.37,
  turnsRatio: 1.33,
  rotorOhms: 1.32,
  rotorReactanceOhms: 1.1,
  magnetisingOhms: 28.9,
  loadNewtonMetres: 7.94,
  loadExponent: 1,
  breakawayNewtonMetres: 1.6,
};
const motor: Motor = {
  is: 'motor',
  id: 'M1.motor',
  main: {a: 'M1.R', b: 'M1.C'},
  start: {a: 'M1.S', b: 'M1.C'},
  model,
};

/** The compressor on its line: run lead on L1, start lead through the capacitor, common on L2. */
function compressorOn(volts: number, microfarads: number, altered: Partial<Motor> = {}): Network {
  const nodes = ['earth', 'M1.R', 'M1.S', 'M1.C'];
  const elements: Element[] = [
    {
      is: 'acSource',
      id: 'line',
      a: 'M1.R',
      b: 'M1.C',
      volts,
      degrees: 0,
      ohms: {re: 0.02, im: 0.01},
    },
    {is: 'capacitor', id: 'C1.herm', a: 'M1.R', b: 'M1.S', microfarads, leakageOhms: 5e8},
    {...motor, ...altered},
    ...nodes.slice(1).map((node): Element => ({
      is: 'conductor',
      id: `insulation:${node}`,
      a: node,
      b: 'earth',
      ohms: 1e8,
    })),
  ];
  return {frequencyHz: 60, nodes, elements};
}

function at(speed: number, volts = 240, microfarads = 45) {
  const solution = solveAc(compileNetwork(compressorOn(volts, microfarads)), {'M1.motor': {speed}});
  const {main, start} = solution.windingAmps('M1.motor');
  return {
    solution,
    main,
    start,
    torque: motorTorque(motor, main, start, speed),
    lineAmps: magnitude(solution.amps('line')),
    capacitorVolts: magnitude(solution.voltsBetween('M1.R', 'M1.S')),
  };
}

describe('at standstill', () => {
  test('forward and backward fields are equal, so the windings are two plain impedances', () => {
    const {forward, backward, coupling} = motorOhms(model, 0);
    expect(forward).toEqual(backward);
    expect(coupling).toEqual({re: 0, im: 0});
  });

  test('torque goes with |Im||Is| sin φ', () => {
    const {main, start, torque} = at(0);
    const lead = Math.atan2(start.im, start.re) - Math.atan2(main.im, main.re);
    const {forward} = motorOhms(model, 0);
    const expected =
      (4 * model.turnsRatio * forward.re * magnitude(main) * magnitude(start) * Math.sin(lead)) /
      (2 * Math.PI * 60);
    expect(torque).toBeCloseTo(expected, 9);
  });

  test('with the capacitor it breaks away forwards, without it there is no torque at all', () => {
    expect(at(0).torque).toBeGreaterThan(loadTorque(model, 0));
    expect(Math.abs(at(0, 240, 1e-6).torque)).toBeLessThan(1e-4);
  });

  test('half a capacitor and a sagging supply leave too little torque to break away', () => {
    expect(at(0, 240, 45 * 0.55).torque).toBeLessThan(loadTorque(model, 0));
    expect(at(0, 170).torque).toBeLessThan(loadTorque(model, 0));
  });

  test('it draws locked-rotor amps, several times the running amps', () => {
    expect(at(0).lineAmps / at(0.96).lineAmps).toBeGreaterThan(5);
  });

  test('the start lead in the place of the run lead turns it backwards', () => {
    const swapped = compressorOn(240, 45, {main: motor.start, start: motor.main});
    const solution = solveAc(compileNetwork(swapped), {});
    const {main, start} = solution.windingAmps('M1.motor');
    expect(motorTorque(motor, main, start, 0)).toBeLessThan(0);
  });
});

describe('running', () => {
  test('capacitor amps and volts give its microfarads back: 2652·A/V', () => {
    const {start, capacitorVolts} = at(0.9627);
    expect((2652.58 * magnitude(start)) / capacitorVolts).toBeCloseTo(45, 2);
  });

  test('the capacitor stands at more than the line volts', () => {
    expect(at(0.9627).capacitorVolts).toBeGreaterThan(330);
    expect(at(0.9627).capacitorVolts).toBeLessThan(400);
  });

  test('a weak capacitor carries fewer start amps and leaves more to the main winding', () => {
    expect(magnitude(at(0.9627, 240, 25).start)).toBeLessThan(magnitude(at(0.9627).start) * 0.7);
    expect(magnitude(at(0.9627, 240, 25).main)).toBeGreaterThan(magnitude(at(0.9627).main));
  });

  test('power in is copper loss, rotor loss and shaft power', () => {
    // rotor loss is slip times the power across the gap: s of the forward, 2 − s of the backward field
    const speed = 0.9627;
    const {solution, main, start} = at(speed);
    const {forward, backward} = motorOhms(model, speed);
    const a = model.turnsRatio;
    const forwardWatts =
      forward.re * ((main.re + a * start.im) ** 2 + (main.im - a * start.re) ** 2);
    const backwardWatts =
      backward.re * ((main.re - a * start.im) ** 2 + (main.im + a * start.re) ** 2);
    const copper = model.mainOhms * magnitude(main) ** 2 + model.startOhms * magnitude(start) ** 2;
    const rotor = (1 - speed) * forwardWatts + (1 + speed) * backwardWatts;
    const shaft = motorTorque(motor, main, start, speed) * speed * 2 * Math.PI * 60;
    expect(solution.voltAmperes('M1.motor').re).toBeCloseTo(copper + rotor + shaft, 6);
  });

  test('without slip the forward field is magnetising reactance alone', () => {
    expect(motorOhms(model, 1).forward.re).toBeCloseTo(0, 12);
    expect(motorOhms(model, 1).forward.im).toBeCloseTo(model.magnetisingOhms / 2, 9);
  });
});

describe('the source behind the windings', () => {
  test.each([0, 0.4, 0.96])(
    'gives the same amps as solving the whole network (speed %d)',
    (speed) => {
      const plan = compileNetwork(compressorOn(240, 45));
      const solved = solveAc(plan, {'M1.motor': {speed}}).windingAmps('M1.motor');
      // the speed in the states must not matter: the motor itself is taken out
      const source = windingSource(plan, {'M1.motor': {speed: 0.2}}, 'M1.motor');
      const found = motorAmpsBehind(source, speed);
      for (const [index, amps] of [solved.main, solved.start].entries()) {
        expect(found[index].re).toBeCloseTo(amps.re, 6);
        expect(found[index].im).toBeCloseTo(amps.im, 6);
      }
    },
  );
});

describe('on an ohmmeter', () => {
  const solution = solveDc(
    compileNetwork({
      ...compressorOn(240, 45),
      elements: compressorOn(240, 45).elements.filter(({id}) => id !== 'line'),
    }),
    {'M1.motor': {speed: 0.96}},
  );

  test('common to run plus common to start is run to start', () => {
    const [cr, cs, rs] = [
      ['M1.C', 'M1.R'],
      ['M1.C', 'M1.S'],
      ['M1.R', 'M1.S'],
    ].map(([a, b]) => solution.thevenin(a, b).ohms.re);
    expect(cr).toBeCloseTo(0.8, 6);
    expect(cs).toBeCloseTo(2, 6);
    expect(rs).toBeCloseTo(cr + cs, 6);
  });

  test('a burnt start winding reads open to start, and the main still reads', () => {
    const burnt = solveDc(solution.plan, {'M1.start': {open: true}});
    expect(burnt.thevenin('M1.C', 'M1.S').ohms.re).toBeGreaterThan(1e7);
    expect(burnt.thevenin('M1.C', 'M1.R').ohms.re).toBeCloseTo(0.8, 6);
  });
});
