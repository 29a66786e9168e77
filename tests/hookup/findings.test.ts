import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {checkHookup, sameHookup} from '../../src/hookup/check-hookup.ts';
import {findingKinds} from '../../src/hookup/finding.ts';
import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const wire = (from: string, to: string, id = 'X1', gauge = 14): HookupWire => ({
  id,
  from,
  to,
  gauge,
  colour: 'grey',
});
const without = (task: HookupTask, ...ids: string[]) =>
  task.answer.filter(({id}) => !ids.includes(id));
const kindsOf = (task: HookupTask, wires: readonly HookupWire[]) =>
  checkHookup(task, wires).findings.map(({kind}) => kind);

const three = readShippedTask('three-safeties');
const lamp = readShippedTask('lamp-and-switch');
const floatY = readShippedTask('float-breaks-y');

describe('three safeties and a relay', () => {
  test('a wire across the high-pressure switch is found, with the volts, the combination and the reading', () => {
    const [finding, ...others] = checkHookup(three, [
      ...three.answer,
      wire('HPS.1', 'HPS.2'),
    ]).findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      kind: 'safety-bypassed',
      wires: ['X1'],
      closed: ['S1', 'FS1', 'LPS'],
      load: 'K1.coil',
      reading: {meter: 'ac-volts', red: 'HPS.1', black: 'HPS.2'},
    });
    expect(finding.volts).toBeGreaterThan(20);
    expect(finding.reading.shows).toBeLessThan(0.1);
  });

  test('a wire across the call is energising without a call', () => {
    expect(kindsOf(three, [...three.answer, wire('S1.1', 'S1.2')])).toEqual(['on-without-call']);
  });

  test('a wire from R to common blows the fuse, and an ohmmeter tells it with the power off', () => {
    const [finding] = checkHookup(three, [...three.answer, wire('TB2.R', 'TB2.C')]).findings;
    expect(finding).toMatchObject({kind: 'dead-short', wires: expect.arrayContaining(['X1'])});
    expect(finding.cause).toContain('fuse F1 opens');
    expect(finding.reading).toMatchObject({meter: 'ohms'});
    expect(finding.reading.shows).toBeLessThan(1);
  });

  test('a wire across the secondary burns the transformer, for no fuse lies in the path', () => {
    const [finding] = checkHookup(three, [...three.answer, wire('T1.X1', 'T1.X2')]).findings;
    expect(finding.kind).toBe('dead-short');
    expect(finding.cause).toContain('the transformer burns');
  });

  test('a fuse in the common leaves the whole circuit live when it opens', () => {
    const wires = [
      ...without(three, 'H1', 'H2', 'H9'),
      wire('T1.X1', 'TB2.R', 'X1'),
      wire('K1.3', 'F1.1', 'X2'),
      wire('F1.2', 'TB2.C', 'X3'),
    ];
    const [finding] = checkHookup(three, wires).findings;
    expect(finding.kind).toBe('unfused-path');
    expect(finding.cause).toContain('opens the common, not the line');
  });

  test('a relay in series with the lamp has too few volts to pull in', () => {
    const mend = readShippedTask('mend-series-loads');
    const report = checkHookup(mend, mend.begin);
    expect(report.findings[0].kind).toBe('loads-in-series');
    expect(report.findings[0].cause).toContain('too few to pull in');
  });

  test('a low-pressure switch in the common is found where it is', () => {
    const mend = readShippedTask('mend-common-side');
    expect(checkHookup(mend, mend.begin).findings[0]).toMatchObject({
      kind: 'common-side',
      reading: {red: 'K1.3', black: 'TB2.C'},
    });
  });

  test('a coil with both ends on R never works', () => {
    const wires = [...without(three, 'H9'), wire('K1.3', 'TB2.R')];
    const finding = checkHookup(three, wires).findings.find(({load}) => load === 'K1.coil');
    expect(finding).toMatchObject({kind: 'never-fed'});
    expect(finding?.cause).toContain('both its ends stand on TB2.R');
  });

  test('a second wire beside a first one is a remark, and the hookup stays right', () => {
    const report = checkHookup(three, [...three.answer, wire('S1.2', 'TB2.Y')]);
    expect(report.verdict).toBe('right');
    expect(report.findings.map(({kind}) => kind)).toEqual(['spare-wire']);
  });

  test('a wire to an empty terminal is a remark', () => {
    const report = checkHookup(floatY, [...floatY.answer, wire('K3.T1', 'K3.T2')]);
    expect(report).toMatchObject({verdict: 'right', findings: [{kind: 'dangling-wire'}]});
  });
});

