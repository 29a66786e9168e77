import {expect, it} from 'vitest';
import {glyphOf} from '../../src/pages/units/part-glyphs.ts';
import {partKinds} from '../../src/parts/part-kinds.ts';

it('every kind of part has a picture of its own, within a box of 24 by 24', () => {
  const plain = glyphOf('no such kind');
  for (const kind of partKinds.keys()) {
    expect(glyphOf(kind), kind).not.toBe(plain);
    // coordinates that are given from the sheet's corner; the others are steps
    for (const [, numbers] of glyphOf(kind).matchAll(/[MLHV]([^a-zA-Z]+)/g))
      for (const number of numbers!.trim().split(/[ ,]+|(?<=\d)(?=-)/)) {
        expect(Number(number), kind).toBeGreaterThanOrEqual(0);
        expect(Number(number), kind).toBeLessThanOrEqual(24);
      }
  }
});
