import fc from 'fast-check';
import {beforeAll, describe, expect, test} from 'vitest';
import type {Unit} from '../../src/content/unit.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {WrongTargetError} from '../../src/sequences/wrong-target-error.ts';

let unit: Unit;
beforeAll(() => {
  unit = readShippedUnit('split-heat-pump');
});

/** Everything that can be known of a unit, as text to compare. */
function everything(operating: OperatingUnit): string {
  const volts = operating.probePoints().map((point) => operating.acVolts(point, 'earth'));
  return JSON.stringify([
    operating.timeMs,
    operating.states,
    operating.plantValues(),
    operating.unit.parts.map(({id, controls}) =>
      controls.map((control) => operating.valueOf(`${id}.${control.id}`)),
    ),
    operating.observations(),
    volts,
  ]);
}

/** Something that a person does. */
type Deed = (operating: OperatingUnit) => void;
const deed = (on: Unit): fc.Arbitrary<Deed> => {
  const controls = on.parts.flatMap((part) =>
    part.controls.map((control) => ({target: `${part.id}.${control.id}`, control})),
  );
  const ends = on.wires.flatMap(({id}) => [`${id}.from`, `${id}.to`]);
  const terminals = on.parts.flatMap(({id, terminals: names}) =>
    names.map((name) => `${id}.${name}`),
  );
  const setControl = fc.constantFrom(...controls).chain(({target, control}) => {
    const value: fc.Arbitrary<string | number> =
      control.type === 'choice'
        ? fc.constantFrom(...control.choices!.map((choice) => choice.value))
        : control.type === 'number'
          ? fc.integer({min: control.min, max: control.max})
          : fc.constant('pressed');
    return value.map(
      (chosen): Deed =>
        (operating) =>
          operating.set(target, chosen),
    );
  });
  const setPlant = fc
    .record({
      name: fc.constantFrom(
        'roomDegF',
        'outdoorDegF',
        'panInches',
        'chargeFraction',
        'dischargePsig',
      ),
      share: fc.double({min: 0, max: 1, noNaN: true}),
    })
    .map(({name, share}): Deed => (operating) => {
      const ranges: Record<string, [number, number]> = {
        roomDegF: [40, 110],
        outdoorDegF: [-20, 120],
        panInches: [0, 3],
        chargeFraction: [0, 1.2],
        dischargePsig: [0, 700],
      };
      const [low, high] = ranges[name]!;
      if (name in operating.plantValues())
        operating.set(`plant.${name}`, low + share * (high - low));
    });
  const wait = fc.integer({min: 0, max: 900_000}).map(
    (ms): Deed =>
      (operating) =>
        operating.advance(ms),
  );
  const lift = fc.constantFrom(...ends).map(
    (end): Deed =>
      (operating) =>
        operating.lift(end),
  );
  const land = fc.constant<Deed>((operating) => {
    const lifted = operating.probePoints().find((point) => ends.includes(point));
    if (lifted) operating.land(lifted);
  });
  const jumper = fc.uniqueArray(fc.constantFrom(...terminals), {minLength: 2, maxLength: 2}).map(
    ([a, b]): Deed =>
      (operating) =>
        operating.jumper(a!, b!),
  );
  return fc.oneof(
    {weight: 5, arbitrary: setControl},
    {weight: 5, arbitrary: wait},
    {weight: 2, arbitrary: setPlant},
    {weight: 1, arbitrary: lift},
    {weight: 1, arbitrary: land},
    {weight: 1, arbitrary: jumper},
  );
};

describe.each(shippedUnitIds())('%s', (id) => {
  const on = readShippedUnit(id);
  const all = catalogue(on);
  const course = fc.record({
    faults: fc.uniqueArray(fc.constantFrom(...all), {maxLength: 2}),
    deeds: fc.array(deed(on), {maxLength: 12}),
  });
  const played = ({faults, deeds}: {faults: typeof all; deeds: Deed[]}): OperatingUnit => {
    const operating = operateUnit(on, faults);
    for (const act of deeds) act(operating);
    return operating;
  };

  test('whatever is done to it with whatever faults, it neither throws nor hangs, and its numbers are numbers', () => {
    fc.assert(
      fc.property(course, (what) => {
        const operating = played(what);
        expect(everything(operating)).not.toMatch(/null|NaN/);
      }),
      {numRuns: 60},
    );
  }, 60_000);

  test('the same faults and deeds give the same numbers', () => {
    fc.assert(
      fc.property(course, (what) => everything(played(what)) === everything(played(what))),
      {numRuns: 15},
    );
  }, 60_000);

  test('a copy goes its own way and leaves the original as it was', () => {
    fc.assert(
      fc.property(course, deed(on), fc.integer({min: 1, max: 600_000}), (what, act, ms) => {
        const original = played(what);
        const before = everything(original);
        const copy = original.fork();
        expect(everything(copy)).toBe(before);
        act(copy);
        copy.advance(ms);
        expect(everything(original)).toBe(before);
      }),
      {numRuns: 15},
    );
  }, 60_000);

  test('waiting in pieces is the same as waiting at once', () => {
    fc.assert(
      fc.property(
        course,
        fc.array(fc.integer({min: 0, max: 400_000}), {minLength: 1, maxLength: 5}),
        (what, pieces) => {
          const inPieces = played(what);
          const atOnce = inPieces.fork();
          for (const piece of pieces) inPieces.advance(piece);
          atOnce.advance(pieces.reduce((sum, piece) => sum + piece, 0));
          expect(everything(inPieces)).toBe(everything(atOnce));
        },
      ),
      {numRuns: 20},
    );
  }, 60_000);
});

