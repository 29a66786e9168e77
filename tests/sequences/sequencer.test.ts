import {expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const contacts = [
  {id: 'blower', terminals: ['M1', 'M2'], closesAtRiseDegF: 30, opensAtRiseDegF: 15},
  {id: 'element', terminals: ['M3', 'M4'], closesAtRiseDegF: 50, opensAtRiseDegF: 35},
];
const sequencer = () =>
  new BenchPart(partOf('SQ1', 'sequencer', {contacts, riseDegF: 160, timeConstantSeconds: 60}));
const heat = (volts: number, atMs: number) => ({voltsIn: {'SQ1.heater': volts}, atMs});
const closed = (sq: BenchPart) => contacts.map(({id}) => sq.isClosed(id));

test('no contact moves at once: the bimetal must warm first', () => {
  expect(closed(sequencer().show(heat(24, 0)))).toEqual([false, false]);
});

test('contacts close one after another, each at τ·ln(1/(1 − rise/full rise))', () => {
  const sq = sequencer().show(heat(24, 0));
  // first-order response worked by hand: 60 s × ln(160/130) = 12.5 s and 60 s × ln(160/110) = 22.5 s
  expect(sq.untilDue().atMs).toBe(Math.ceil(60_000 * Math.log(160 / 130)));
  expect(closed(sq)).toEqual([true, false]);
  expect(sq.untilDue().atMs).toBe(Math.ceil(60_000 * Math.log(160 / 110)));
  expect(closed(sq)).toEqual([true, true]);
});

test('when the call goes they open in the other order, the blower last', () => {
  const sq = sequencer().show(heat(24, 0)).show({atMs: 600_000}).show(heat(0, 600_001));
  expect(closed(sq)).toEqual([true, true]);
  expect(closed(sq.untilDue())).toEqual([true, false]);
  // 60 s × ln(160/15) = 142 s after the call the last one lets go
  expect(closed(sq.untilDue())).toEqual([false, false]);
  expect(sq.atMs - 600_001).toBeCloseTo(60_000 * Math.log(160 / 15), -2);
});

test('low volts warm it with their square: at half, contacts that need more never close', () => {
  // a quarter of 160 °F is 40: enough for the blower's disc, not for the element's
  const sq = sequencer().show(heat(12, 0)).show({atMs: 3_600_000});
  expect(closed(sq)).toEqual([true, false]);
  expect(sq.dueAtMs).toBeUndefined();
});

test('an open heater never warms it', () => {
  expect(sequencer().show(heat(0, 0)).dueAtMs).toBeUndefined();
});
