import {describe, expect, test} from 'vitest';
import {compileCondition} from '../../src/hookup/condition.ts';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import type {FindingKind} from '../../src/hookup/finding.ts';
import {hookedUnit} from '../../src/hookup/hooked-unit.ts';
import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {loadsOf} from '../../src/hookup/loads.ts';
import {readShippedTask, shippedTaskIds} from '../../src/hookup/node/read-shipped-task.ts';
import {mutants} from './mutations.ts';
import {settleWithNgspice, type Case, type SettledCase} from './ngspice-settle.ts';

/** Kinds that say that a load does not do what its rule asks. */
const ruleKinds: readonly FindingKind[] = [
  'never-fed',
  'safety-bypassed',
  'loads-in-series',
  'on-without-call',
  'back-feed',
  'on-when-off',
  'off-when-on',
];

describe.each(shippedTaskIds())('%s', (id) => {
  const task = readShippedTask(id);

  test('its answer is right, and what it begins with is wrong', () => {
    const report = checkHookup(task, task.answer);
    expect(report.findings).toEqual([]);
    expect(report.verdict).toBe('right');
    if (id.startsWith('mend-')) expect(checkHookup(task, task.begin).verdict).toBe('wrong');
  });

  test('ngspice agrees on every load of the answer and of the mutated hookups', async () => {
    const variants: {how: string; wires: readonly HookupWire[]}[] = [
      {how: 'the answer', wires: task.answer},
      ...mutants(task, 7 + id.length, 10),
    ];
    const masks = masksToAsk(task);
    const asked = variants.flatMap(({wires}) => casesOf(task, wires, masks));
    const settled = await settleWithNgspice(asked);
    const width = asked.length / variants.length;
    let wrong = 0;
    variants.forEach(({how, wires}, i) => {
      const mine = checkHookup(task, wires);
      const theirs = judge(task, masks, settled.slice(i * width, (i + 1) * width));
      for (const [load, states] of Object.entries(theirs.states))
        expect(masks.map((mask) => mine.loadStates[load][mask]).join(''), `${how}: ${load}`).toBe(
          states,
        );
      if (
        masks.length === 2 ** task.inputs.length &&
        !mine.findings.some(({kind}) => kind === 'dead-short')
      )
        expect(
          mine.findings.some(({kind}) => ruleKinds.includes(kind)),
          how,
        ).toBe(!theirs.holds);
      if (theirs.passesFuse)
        expect(
          mine.findings.map(({kind}) => kind),
          `${how}: fuse`,
        ).toContain('unfused-path');
      if (!theirs.holds || theirs.passesFuse) {
        wrong++;
        expect(mine.verdict, how).toBe('wrong');
      }
    });
    expect(wrong).toBeGreaterThanOrEqual(8);
    // the first one waits for the engine to start
  }, 120_000);
});

/** All combinations of up to three switches; beyond, none, all, and each switch alone open. */
function masksToAsk(task: HookupTask): number[] {
  const n = task.inputs.length;
  if (n <= 3) return Array.from({length: 2 ** n}, (_, mask) => mask);
  const every = 2 ** n - 1;
  return [0, every, ...task.inputs.map((_, i) => every & ~(1 << i))];
}

/** The combinations, then for each protected load one more with its device open. */
function casesOf(task: HookupTask, wires: readonly HookupWire[], masks: readonly number[]): Case[] {
  const unit = hookedUnit(task, wires);
  const at = (mask: number) =>
    new Map(
      task.inputs.map(({contact}, i): [string, boolean] => [contact, (mask & (1 << i)) !== 0]),
    );
  return [
    ...masks.map((mask) => ({unit, closed: at(mask), open: []})),
    ...task.protection.flatMap(({device, loads}) =>
      loads.map((load) => ({unit, closed: at(onMask(task, load, masks)), open: device})),
    ),
  ];
}

function onMask(task: HookupTask, load: string, masks: readonly number[]): number {
  const order = task.inputs.map(({id}) => id);
  const rule = task.rules.find((each) => each.load === load)!;
  return masks.find(compileCondition(rule.when, order))!;
}

function judge(
  task: HookupTask,
  masks: readonly number[],
  settled: readonly SettledCase[],
): {states: Record<string, string>; holds: boolean; passesFuse: boolean} {
  const order = task.inputs.map(({id}) => id);
  const loads = loadsOf(task.parts);
  const states: Record<string, string> = {};
  let holds = true;
  const shareOf = (one: SettledCase, id: string): number => {
    const load = loads.get(id)!;
    return one.volts(load.a, load.b) / load.ratedVolts;
  };
  for (const {load: id, least, when} of task.rules) {
    const isOn = compileCondition(when, order);
    const load = loads.get(id)!;
    const works = (one: SettledCase): boolean =>
      shareOf(one, id) >= least &&
      !one.restless.has(id) &&
      (load.is !== 'motor' || one.turning.has(`${load.part.id}.motor`));
    states[id] = masks
      .map((mask, i) => {
        const state =
          settled[i].restless.size > 0
            ? '≈'
            : works(settled[i])
              ? '1'
              : shareOf(settled[i], id) > 0.2 && !isOn(mask)
                ? '~'
                : '0';
        if ((state === '1') !== isOn(mask) || state === '~' || state === '≈') holds = false;
        return state;
      })
      .join('');
  }
  let at = masks.length;
  let passesFuse = false;
  for (const {loads: behind} of task.protection)
    for (const id of behind) {
      const on = masks.indexOf(onMask(task, id, masks));
      const one = settled[at++];
      if (states[id][on] === '1' && shareOf(one, id) > 0.2) passesFuse = true;
    }
  return {states, holds, passesFuse};
}
