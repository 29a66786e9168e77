import {describe, expect, test} from 'vitest';
import {
  buildNetwork,
  insulationOhms,
  jointOhms,
  unaltered,
  type Alterations,
} from '../../src/circuits/build-network.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import {UnknownNameError} from '../../src/circuits/unknown-name.ts';
import {wireOhms} from '../../src/circuits/wire-resistance.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import type {Unit, Wire} from '../../src/content/unit.ts';
import type {Complex, ElementStates} from '../../src/parts/element.ts';
import type {ElementChange} from '../../src/parts/part-kind.ts';

const magnitude = (p: Complex) => Math.hypot(p.re, p.im);
const panel = readShippedUnit('practice-panel');
const heatPump = readShippedUnit('split-heat-pump');

/** The panel with its call made and the relay sealed. */
const called: ElementStates = {
  'CB1.pole1': {closed: true},
  'DS1.pole1': {closed: true},
  'S1.contact': {closed: true},
  'K1.coil': {sealed: true},
  'K1.lamp': {closed: true},
};

function solved(altered: Partial<Alterations> = {}, states = called, unit = panel) {
  return solveAc(compileNetwork(buildNetwork(unit, {...unaltered, ...altered})), states);
}

const changed = (...changes: ElementChange[]) => ({changes});
const between = (s: ReturnType<typeof solved>, a: string, b: string) =>
  magnitude(s.voltsBetween(a, b));

describe('the unit as drawn', () => {
  test('every terminal is a node, and every node but earth has 100 MΩ to earth', () => {
    const {nodes, elements} = buildNetwork(heatPump, unaltered);
    for (const part of heatPump.parts)
      for (const terminal of part.terminals) expect(nodes).toContain(`${part.id}.${terminal}`);
    const insulated = elements.filter(({id}) => id.startsWith('insulation:'));
    expect(insulated).toHaveLength(nodes.length - 1);
    expect(new Set(insulated.map((element) => element.is === 'conductor' && element.ohms))).toEqual(
      new Set([insulationOhms]),
    );
  });

  test('a wire is a conductor of its gauge and length with a joint at each end', () => {
    const wire = panel.wires.find(({id}) => id === 'W4')!;
    const element = buildNetwork(panel, unaltered).elements.find(({id}) => id === 'W4');
    expect(element).toEqual({
      is: 'conductor',
      id: 'W4',
      a: wire.from,
      b: wire.to,
      ohms: wireOhms(14, 8) + 2 * jointOhms,
    });
  });

  test('a call puts about 24 V on the relay coil and 120 V on the lamp', () => {
    const s = solved();
    expect(between(s, 'K1.1', 'K1.3')).toBeGreaterThan(22);
    expect(between(s, 'LT1.1', 'LT1.2')).toBeGreaterThan(118);
    expect(magnitude(s.amps('W10'))).toBeCloseTo(25 / 120, 2);
  });

  test('a contact drawn closed is closed without anything acting on it', () => {
    expect(between(solved(), 'HPS.1', 'HPS.2')).toBeLessThan(0.1);
    expect(
      between(solved({}, {...called, 'HPS.contact': {closed: false}}), 'HPS.1', 'HPS.2'),
    ).toBeGreaterThan(20);
  });
});

describe('wire ends', () => {
  test('a lifted end is a point of its own that still has its volts, and the terminal has lost them', () => {
    // W18 goes from the high-pressure to the low-pressure switch
    const s = solved({lifted: ['W18.to']});
    expect(between(s, 'W18.to', 'TB2.C')).toBeGreaterThan(22);
    expect(between(s, 'LPS.1', 'TB2.C')).toBeLessThan(3);
    expect(magnitude(s.amps('W18'))).toBeLessThan(1e-4);
  });

  test('a jumper across an open switch carries the current', () => {
    const open = {...called, 'FS1.contact': {closed: false}};
    expect(between(solved({}, open), 'K1.1', 'K1.3')).toBeLessThan(3);
    const s = solved({jumpers: [['FS1.1', 'FS1.2']]}, open);
    expect(between(s, 'K1.1', 'K1.3')).toBeGreaterThan(22);
    expect(magnitude(s.amps('jumper:FS1.1~FS1.2'))).toBeGreaterThan(0.1);
  });

  test('a jumper can be laid to a lifted end', () => {
    const s = solved({lifted: ['W18.to'], jumpers: [['W18.to', 'LPS.1']]});
    expect(between(s, 'K1.1', 'K1.3')).toBeGreaterThan(22);
  });
});

