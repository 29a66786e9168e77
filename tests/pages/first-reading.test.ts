import {describe, expect, it} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {firstReading} from '../../src/pages/guide/first-reading.ts';
import {firstReadingPlan, whyAnswers} from '../../src/pages/guide/first-reading-plan.ts';

const {hot, common, across, callSwitch} = firstReadingPlan;
const call = (value: 'on' | 'off'): Action => ({do: 'set', target: callSwitch, value});
const read = (red: string, black: string): Action => ({do: 'read', red, black});
const through: Action[] = [call('on'), read(hot, common), call('off'), read(...across)];

describe('the first reading', () => {
  it('goes from the call, through the reading, to the open switch and the question', () => {
    expect(firstReading([]).now).toBe('close');
    expect(firstReading(through.slice(0, 1)).now).toBe('read');
    expect(firstReading(through.slice(0, 2)).now).toBe('across');
    expect(firstReading(through.slice(0, 3)).now).toBe('across');
    expect(firstReading(through).now).toBe('why');
  });

  it('takes the leads either way round, as alternating current does', () => {
    expect(firstReading([call('on'), read(common, hot)]).now).toBe('across');
  });

  it('does not count a reading before the switch is closed, with other leads, or on ohms', () => {
    expect(firstReading([read(hot, common)]).now).toBe('close');
    const elsewhere = firstReading([call('on'), read('TB2.R', common)]);
    expect(elsewhere.now).toBe('read');
    expect(elsewhere.hint).toContain(hot);
    expect(
      firstReading([call('on'), {do: 'meter', function: 'ohms'}, read(hot, common)]).hint,
    ).toContain('AC volts');
  });

  it('tells a reading across the closed switch from one across the open switch', () => {
    const closed = firstReading([call('on'), read(hot, common), read(...across)]);
    expect(closed.now).toBe('across');
    expect(closed.hint).toContain('closed');
  });

  it('shows on the real bench what it says: about 24 V, then 24 V again across the open switch', () => {
    const unit = readShippedUnit(firstReadingPlan.unit);
    const bench = Bench.replay({unit, faults: [], complaint: '', seed: 0}, through);
    const [ready, open] = bench.view().log.filter(({kind}) => kind === 'reading');
    expect(ready.display?.value).toBeGreaterThan(23);
    expect(ready.display?.value).toBeLessThan(28);
    expect(open.display?.value).toBeGreaterThan(23);
    expect(open.display?.value).toBeLessThan(28);
  });

  it('has one right answer to its question', () => {
    expect(whyAnswers.filter(({right}) => right)).toHaveLength(1);
  });
});
