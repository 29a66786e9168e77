import {expect, test} from 'vitest';
import {hidingPoints} from '../../src/classroom/hiding-grade.ts';
import {LongWork} from '../../src/classroom/long-jobs.ts';
import type {Action} from '../../src/bench/actions.ts';
import {shippedContent} from '../../src/server/class/shipped-content.ts';

const work = new LongWork(shippedContent);
const judged = (fault: string, ...actions: Action[]) => {
  const {debrief, reasoning} = work.do('judge', {
    call: {unit: 'practice-panel', faults: [fault], complaint: '', seed: 0, actions},
  });
  return {points: hidingPoints(debrief.verdict, reasoning), readings: reasoning.route.readings};
};

test('a fault that can be found earns points, more if it takes some finding, and more if it was found', () => {
  const [name, giveUp]: Action[] = [{do: 'name', fault: 'W8:open', evidence: []}, {do: 'give-up'}];
  const found = judged('W8:open', name);
  const missed = judged('W8:open', giveUp);
  expect(found.points - missed.points).toBe(30);
  // findable, and three tenths of a hundred shared out over the first five readings
  expect(missed.points).toBe(Math.round(40 + 30 * Math.min(1, missed.readings / 5)));
});

test('the hider is graded by the planner’s way, not by how the other went about it', () => {
  const route = (readings: number, suspectsLeft: number) => ({
    route: {readings, minutes: 9, steps: [{text: '', shown: '', suspectsLeft}]},
  });
  expect(hidingPoints('right', route(5, 1))).toBe(100);
  expect(hidingPoints('equivalent', route(5, 2))).toBe(100);
  expect(hidingPoints('wrong', route(1, 1))).toBe(46);
  // nothing that any reading narrows down: nothing for having hidden it
  expect(hidingPoints('given-up', {route: {readings: 0, minutes: 0, steps: []}})).toBe(0);
});
