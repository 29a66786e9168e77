import {describe, expect, test} from 'vitest';
import {Bench} from '../../src/bench/bench.ts';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import {hookedUnit} from '../../src/hookup/hooked-unit.ts';
import type {HookupWire} from '../../src/hookup/hookup-task.ts';
import {readShippedTask, shippedTaskIds} from '../../src/hookup/node/read-shipped-task.ts';
import {operateWaiting} from '../../src/hookup/operate-waiting.ts';
import {HookupRun} from '../../src/hookup/hookup-run.ts';

const three = readShippedTask('three-safeties');
const across = (from: string, to: string): HookupWire => ({
  id: 'X1',
  from,
  to,
  gauge: 18,
  colour: 'grey',
});

const benchOf = (wires: readonly HookupWire[]): Bench =>
  new Bench({
    unit: hookedUnit(three, wires),
    faults: [],
    complaint: '',
    seed: 0,
    operate: operateWaiting,
  });

const volts = (operating: ReturnType<typeof operateWaiting>, a: string, b: string): number => {
  const {re, im} = operating.acVolts(a, b);
  return Math.hypot(re, im);
};

describe('a board that was just wired', () => {
  test('has no power until its breaker is closed', () => {
    const operating = operateWaiting(hookedUnit(three, three.answer));
    expect(operating.valueOf('CB1.position')).toBe('off');
    expect(volts(operating, 'TB2.R', 'TB2.C')).toBeLessThan(0.5);
    operating.set('CB1.position', 'on');
    expect(volts(operating, 'TB2.R', 'TB2.C')).toBeGreaterThan(22);
  });

  test('a short reads no ohms while dead, and blows the fuse at power', () => {
    const {operating} = benchOf([...three.answer, across('TB2.R', 'TB2.C')]);
    expect(operating.thevenin('TB2.R', 'TB2.C', 'dc').ohms.re).toBeLessThan(0.2);
    operating.set('CB1.position', 'on');
    operating.advance(1000);
    expect(operating.isClosed('F1.link')).toBe(false);
    expect(volts(operating, 'F1.1', 'F1.2')).toBeGreaterThan(20);
  });

  test('a short ahead of the fuse burns the transformer', () => {
    const {operating} = benchOf([...three.answer, across('T1.X1', 'T1.X2')]);
    operating.set('CB1.position', 'on');
    operating.advance(600_000);
    expect(operating.isClosed('F1.link')).toBe(true);
    expect(operating.observations().find(({part}) => part === 'T1')?.is).toBe('burnt');
  });
});

describe('state machines on a clock do what the checker says', () => {
  // all calls closed by hand switches, all safeties at rest: the machines settle by themselves
  const handTasks = shippedTaskIds().filter((id) => {
    const {parts} = readShippedTask(id);
    return !parts.some(({kind}) => kind === 'thermostat');
  });

  test.each(handTasks)('%s: every call on, every safety closed', (id) => {
    const task = readShippedTask(id);
    const report = checkHookup(task, task.answer);
    const operating = operateWaiting(hookedUnit(task, task.answer));
    for (const {kind, id: part} of task.parts) {
      if (kind === 'disconnect') operating.set(`${part}.position`, 'closed');
      if (kind === 'breaker') operating.set(`${part}.position`, 'on');
      if (kind === 'toggle-switch') operating.set(`${part}.position`, 'on');
    }
    operating.advance(120_000);
    for (const {load, rule} of new HookupRun(task, task.answer).rules) {
      const share = volts(operating, load.a, load.b) / load.ratedVolts;
      const last = report.loadStates[load.id].at(-1);
      if (last === '1') expect(share, load.id).toBeGreaterThanOrEqual(rule.least);
      else expect(share, load.id).toBeLessThan(0.2);
    }
  });
});