describe('names', () => {
  test('a wrong control names the nearest right one', () => {
    const operating = operateUnit(unit, []);
    expect(() => operating.set('TS.mod', 'cool')).toThrow(WrongTargetError);
    expect(() => operating.set('TS.mod', 'cool')).toThrow('"TS.mode"');
    expect(() => operating.valueOf('plant.outdorDegF')).toThrow('"plant.outdoorDegF"');
    expect(() => operating.lift('W12.form')).toThrow('"W12.from"');
    expect(() => operating.jumper('TB1.R', 'TB1.YY')).toThrow('"TB1.Y"');
    expect(() => operating.isClosed('K3.pole3')).toThrow('"K3.pole');
  });

  test('a value that a control cannot take names those that it can', () => {
    const operating = operateUnit(unit, []);
    expect(() => operating.set('TS.mode', 'cold')).toThrow('"cool"');
    expect(() => operating.set('TS.setPointDegF', 200)).toThrow('a number from 45 to 95');
    expect(() => operating.set('plant.roomDegF', 'warm')).toThrow(WrongTargetError);
    expect(() => operating.set('TS.setPointDegF', '')).toThrow(WrongTargetError);
  });

  test('numbers may come as text', () => {
    const operating = operateUnit(unit, []);
    operating.set('TS.setPointDegF', '70');
    operating.set('plant.roomDegF', '80');
    expect([operating.valueOf('TS.setPointDegF'), operating.valueOf('plant.roomDegF')]).toEqual([
      70, 80,
    ]);
  });

  test('time passes in whole milliseconds only', () => {
    const operating = operateUnit(unit, []);
    expect(() => operating.advance(-1)).toThrow(RangeError);
    expect(() => operating.advance(0.5)).toThrow(RangeError);
  });
});

test('on an open board everything can be seen; in an enclosure the contactor is behind its cover', () => {
  const panel = operateUnit(readShippedUnit('practice-panel'), []);
  expect(
    panel
      .observations()
      .filter(({part}) => part === 'K1')
      .map((each) => each.behindCover),
  ).toEqual([false]);
  const outdoors = operateUnit(unit, [])
    .observations()
    .filter(({part}) => part === 'K3');
  expect(outdoors.map((each) => each.behindCover)).toEqual([true]);
});

describe('wires', () => {
  test('a lifted end is a point of its own, and landing it makes all as before', () => {
    const operating = operateUnit(unit, []);
    const before = everything(operating);
    operating.lift('W33.to');
    expect(operating.probePoints()).toContain('W33.to');
    const {re, im} = operating.acVolts('TB1.R', 'TB1.C');
    expect(Math.hypot(re, im)).toBeLessThan(5);
    operating.land('W33.to');
    expect(operating.probePoints()).not.toContain('W33.to');
    operating.advance(0);
    expect(JSON.parse(before)[1]).toEqual(operating.states);
  });

  test('a jumper past an open safety starts the compressor; taken off, it stops', () => {
    const operating = operateUnit(unit, [catalogue(unit).find(({id}) => id === 'HPS:stuck-open')!]);
    for (const {target, value} of unit.sequences.find(({id}) => id === 'cooling')!.set)
      operating.set(target, value);
    expect(operating.isClosed('K3.pole1')).toBe(false);
    operating.jumper('HPS.1', 'HPS.2');
    expect(operating.isClosed('K3.pole1')).toBe(true);
    operating.removeJumper('HPS.2', 'HPS.1');
    expect(operating.isClosed('K3.pole1')).toBe(false);
  });
});
