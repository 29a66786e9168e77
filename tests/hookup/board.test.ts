import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {layBoard} from '../../src/hookup/board-layout.ts';
import {routeWires} from '../../src/hookup/board-routes.ts';
import {readShippedTask, shippedTaskIds} from '../../src/hookup/node/read-shipped-task.ts';

describe.each(shippedTaskIds())('the board of %s', (id) => {
  const task = readShippedTask(id);
  const layout = layBoard(task);
  const routes = routeWires(layout, [...task.given, ...task.answer]);

  test('no part lies on another, and every terminal is there once', () => {
    for (const p of layout.parts)
      for (const q of layout.parts)
        if (p !== q)
          expect(
            p.x >= q.x + q.width ||
              q.x >= p.x + p.width ||
              p.y >= q.y + q.height ||
              q.y >= p.y + p.height,
          ).toBe(true);
    const placed = layout.parts.flatMap(({terminals}) => terminals.map(({terminal}) => terminal));
    const named = task.parts.flatMap((part) => part.terminals.map((name) => `${part.id}.${name}`));
    expect([...placed].sort()).toEqual([...named].sort());
  });

  test('terminals are far enough apart for a finger', () => {
    const all = layout.parts.flatMap(({terminals}) => terminals);
    for (const p of all)
      for (const q of all)
        if (p !== q) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThanOrEqual(28);
  });

  test('every wire is routed, on the board, and around the parts', () => {
    expect(routes.map((route) => route.id)).toEqual(
      [...task.given, ...task.answer].map((wire) => wire.id),
    );
    for (const {points} of routes)
      for (let i = 1; i < points.length; i++) {
        const [[x1, y1], [x2, y2]] = [points[i - 1], points[i]];
        expect(x1 === x2 || y1 === y2).toBe(true);
        for (const [x, y] of points.slice(i - 1, i + 1)) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(layout.width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(layout.height);
        }
        const crossed = layout.parts.find(
          (part) =>
            Math.max(x1, x2) > part.x + 1 &&
            Math.min(x1, x2) < part.x + part.width - 1 &&
            Math.max(y1, y2) > part.y + 1 &&
            Math.min(y1, y2) < part.y + part.height - 1,
        );
        expect(crossed?.part.id).toBeUndefined();
      }
  });

  test('no two wires share a lane, so that each can be picked', () => {
    const runs = routes.flatMap(({id: wire, points}) =>
      points
        .slice(1)
        .flatMap(([x, y], i) =>
          x === points[i][0] && y !== points[i][1]
            ? [{wire, x, top: Math.min(y, points[i][1]), bottom: Math.max(y, points[i][1])}]
            : [],
        ),
    );
    for (const p of runs)
      for (const q of runs)
        if (p.wire !== q.wire && Math.abs(p.x - q.x) < 0.5)
          expect(p.top >= q.bottom || q.top >= p.bottom, `${p.wire} on ${q.wire}`).toBe(true);
  });
});

test('parts stay where they are whatever is wired', () => {
  const task = readShippedTask('three-safeties');
  const layout = layBoard(task);
  fc.assert(
    fc.property(fc.subarray([...task.answer]), (wires) => {
      expect(layBoard(task)).toEqual(layout);
      expect(routeWires(layout, wires)).toHaveLength(wires.length);
    }),
    {numRuns: 20},
  );
});