describe('other tasks', () => {
  test('18 AWG in a 15 A lamp circuit is too small', () => {
    expect(
      kindsOf(
        lamp,
        lamp.answer.map((each) => ({...each, gauge: 18})),
      ),
    ).toContain('wire-too-small');
  });

  test('a board without its green wire is not bonded', () => {
    expect(kindsOf(lamp, without(lamp, 'H5'))).toEqual(['not-bonded']);
  });

  test('a lug on the neutral is not bonded either', () => {
    expect(kindsOf(lamp, [...without(lamp, 'H5'), wire('SUP.N', 'GND1.E')])).toContain(
      'not-bonded',
    );
  });

  test('a switch in the neutral leaves the lamp live', () => {
    const wires = [
      wire('SUP.L', 'CB1.L1', 'A'),
      wire('CB1.T1', 'LT1.1', 'B'),
      wire('LT1.2', 'S1.1', 'C'),
      wire('S1.2', 'SUP.N', 'D'),
      wire('SUP.G', 'GND1.E', 'E'),
    ];
    expect(kindsOf(lamp, wires)).toEqual(['common-side']);
  });

  test('a thermostat without its common stays blank and works nothing', () => {
    const report = checkHookup(
      floatY,
      floatY.answer.filter(({from}) => from !== 'TS.C'),
    );
    expect(report.loadStates['K2.coil']).not.toContain('1');
  });

  test('an isolation relay with both commons tied joins two transformers', () => {
    const task = readShippedTask('isolation-relay');
    const [finding] = checkHookup(task, [...task.answer, wire('TB2.C', 'TB3.C')]).findings;
    expect(finding).toMatchObject({kind: 'joined', wires: expect.arrayContaining(['X1'])});
  });

  test('a lock-out relay without its own contact lets the contactor back in after a trip', () => {
    const task = readShippedTask('lock-out-relay');
    const wires = [
      ...task.answer.filter(({to, from}) => to !== 'K2.4' && from !== 'K2.5'),
      wire('LPS.2', 'K3.A1'),
    ];
    const report = checkHookup(task, wires);
    expect(report.findings.map(({kind}) => kind)).toEqual(['sequence']);
    expect(report.findings[0].cause).toContain('at step 3');
  });

  test('capacitor sections crossed leave the compressor without torque to start', () => {
    const task = readShippedTask('dual-capacitor');
    const wires = task.answer.map((each) =>
      each.from === 'C2.HERM'
        ? {...each, from: 'C2.FAN'}
        : each.from === 'C2.FAN'
          ? {...each, from: 'C2.HERM'}
          : each,
    );
    const finding = checkHookup(task, wires).findings.find(({load}) => load === 'CMP.main');
    expect(finding?.cause).toContain('does not turn forward');
  });

  test('findings come most dangerous first', () => {
    const kinds = kindsOf(three, [
      ...without(three, 'H12'),
      wire('HPS.1', 'HPS.2', 'X1'),
      wire('T1.X1', 'TB2.R', 'X2'),
    ]);
    const ranks = kinds.map((kind) => findingKinds.indexOf(kind));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(kinds).size).toBeGreaterThan(2);
  });
});

describe('laws', () => {
  const ten = readShippedTask('ten-switches');
  const safeties = three.inputs.map(({id}) => id);

  /** The series string of the task in another order, some switches the other way round. */
  function inOrder(order: readonly string[], turned: readonly boolean[]): HookupWire[] {
    const [head, tail] = ['TB2.R', 'K1.1'];
    const ends = order.map((id, i) =>
      turned[i] ? [`${id}.2`, `${id}.1`] : [`${id}.1`, `${id}.2`],
    );
    const stops = [head, ...ends.flat(), tail];
    const chain: HookupWire[] = [];
    for (let i = 0; i < stops.length; i += 2) chain.push(wire(stops[i], stops[i + 1], `S${i}`, 18));
    return [...without(three, 'H3', 'H4', 'H5', 'H6', 'H7', 'H8'), ...chain];
  }

  test('the order of safeties in series never matters', () => {
    const right = checkHookup(three, three.answer);
    fc.assert(
      fc.property(
        fc.shuffledSubarray(safeties, {minLength: 4}),
        fc.array(fc.boolean(), {minLength: 4, maxLength: 4}),
        (order, turned) => {
          const report = checkHookup(three, inOrder(order, turned));
          expect(report.verdict).toBe('right');
          expect(sameHookup(report, right)).toBe(true);
        },
      ),
      {numRuns: 20},
    );
  });

  test('a bypass of one or more switches in the chain is always wrong', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(safeties, {minLength: 4}),
        fc.nat(3),
        fc.nat(3),
        (order, i, j) => {
          const [first, last] = [Math.min(i, j), Math.max(i, j)];
          const bypass = wire(`${order[first]}.1`, `${order[last]}.2`);
          const report = checkHookup(three, [
            ...inOrder(order, [false, false, false, false]),
            bypass,
          ]);
          expect(report.verdict).toBe('wrong');
          expect(report.findings.some(({wires}) => wires.includes('X1'))).toBe(true);
        },
      ),
      {numRuns: 20},
    );
  });

  test('switches that no rule names are covered too', () => {
    // the same ten switches with three more in the file that no rule names: 13 are too many to run one by one
    const extra = ['U1', 'U2', 'U3'];
    const many: HookupTask = {
      ...ten,
      parts: [
        ...ten.parts,
        ...extra.map((id) => ({
          ...ten.parts.find((part) => part.id === 'S2')!,
          id,
          elements: ten.parts
            .find((part) => part.id === 'S2')!
            .elements.map(
              (element) =>
                JSON.parse(JSON.stringify(element).replaceAll('S2.', `${id}.`)) as typeof element,
            ),
        })),
      ],
      inputs: [
        ...ten.inputs,
        ...extra.map((id) => ({id, title: id, is: 'switch' as const, contact: `${id}.contact`})),
      ],
    };
    const right = checkHookup(many, many.answer);
    expect(right.verdict).toBe('right');
    // ten in a chain: eleven places at which it may be open first, or none; the other three never matter
    expect(right.combinations).toBe(11);
    expect(right.method).toContain('13 switches have 8192 combinations');
    for (const id of ten.inputs.map((input) => input.id)) {
      const wires = [...ten.answer, wire(`${id}.1`, `${id}.2`)];
      expect(checkHookup(many, wires).verdict, id).toBe('wrong');
    }
  });
});
