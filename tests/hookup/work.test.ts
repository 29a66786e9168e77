import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import type {Deed, TimedDeed} from '../../src/hookup/hookup-deed.ts';
import {hookupAdvice} from '../../src/hookup/hookup-advice.ts';
import {
  hookupFile,
  isHookupFile,
  readHookupFile,
  type HookupAttempt,
} from '../../src/hookup/hookup-attempt.ts';
import {gradeHookup, hookupPoints} from '../../src/hookup/hookup-grade.ts';
import {skillsAsked} from '../../src/hookup/hookup-occasions.ts';
import {resultOf} from '../../src/hookup/hookup-result.ts';
import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {HookupWork} from '../../src/hookup/hookup-work.ts';
import {readShippedTask, shippedTaskIds} from '../../src/hookup/node/read-shipped-task.ts';

const lamp = readShippedTask('lamp-and-switch');
const three = readShippedTask('three-safeties');

const put = ({from, to, gauge, colour}: Omit<HookupWire, 'id'>): Deed => ({
  do: 'put',
  wire: {from, to, gauge, colour},
});
const putAll = (task: HookupTask): Deed[] => task.answer.map(put);
const act = (action: Action): Deed => ({do: 'act', action});
const breakerOn = act({do: 'set', target: 'CB1.position', value: 'on'});
const readOhms = [
  act({do: 'meter', function: 'ohms'}),
  act({do: 'read', red: 'CB1.T1', black: 'SUP.N'}),
];

/** Each deed half a minute after the one before. */
const timed = (deeds: readonly Deed[]): TimedDeed[] =>
  deeds.map((deed, i) => ({...deed, atMinutes: (i + 1) / 2}));
const workOf = (task: HookupTask, deeds: readonly Deed[]): HookupWork =>
  HookupWork.replay(task, timed(deeds));

const short = put({from: 'CB1.T1', to: 'SUP.N', gauge: 14, colour: 'red'});

describe('work at a task', () => {
  test('counts corrections until the first right verdict', () => {
    const {counts} = workOf(lamp, [
      {do: 'check'},
      ...putAll(lamp).slice(0, 4),
      {do: 'check'},
      putAll(lamp)[4],
      {do: 'check'},
      {do: 'take', wire: 'H1'},
      {do: 'check'},
    ]);
    expect(counts).toMatchObject({checks: 4, corrections: 2, solved: true, wiresUsed: 5});
  });

  test('counts power on a short as unsafe, and power without an ohms reading before', () => {
    const {counts, lines} = workOf(lamp, [
      ...putAll(lamp),
      short,
      {do: 'bench'},
      breakerOn,
      {do: 'undo'},
      {do: 'bench'},
      ...readOhms,
      breakerOn,
    ]);
    expect(counts).toMatchObject({
      energisings: 2,
      unsafeEnergisings: 1,
      unreadEnergisings: 1,
      deadReadings: 1,
    });
    expect(lines.filter(({is}) => is === 'power').map(({tone}) => tone)).toEqual([
      'danger',
      'good',
    ]);
  });

  test('AC volts on the dead circuit are no continuity check, nor are ohms once there was power', () => {
    const {counts} = workOf(lamp, [
      ...putAll(lamp),
      {do: 'bench'},
      act({do: 'read', red: 'CB1.T1', black: 'SUP.N'}),
      breakerOn,
      act({do: 'set', target: 'CB1.position', value: 'off'}),
      ...readOhms,
    ]);
    expect(counts).toMatchObject({deadReadings: 0, unreadEnergisings: 1});
  });

  test('a deed on a wire takes the board off the bench and the verdict away', () => {
    const work = workOf(lamp, [...putAll(lamp), {do: 'bench'}, {do: 'check'}]);
    expect(work.bench).toBeDefined();
    expect(work.report?.verdict).toBe('right');
    work.do({do: 'alter', wire: 'H1', change: {colour: 'blue'}, atMinutes: 9});
    expect(work.bench).toBeUndefined();
    expect(work.report).toBeUndefined();
  });

  test('refuses what cannot be done, and keeps no trace of it', () => {
    const work = new HookupWork(lamp);
    expect(work.do({do: 'bench', atMinutes: 1}).refused).toContain('no wire yet');
    expect(work.do({do: 'undo', atMinutes: 1}).refused).toContain('nothing to undo');
    expect(work.do({...breakerOn, atMinutes: 1}).refused).toContain('not on the bench');
    expect(work.do({do: 'take', wire: 'H7', atMinutes: 1}).refused).toContain('no wire H7');
    expect(work.deeds).toEqual([]);
  });

  test('done again from its deeds it is the same, down to the meter and the log', () => {
    const deeds = timed([
      ...putAll(lamp),
      {do: 'bench'},
      ...readOhms,
      breakerOn,
      act({do: 'set', target: 'S1.position', value: 'on'}),
      act({do: 'meter', function: 'ac-volts'}),
      act({do: 'read', red: 'LT1.1', black: 'LT1.2', expected: {value: 120}}),
    ]);
    const work = new HookupWork(lamp);
    for (const deed of deeds) expect(work.do(deed).refused).toBeUndefined();
    const again = HookupWork.replay(lamp, work.deeds);
    expect(again.bench!.view()).toEqual(work.bench!.view());
    expect(again.lines).toEqual(work.lines);
    expect(resultOf(again)).toEqual(resultOf(work));
    expect(again.bench!.view().meter.display).toBeDefined();
  });
});

