import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {sectionOf, sections} from '../../src/diagnosis/fault-section.ts';
import {kindFacts} from '../../src/diagnosis/kind-facts.ts';
import {priceOf} from '../../src/diagnosis/part-prices.ts';
import {skills, skillsOf} from '../../src/diagnosis/skills.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {partKinds} from '../../src/parts/part-kinds.ts';

describe('what the diagnosis knows of the kinds of parts', () => {
  test('is there for every kind, and for none that does not exist', () => {
    expect(Object.keys(kindFacts).sort()).toEqual([...partKinds.keys()].sort());
  });

  test('names sections and skills that there are', () => {
    const ids = skills.map(({id}) => id);
    for (const [kind, {section, skill, dollars}] of Object.entries(kindFacts)) {
      expect(sections, kind).toContain(section);
      if (skill) expect(ids, kind).toContain(skill);
      expect(dollars, kind).toBeGreaterThanOrEqual(0);
    }
  });

  test('a compressor is the dearest thing to change on suspicion', () => {
    const unit = readShippedUnit('split-heat-pump');
    const prices = catalogue(unit).map((fault) => priceOf(unit, fault));
    const compressor = catalogue(unit).find(({id}) => id.startsWith('CMP:'))!;
    expect(priceOf(unit, compressor)).toBe(Math.max(...prices));
  });
});

describe('every fault of every unit', () => {
  test.each(shippedUnitIds())('of %s has a section and asks for reading a ladder', (id) => {
    const unit = readShippedUnit(id);
    for (const fault of catalogue(unit)) {
      expect(sections).toContain(sectionOf(unit, fault));
      expect(skillsOf(unit, fault)).toContain('reading-a-ladder');
    }
  });

  test('each skill that calls can show is asked for by some fault of the shipped units', () => {
    const asked = new Set(
      shippedUnitIds().flatMap((id) => {
        const unit = readShippedUnit(id);
        return catalogue(unit).flatMap((fault) => skillsOf(unit, fault));
      }),
    );
    // meter safety and lock-out are shown by how a call is worked, not by what is wrong
    const byFault = skills
      .map(({id}) => id)
      .filter((id) => id !== 'meter-safety' && id !== 'lock-out');
    expect([...asked].sort()).toEqual([...byFault].sort());
  });
});
