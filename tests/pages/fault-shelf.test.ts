import {describe, expect, it} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {faultLines, findLines} from '../../src/pages/hide/fault-shelf.ts';

const unit = readShippedUnit('split-heat-pump');
const faults = catalogue(unit);
const lines = faultLines(unit, faults);
const namesOf = (words: string): string[] =>
  findLines(lines, {words}).flatMap(({modes}) => modes.map(({name}) => name));

describe('the list of faults to hide', () => {
  it('holds every fault of the catalogue once', () => {
    const listed = lines.flatMap(({modes}) => modes.map(({fault}) => fault));
    expect(new Set(listed).size).toBe(listed.length);
    expect([...listed].sort()).toEqual(faults.map(({id}) => id).sort());
  });

  it('finds by words in any order, in the line or in the way to fail', () => {
    const welded = namesOf('weld contactor');
    expect(welded.length).toBeGreaterThan(0);
    expect(welded.every((name) => /weld/i.test(name))).toBe(true);
    expect(namesOf('CONTACTOR weld')).toEqual(welded);
    expect(namesOf('no such thing')).toEqual([]);
  });

  it('keeps to the section, the enclosure or the site asked for', () => {
    expect(
      findLines(lines, {words: '', section: 'wires'}).every(({id}) => id.startsWith('wire:')),
    ).toBe(true);
    const outdoor = findLines(lines, {words: '', enclosure: 'outdoor-unit'});
    expect(outdoor.length).toBeGreaterThan(20);
    expect(outdoor.every(({enclosures}) => enclosures.includes('outdoor-unit'))).toBe(true);
    expect(findLines(lines, {words: 'ignored', site: lines[0].id})).toEqual([lines[0]]);
  });

  it('names a short by the wire on the other side', () => {
    const short = faults.find(({site}) => site.on === 'wires');
    const line = lines.find(({modes}) => modes.some(({fault}) => fault === short?.id));
    const other = short?.site.on === 'wires' ? short.site.wires[1] : '';
    expect(line?.modes.find(({fault}) => fault === short?.id)?.label).toBe(`Shorted to ${other}`);
  });
});