describe('the grade', () => {
  const right = {
    checks: 1,
    corrections: 0,
    solved: true,
    energisings: 1,
    unsafeEnergisings: 0,
    unreadEnergisings: 0,
    deadReadings: 1,
    wiresUsed: 5,
    minutes: 3,
  };

  test('right the first time, read dead, no wire too many, in time: full points', () => {
    expect(gradeHookup(right, [], 5)).toEqual({points: 100, ...hookupPoints});
  });

  test('nothing done is worth nothing but that nothing unsafe was done', () => {
    const {points, safety} = gradeHookup(
      {...right, solved: false, checks: 0, energisings: 0, deadReadings: 0},
      [],
      5,
    );
    expect(points).toBe(safety);
  });

  test('every correction, unsafe power, unread power and spare wire costs', () => {
    const full = gradeHookup(right, [], 5).points;
    for (const worse of [
      {corrections: 1},
      {unsafeEnergisings: 1},
      {unreadEnergisings: 1},
      {wiresUsed: 8},
      {minutes: 30},
    ])
      expect(gradeHookup({...right, ...worse}, [], 5).points).toBeLessThan(full);
    expect(gradeHookup(right, [{severity: 'danger'}], 5).points).toBeLessThan(full);
  });
});

describe('what it says of skills', () => {
  const occasions = (task: HookupTask, deeds: readonly Deed[]) =>
    Object.fromEntries(
      resultOf(workOf(task, deeds)).occasions.map(({skill, right}) => [skill, right]),
    );

  test('nothing before the first verdict and the first power', () => {
    expect(resultOf(workOf(three, putAll(three))).occasions).toEqual([]);
  });

  test('right the first time: every skill of the task', () => {
    const found = occasions(three, [...putAll(three), {do: 'check'}]);
    expect(Object.keys(found).sort()).toEqual([...skillsAsked(three)].sort());
    expect(Object.values(found).every(Boolean)).toBe(true);
    expect(found).toMatchObject({'safeties-in-series': true, 'relays-and-contactors': true});
  });

  test('a bypass speaks against safeties in series alone, whatever is mended after', () => {
    const found = occasions(three, [
      ...putAll(three),
      put({from: 'HPS.1', to: 'HPS.2', gauge: 18, colour: 'red'}),
      {do: 'check'},
      {do: 'take', wire: 'H13'},
      {do: 'check'},
    ]);
    expect(found).toMatchObject({
      'reading-a-ladder': false,
      'safeties-in-series': false,
      'transformer-and-fuse': true,
      'relays-and-contactors': true,
    });
  });

  test('power without reading dead is a wrong occasion of meter safety', () => {
    const begun = [...putAll(lamp), {do: 'bench'} as const];
    expect(occasions(lamp, [...begun, breakerOn])).toEqual({'meter-safety': false});
    expect(occasions(lamp, [...begun, ...readOhms, breakerOn])).toEqual({'meter-safety': true});
  });

  test.each(shippedTaskIds())('%s asks for a skill beside reading a ladder', (id) => {
    expect(skillsAsked(readShippedTask(id)).length).toBeGreaterThan(1);
  });
});

describe('the advice', () => {
  const advice = (deeds: readonly Deed[]): string => {
    const work = workOf(lamp, deeds);
    return hookupAdvice(resultOf(work), work.firstFindings);
  };

  test('puts an unsafe energising first', () => {
    expect(advice([...putAll(lamp), short, {do: 'bench'}, breakerOn, {do: 'check'}])).toMatch(
      /^Safety comes first: you closed the breaker once/,
    );
  });

  test('tells of wires too many', () => {
    const work = workOf(three, [
      ...putAll(three),
      put({from: 'S1.2', to: 'FS1.1', gauge: 18, colour: 'red'}),
      {do: 'check'},
    ]);
    expect(hookupAdvice(resultOf(work), work.firstFindings)).toContain(
      `You used ${three.answer.length + 1} wires where ${three.answer.length} do.`,
    );
  });

  test('has nothing to blame where nothing was wrong', () => {
    expect(advice([...putAll(lamp), {do: 'check'}])).toContain('Take a harder task');
  });
});

describe('the file', () => {
  const attempt: HookupAttempt = {
    format: 'rungbench-hookup',
    version: 1,
    id: 'abc',
    task: lamp.id,
    begunAt: '2026-03-01T10:00:00.000Z',
    deeds: timed([...putAll(lamp), {do: 'bench'}, ...readOhms, {do: 'check'}]),
  };

  test('written and read back is the same', () => {
    const text = hookupFile(attempt);
    expect(isHookupFile(text)).toBe(true);
    expect(readHookupFile(text)).toEqual({attempt});
  });

  test.each([
    ['{', 'not a whole JSON file'],
    ['{}', 'no work at a wiring task'],
    ['{"format": "rungbench-hookup", "version": 2}', 'reads version 1'],
    [JSON.stringify({...attempt, deeds: [{do: 'melt', atMinutes: 1}]}), '"deeds", no. 1'],
    [
      JSON.stringify({...attempt, deeds: [{do: 'take', wire: 'H1', atMinutes: -1}]}),
      '"deeds", no. 1, "atMinutes"',
    ],
  ])('says what is wrong with %s', (text, reason) => {
    expect(readHookupFile(text)).toMatchObject({reason: expect.stringContaining(reason)});
  });
});
