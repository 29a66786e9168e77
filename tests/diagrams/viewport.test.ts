import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {
  bringIntoView,
  fit,
  fitWidth,
  panBy,
  toDrawing,
  zoomAt,
  MOST_SCALE,
} from '../../src/diagrams/viewport.ts';

const drawing = {width: 1400, height: 900};
const frame = {width: 860, height: 600};

const sizes = fc.record({
  width: fc.integer({min: 200, max: 3000}),
  height: fc.integer({min: 200, max: 3000}),
});
const frames = fc.record({
  width: fc.integer({min: 200, max: 2000}),
  height: fc.integer({min: 150, max: 1500}),
});

describe('the view of a drawing', () => {
  test('fitted, the whole drawing lies in the frame', () => {
    fc.assert(
      fc.property(sizes, frames, (size, room) => {
        const {scale, x, y} = fit(size, room);
        expect(x).toBeGreaterThanOrEqual(-0.01);
        expect(y).toBeGreaterThanOrEqual(-0.01);
        expect(x + size.width * scale).toBeLessThanOrEqual(room.width + 0.01);
        expect(y + size.height * scale).toBeLessThanOrEqual(room.height + 0.01);
      }),
    );
  });

  test('fitted to its width, a high drawing starts at its top', () => {
    const view = fitWidth({width: 600, height: 3000}, {width: 390, height: 500});
    expect(view.y).toBeGreaterThanOrEqual(0);
    expect(view.scale).toBeCloseTo((390 - 16) / 600, 6);
  });

  test('zooming keeps what is under the pointer under the pointer', () => {
    const view = fit(drawing, frame);
    const at = {x: 400, y: 300};
    const before = toDrawing(view, at);
    const after = toDrawing(zoomAt(view, 1.6, at, drawing, frame), at);
    expect(after.x).toBeCloseTo(before.x, 6);
    expect(after.y).toBeCloseTo(before.y, 6);
  });

  test('however far it is moved or zoomed, a corner of the drawing stays in the frame', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({min: -4000, max: 4000}),
            fc.integer({min: -4000, max: 4000}),
            fc.double({min: 0.2, max: 5, noNaN: true}),
          ),
        ),
        (moves) => {
          let view = fit(drawing, frame);
          for (const [dx, dy, factor] of moves) {
            view = panBy(view, dx, dy, drawing, frame);
            view = zoomAt(view, factor, {x: 10, y: 10}, drawing, frame);
          }
          expect(view.scale).toBeLessThanOrEqual(MOST_SCALE);
          expect(view.x).toBeLessThan(frame.width);
          expect(view.y).toBeLessThan(frame.height);
          expect(view.x + drawing.width * view.scale).toBeGreaterThan(0);
          expect(view.y + drawing.height * view.scale).toBeGreaterThan(0);
        },
      ),
    );
  });

  test('a terminal out of sight is brought in; one in sight stays where it is', () => {
    const view = {scale: 2, x: 0, y: 0};
    const box = {x: 900, y: 700, width: 9, height: 9};
    const moved = bringIntoView(view, box, frame);
    const x = box.x * moved.scale + moved.x;
    const y = box.y * moved.scale + moved.y;
    expect(x).toBeLessThan(frame.width);
    expect(y).toBeLessThan(frame.height);
    expect(bringIntoView(moved, box, frame)).toEqual(moved);
  });
});