describe('fault changes', () => {
  test('an open wire leaves its far end floating', () => {
    const s = solved(changed({element: 'W18', open: true}));
    expect(between(s, 'K1.1', 'K1.3')).toBeLessThan(3);
    expect(magnitude(s.amps('W18'))).toBeLessThan(1e-9);
  });

  test('a burnt joint drops volts under load and none without', () => {
    const joint = changed({element: 'W10', seriesOhms: 40});
    expect(between(solved(joint), 'K1.4', 'LT1.1')).toBeGreaterThan(5);
    expect(
      between(solved(joint, {...called, 'K1.lamp': {closed: false}}), 'K1.4', 'LT1.1'),
    ).toBeLessThan(0.01);
  });

  test('a welded contact stays closed whatever its mechanism does', () => {
    const off = {...called, 'K1.lamp': {closed: false}};
    expect(between(solved({}, off), 'LT1.1', 'LT1.2')).toBeLessThan(5);
    const welded = changed({element: 'K1.lamp', held: 'closed'});
    expect(between(solved(welded, off), 'LT1.1', 'LT1.2')).toBeGreaterThan(118);
  });

  test('a contact that never closes stays open', () => {
    expect(
      between(solved(changed({element: 'K1.lamp', held: 'open'})), 'LT1.1', 'LT1.2'),
    ).toBeLessThan(5);
  });

  test('an open coil keeps its volts and draws nothing', () => {
    const s = solved(changed({element: 'K1.coil', open: true}));
    expect(between(s, 'K1.1', 'K1.3')).toBeGreaterThan(22);
    expect(magnitude(s.amps('K1.coil'))).toBeLessThan(1e-9);
  });

  test('shorted turns beside a coil drag the secondary down', () => {
    const s = solved(changed({element: 'K1.coil', besideOhms: 0.5}));
    expect(magnitude(s.amps('K1.coil:beside'))).toBeGreaterThan(5);
    expect(between(s, 'TB2.R', 'TB2.C')).toBeLessThan(20);
  });

  test('a transformer with its primary open makes nothing', () => {
    expect(
      between(solved(changed({element: 'T1.primary', open: true})), 'T1.X1', 'T1.X2'),
    ).toBeLessThan(0.1);
  });

  test('a weak capacitor has its microfarads scaled', () => {
    const herm = heatPump.parts
      .flatMap((part) => part.elements)
      .find((element) => element.is === 'capacitor')!;
    const element = buildNetwork(heatPump, {
      ...unaltered,
      ...changed({element: herm.id, scale: 0.55}),
    }).elements.find(({id}) => id === herm.id);
    if (herm.is !== 'capacitor' || element?.is !== 'capacitor') throw new Error('no capacitor');
    expect(element.microfarads).toBeCloseTo(herm.microfarads * 0.55, 9);
  });

  test('an open start winding reads open on an ohmmeter, and the run winding still reads', () => {
    const compressor = heatPump.parts
      .flatMap((part) => part.elements)
      .find((element) => element.is === 'motor' && element.id.startsWith('CMP.'))!;
    if (compressor.is !== 'motor') throw new Error('no compressor');
    const {main, start, model} = compressor;
    const s = solveDc(
      compileNetwork(
        buildNetwork(heatPump, {
          ...unaltered,
          ...changed({element: 'CMP.start', open: true}, {element: 'CMP.main', seriesOhms: 0.3}),
        }),
      ),
      {},
    );
    expect(s.thevenin(start.a, start.b).ohms.re).toBeGreaterThan(1e5);
    // the outdoor fan's winding lies beside it in the circuit, so a little less than the 0.3 Ω more
    const read = s.thevenin(main.a, main.b).ohms.re;
    expect(read).toBeGreaterThan(model.mainOhms + 0.2);
    expect(read).toBeLessThan(model.mainOhms + 0.3);
  });

  test('two faults on one element act together', () => {
    const s = solved(changed({element: 'W10', seriesOhms: 20}, {element: 'W10', seriesOhms: 20}));
    const once = solved(changed({element: 'W10', seriesOhms: 40}));
    expect(between(s, 'LT1.1', 'LT1.2')).toBeCloseTo(between(once, 'LT1.1', 'LT1.2'), 9);
  });

  test('a path of a fault is a conductor: a 24 V wire on the metal', () => {
    const s = solved({paths: [{id: 'W16:earth', a: 'FS1.1', b: 'GND2.E', ohms: 0.1}]});
    expect(magnitude(s.amps('W16:earth'))).toBeGreaterThan(10);
  });

  test('a change that has no meaning says so', () => {
    expect(() => solved(changed({element: 'K1.coil', held: 'closed'}))).toThrow(
      '"K1.coil" is no contact',
    );
    expect(() => solved(changed({element: 'T1.core', open: true}))).toThrow('T1.primary');
  });
});

