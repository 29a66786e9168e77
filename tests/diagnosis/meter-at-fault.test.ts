import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {Suspects} from '../../src/diagnosis/suspects.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {meterFlaws, type MeterFlaw} from '../../src/meter/meter-condition.ts';

const panel = readShippedUnit('practice-panel');
const all = catalogue(panel);
const truth = all.find(({id}) => id === 'HPS:stuck-open') ?? all[0];

/** Follows an attempt with the meter of the call, and gives the suspects beside it. */
function follow(actions: readonly Action[], meterFlaw?: MeterFlaw) {
  const bench = new Bench({
    unit: panel,
    faults: faultsById(all, [truth.id]),
    complaint: '',
    seed: 0,
    ...(meterFlaw ? {meterFlaw} : {}),
  });
  const suspects = new Suspects(panel);
  for (const {id} of panel.enclosures.filter(({cover}) => cover))
    bench.act({do: 'open-cover', enclosure: id});
  const told = actions.map((action) => {
    const result = bench.act(action);
    if ('refused' in result) throw new Error(result.refused);
    return suspects.step(action, result.entry, bench.operating.observations());
  });
  return {bench, suspects, told};
}

const line: Action = {do: 'read', red: 'TB1.L', black: 'TB1.N'};
const string: Action = {do: 'read', red: 'HPS.1', black: 'TB2.C'};
const across: Action = {do: 'read', red: 'HPS.1', black: 'HPS.2'};

describe('a meter that may itself be at fault', () => {
  test('the panel has the terminals that these tests read', () => {
    const points = panel.parts.flatMap(({id, terminals}) => terminals.map((t) => `${id}.${t}`));
    expect(points).toEqual(expect.arrayContaining(['TB1.L', 'TB1.N', 'HPS.1', 'HPS.2', 'TB2.C']));
  });

  test.each(meterFlaws)('%s: whatever it shows, it never rules out the true fault', (flaw) => {
    const run: Action[] = [
      line,
      string,
      across,
      {do: 'meter', function: 'low-impedance-volts'},
      across,
      {do: 'meter', function: 'ohms'},
      {do: 'read', red: 'HPS.1', black: 'HPS.1'},
      {do: 'meter', function: 'dc-microamps'},
      {do: 'read', red: 'HPS.2', black: 'TB2.C'},
      {do: 'renew', what: 'battery'},
      {do: 'renew', what: 'fuse'},
      {do: 'renew', what: 'leads'},
      {do: 'meter', function: 'ac-volts'},
      line,
      across,
    ];
    const {suspects} = follow(run, flaw);
    expect(suspects.has(truth.id)).toBe(true);
  });

  test('zero volts of leads that nothing has proved rule nobody out', () => {
    const {told, bench} = follow([line, string], 'broken-lead');
    expect(bench.view().log.at(-1)!.display!.value).toBe(0);
    expect(told.flatMap(({ruledOut}) => ruledOut)).toEqual([]);
  });

  test('with a sound meter the same zero waits for the proof, and counts from then on', () => {
    const dead: Action = {do: 'read', red: 'HPS.2', black: 'TB2.C'};
    const held = follow([dead], 'sound');
    const later = follow([dead, line], 'sound');
    const known = follow([dead, line]);
    expect(held.told.at(-1)!.ruledOut).toEqual([]);
    expect(later.suspects.hypotheses.map(({id}) => id)).toEqual(
      known.suspects.hypotheses.map(({id}) => id),
    );
    expect(known.suspects.count).toBeLessThan(held.suspects.count);
  });

  test('a reading under the word for an empty battery counts for nothing', () => {
    const {told} = follow([line, across], 'weak-battery');
    expect(told.map(({ruledOut}) => ruledOut.length)).toEqual([0, 0]);
  });

  test('without the doubt, readings count at once', () => {
    const {told} = follow([across]);
    expect(told[0].ruledOut.length).toBeGreaterThan(0);
  });
});
