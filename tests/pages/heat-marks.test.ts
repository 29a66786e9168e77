import {describe, expect, it} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {layoutLadder} from '../../src/diagrams/ladder-layout.ts';
import {heatFrame, heatMarks, heatText} from '../../src/pages/class/heat-marks.ts';

const unit = readShippedUnit('practice-panel');
const drawing = layoutLadder(unit, {aspect: 1.6});
const heat = {
  unit: unit.id,
  title: unit.title,
  terminals: {'K1.1': 9, 'F1.2': 4, 'TB2.C': 1, 'NOT.THERE': 30},
  wires: {W14: 2},
};

describe('where the class has measured', () => {
  const marks = heatMarks(drawing, heat);

  it('is marked at the terminals and wires of the drawing, and nowhere else', () => {
    expect(marks.map(({id}) => id).sort()).toEqual(['F1.2', 'K1.1', 'TB2.C', 'W14']);
    const mark = drawing.terminals.find(({terminal}) => terminal === 'K1.1');
    expect(marks.at(-1)).toMatchObject({id: 'K1.1', count: 9, x: mark?.x, y: mark?.y});
  });

  it('is larger the more readings, by area', () => {
    const of = (id: string): number => marks.find((mark) => mark.id === id)!.radius;
    expect(of('K1.1')).toBeGreaterThan(of('F1.2'));
    expect(of('F1.2')).toBeGreaterThan(of('TB2.C') - 1e-9);
  });

  it('is told in words, the busiest first', () => {
    expect(heatText(heat, 3)).toBe('NOT.THERE 30, K1.1 9, F1.2 4');
  });

  it('is shown in a frame that holds every mark, within the drawing, half of it at least', () => {
    const all = drawing.terminals.map(({terminal}) => terminal);
    for (const places of [all.slice(0, 1), all.slice(-2), [all[0], all.at(-1)!], all, []]) {
      const some = heatMarks(drawing, {
        ...heat,
        terminals: Object.fromEntries(places.map((id) => [id, 1])),
        wires: {},
      });
      const {x, y, width, height} = heatFrame(drawing, some);
      expect(width / height).toBeCloseTo(drawing.width / drawing.height, 9);
      expect(width).toBeGreaterThanOrEqual(drawing.width / 2 - 1e-9);
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
      expect(x + width).toBeLessThanOrEqual(drawing.width + 1e-9);
      expect(y + height).toBeLessThanOrEqual(drawing.height + 1e-9);
      for (const mark of some) {
        expect(mark.x >= x && mark.x <= x + width && mark.y >= y && mark.y <= y + height).toBe(
          true,
        );
      }
    }
  });
});