describe('wrong names are met with the nearest right one', () => {
  test.each([
    ['wire end', {lifted: ['W18.too']}, 'W18.to'],
    ['terminal', {jumpers: [['FS1.1', 'FS1.3']] as [string, string][]}, 'FS1.1'],
    ['element', changed({element: 'K1.coill', open: true}), 'K1.coil'],
    ['path', {paths: [{id: 'p', a: 'TB2.RR', b: 'earth', ohms: 1}]}, 'TB2.R'],
  ])('%s', (_what, altered, nearest) => {
    expect(() => solved(altered)).toThrow(UnknownNameError);
    expect(() => solved(altered)).toThrow(`"${nearest}"`);
  });

  test('asked of a solution', () => {
    expect(() => solved().volts('K1.11')).toThrow('"K1.1"');
    expect(() => solved().amps('W188')).toThrow('"W18"');
  });
});

describe('stray capacitance', () => {
  const wire = (id: string, from: string, to: string, feet: number): Wire => ({
    id,
    from,
    to,
    gauge: 18,
    feet,
    colour: 'red',
    run: 'cable',
  });
  /** Two strips in two enclosures, joined by a cable of the given wires. */
  const cable = (...wires: Wire[]): Unit => ({
    ...panel,
    enclosures: [
      {id: 'here', title: 'Here', cover: false},
      {id: 'there', title: 'There', cover: false},
    ],
    runs: [{id: 'cable', title: 'Cable', picofaradsPerFoot: 20}],
    parts: ['A', 'B'].map((id, i) => ({
      id,
      kind: 'terminal-strip',
      title: id,
      enclosure: i === 0 ? 'here' : 'there',
      data: {},
      terminals: ['1', '2', '3', '4'],
      elements: [],
      modes: [],
      controls: [],
    })),
    wires,
    circuits: [],
    sequences: [],
  });
  const strays = (unit: Unit, altered = unaltered) =>
    buildNetwork(unit, altered).elements.filter(({id}) => id.startsWith('stray:'));

  test('two wires have the picofarads of the shorter, half at each end', () => {
    const found = strays(cable(wire('W1', 'A.1', 'B.1', 50), wire('W2', 'A.2', 'B.2', 40)));
    expect(found).toMatchObject([
      // 20 pF/ft over 40 feet
      {is: 'capacitor', a: 'A.1', b: 'A.2', microfarads: expect.closeTo((20 * 40e-6) / 2, 12)},
      {is: 'capacitor', a: 'B.1', b: 'B.2', microfarads: expect.closeTo((20 * 40e-6) / 2, 12)},
    ]);
  });

  test('ends are paired by the enclosure they are in, whichever way a wire is listed', () => {
    const found = strays(cable(wire('W1', 'A.1', 'B.1', 50), wire('W2', 'B.2', 'A.2', 50)));
    expect(found).toMatchObject([
      {a: 'A.1', b: 'A.2'},
      {a: 'B.1', b: 'B.2'},
    ]);
  });

  test('four wires lie in a ring', () => {
    const wires = [1, 2, 3, 4].map((n) => wire(`W${n}`, `A.${n}`, `B.${n}`, 50));
    const pairs = strays(cable(...wires))
      .filter(({id}) => id.includes('.from'))
      .map(({id}) => id.replace('stray:', '').replaceAll('.from', ''));
    expect(pairs).toEqual(['W1~W2', 'W2~W3', 'W3~W4', 'W4~W1']);
  });

  test('a lifted end takes its half of the capacitance with it', () => {
    const unit = cable(wire('W1', 'A.1', 'B.1', 50), wire('W2', 'A.2', 'B.2', 50));
    const found = strays(unit, {...unaltered, lifted: ['W1.to']});
    expect(found).toMatchObject([
      {a: 'A.1', b: 'A.2'},
      {a: 'W1.to', b: 'B.2'},
    ]);
  });

  test('a wire open beside a live one floats to a stray voltage that a low-impedance meter pulls down', () => {
    // the call switch open: Y floats beside R in the panel's loom
    const s = solved({lifted: ['W16.from', 'W16.to', 'W17.from']});
    const {volts, ohms} = s.thevenin('W16.from', 'TB2.C');
    expect(magnitude(volts)).toBeGreaterThan(0.5);
    const read = (meter: number) =>
      (magnitude(volts) * meter) / Math.hypot(ohms.re + meter, ohms.im);
    expect(read(3000)).toBeLessThan(read(10e6) / 50);
  });

  test('direct current does not see it', () => {
    const unit = cable(wire('W1', 'A.1', 'B.1', 50), wire('W2', 'A.2', 'B.2', 50));
    const s = solveDc(compileNetwork(buildNetwork(unit, unaltered)), {});
    // only the insulation of two ends on each side: 50 MΩ and 50 MΩ in series
    expect(s.thevenin('A.1', 'A.2').ohms.re / 1e8).toBeCloseTo(1, 3);
  });
});
