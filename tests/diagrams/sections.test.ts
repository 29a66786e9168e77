import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {layoutLadder} from '../../src/diagrams/ladder-layout.ts';
import {largest, sectionsOf} from '../../src/diagrams/sections.ts';
import {fitBox, READING_SCALE} from '../../src/diagrams/viewport.ts';

const unit = readShippedUnit('split-heat-pump');
const ladder = layoutLadder(unit, {aspect: 1.6});
const sections = sectionsOf(ladder);

describe('the sections of a ladder', () => {
  test('are its circuits, each with all of its terminals, and none with another’s', () => {
    expect(sections.map(({title}) => title)).toEqual(unit.circuits.map(({title}) => title));
    for (const {x, y} of ladder.terminals) {
      const within = sections.filter(
        ({box}) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height,
      );
      expect(within).toHaveLength(1);
    }
  });

  test('the 24 V control is the largest, and the one to begin with', () => {
    expect(largest(sections)?.title).toBe('24 V control');
  });

  test('looked at in a small frame, one is never too small to read, and begins at its top', () => {
    const {box} = largest(sections)!;
    const view = fitBox(box, {width: 880, height: 520});
    expect(view.scale).toBeGreaterThanOrEqual(READING_SCALE);
    expect(box.y * view.scale + view.y).toBeGreaterThanOrEqual(0);
    expect(box.y * view.scale + view.y).toBeLessThan(20);
  });
});
