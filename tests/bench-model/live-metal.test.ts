import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {benchAt, doAll, read} from './bench-of.ts';

const unit = readShippedUnit('split-heat-pump');
const fault = catalogue(unit).find(({mode}) => mode === 'live-metal')!;
const metal = fault.paths[0]!.b;
const box = unit.enclosures.find(({cabinet}) => cabinet === metal)!.id;
const panel = unit.parts.find(({kind}) => kind === 'supply')!.enclosure;
/** The metal of the service panel, bonded to the neutral: a known earth. */
const ground = unit.enclosures.find(({id}) => id === panel)!.cabinet!;
const bench = (...faults: string[]) => benchAt('split-heat-pump', faults);

describe('metal that is live', () => {
  test('laid hands on without a test is a danger', () => {
    const student = bench(fault.id);
    doAll(student, {do: 'open-cover', enclosure: box});
    expect(student.view().safety).toHaveLength(1);
    expect(student.view().safety[0]).toMatchObject({severity: 'danger'});
    expect(student.view().safety[0]!.text).toMatch(/without testing it/);
  });

  test('is found with the cover on, between the metal and a known earth', () => {
    const student = bench(fault.id);
    const {display} = doAll(student, {do: 'meter', function: 'ac-volts'}, read(metal, ground));
    expect(Number(display!.text)).toBeGreaterThan(100);
  });

  test('may be touched once it has been isolated', () => {
    const student = bench(fault.id);
    const breakers = unit.parts.filter(({kind}) => kind === 'breaker').map(({id}) => id);
    for (const breaker of breakers)
      doAll(student, {do: 'set', target: `${breaker}.position`, value: 'off'});
    doAll(student, {do: 'open-cover', enclosure: box});
    expect(student.view().safety).toEqual([]);
  });

  test('is none where the equipment ground is sound', () => {
    const student = bench();
    doAll(student, {do: 'open-cover', enclosure: box});
    expect(student.view().safety).toEqual([]);
  });
});
