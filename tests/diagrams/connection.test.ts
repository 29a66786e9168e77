import {existsSync, readFileSync} from 'node:fs';
import {describe, expect, test} from 'vitest';
import {drawConnections} from '../../src/diagrams/connection-drawing.ts';
import {partGeometry} from '../../src/diagrams/connection-part.ts';
import {ROW_PITCH} from '../../src/diagrams/part-geometry.ts';
import {measureWires} from '../../src/diagrams/connection-quality.ts';
import type {Box} from '../../src/diagrams/drawing.ts';
import {
  decisionsOf,
  LAYOUT_VERSION,
  structureHash,
  wirePoints,
  type LayoutFile,
} from '../../src/diagrams/layout-file.ts';
import {labelBox} from '../../src/diagrams/text-width.ts';
import {shippedUnits} from './units.ts';

const layoutPath = (id: string): URL =>
  new URL(`../../content/layouts/${id}.json`, import.meta.url);
const readLayout = (id: string): LayoutFile =>
  JSON.parse(readFileSync(layoutPath(id), 'utf8')) as LayoutFile;

const meet = (a: Box, b: Box, by = 0.5): boolean =>
  Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > by &&
  Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > by;

const within = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x - 0.5 &&
  inner.y >= outer.y - 0.5 &&
  inner.x + inner.width <= outer.x + outer.width + 0.5 &&
  inner.y + inner.height <= outer.y + outer.height + 0.5;

describe.each(shippedUnits.map((unit) => [unit.id, unit] as const))(
  'the committed layout of %s',
  (id, unit) => {
    test('is there, and was made for the unit as it now is: else run npm run layout', () => {
      expect(existsSync(layoutPath(id))).toBe(true);
      expect(readLayout(id)).toMatchObject({
        unit: id,
        version: LAYOUT_VERSION,
        hash: structureHash(unit),
      });
    });

    const file = readLayout(id);
    const drawing = drawConnections(unit, file);
    const boxes = new Map(drawing.parts.map((box) => [box.part, box]));

    test('has every part in its enclosure, every terminal once, every wire', () => {
      expect(Object.keys(file.parts).sort()).toEqual(unit.parts.map((part) => part.id).sort());
      expect(Object.keys(file.wires).sort()).toEqual(unit.wires.map((wire) => wire.id).sort());
      for (const part of unit.parts)
        expect(
          within(
            boxes.get(part.id)!,
            drawing.enclosures.find((box) => box.id === part.enclosure)!,
          ),
          part.id,
        ).toBe(true);
      expect(drawing.terminals.map(({terminal}) => terminal).sort()).toEqual(
        unit.parts.flatMap((part) => part.terminals.map((name) => `${part.id}.${name}`)).sort(),
      );
    });

    test('each wire ends on a lug of its own at both its terminals', () => {
      const decisions = decisionsOf(unit, file);
      for (const wire of unit.wires) {
        const points = wirePoints(file, wire.id);
        for (const [terminal, end] of [
          [wire.from, points[0]!],
          [wire.to, points[points.length - 1]!],
        ] as const) {
          const part = unit.parts.find((it) => terminal.startsWith(`${it.id}.`))!;
          const [x, y] = file.parts[part.id]!;
          const lug = partGeometry(part, decisions[part.id]!).lugs.find(
            (it) => it.wire === wire.id && it.terminal === terminal,
          )!;
          expect(
            Math.hypot(lug.x + x - end.x, lug.y + y - end.y),
            `${wire.id} at ${terminal}`,
          ).toBeLessThan(1);
        }
      }
    });

    test('no wire lies on another or runs through a part, and all run level or upright', () => {
      const wires = unit.wires.map((wire) => ({
        id: wire.id,
        colour: wire.colour,
        points: wirePoints(file, wire.id),
      }));
      for (const {points} of wires)
        points
          .slice(1)
          .forEach((to, i) => expect(to.x === points[i]!.x || to.y === points[i]!.y).toBe(true));
      expect(measureWires(wires, drawing.parts)).toMatchObject({overlaps: 0, through: 0});
    });

    test('no parts, enclosures or letters lie on one another', () => {
      const pairs = <T>(list: readonly T[]): [T, T][] =>
        list.flatMap((a, i) => list.slice(i + 1).map((b): [T, T] => [a, b]));
      expect(pairs(drawing.parts).filter(([a, b]) => meet(a, b))).toEqual([]);
      expect(pairs(drawing.enclosures).filter(([a, b]) => meet(a, b))).toEqual([]);
      const letters = drawing.labels.map((label) => ({
        ...labelBox(label),
        text: label.text,
        role: label.role,
        part: label.part,
      }));
      expect(
        pairs(letters)
          .filter(([a, b]) => meet(a, b))
          .map(([a, b]) => `${a.text} / ${b.text}`),
      ).toEqual([]);
      // names of parts and terminals stay inside their part, names of enclosures inside their enclosure
      for (const letter of letters)
        if (letter.part !== undefined)
          expect(within(letter, boxes.get(letter.part)!), letter.text).toBe(true);
        else
          expect(
            drawing.enclosures.some((box) => within(letter, box)),
            letter.text,
          ).toBe(true);
      for (const letter of letters.filter(({role}) => role === 'enclosure'))
        expect(
          drawing.parts.filter((box) => meet(box, letter)),
          letter.text,
        ).toEqual([]);
    });

    test('shown 1280 pixels wide, terminals are at least 24 pixels apart', () => {
      const scale = Math.min(1, 1280 / drawing.width);
      for (const a of drawing.terminals)
        for (const b of drawing.terminals)
          if (a !== b)
            expect(
              Math.hypot(a.x - b.x, a.y - b.y) * scale,
              `${a.terminal} ${b.terminal}`,
            ).toBeGreaterThanOrEqual(24);
      expect(ROW_PITCH * scale).toBeGreaterThanOrEqual(24);
    });

    test('tells nothing but places: ids, corners, orders and sides', () => {
      expect(Object.keys(file).sort()).toEqual([
        'enclosures',
        'hash',
        'parts',
        'seed',
        'size',
        'unit',
        'version',
        'wires',
      ]);
    });
  },
);

describe('the structure hash', () => {
  const [unit] = shippedUnits as [(typeof shippedUnits)[number]];

  test('changes with a wire, a title or a terminal, and with nothing that is not drawn', () => {
    const hash = structureHash(unit);
    const [first, ...wires] = unit.wires;
    const [part, ...parts] = unit.parts;
    expect(structureHash({...unit, wires})).not.toBe(hash);
    expect(
      structureHash({
        ...unit,
        wires: [{...first!, colour: first!.colour === 'red' ? 'blue' : 'red'}, ...wires],
      }),
    ).not.toBe(hash);
    expect(structureHash({...unit, parts: [{...part!, title: 'Another'}, ...parts]})).not.toBe(
      hash,
    );
    expect(structureHash({...unit, about: 'Another text', plant: {kind: 'hand', start: {}}})).toBe(
      hash,
    );
    expect(structureHash({...unit, wires: [{...first!, feet: 99}, ...wires]})).toBe(hash);
  });

  test('a layout of another unit is refused, with the way to mend it', () => {
    const file = readLayout(unit.id);
    expect(() => drawConnections({...unit, id: 'another'}, file)).toThrow(/npm run layout/);
  });
});

describe('counting crossings', () => {
  const wire = (id: string, colour: string, ...xy: number[]) => ({
    id,
    colour,
    points: Array.from({length: xy.length / 2}, (_, i) => ({x: xy[2 * i]!, y: xy[2 * i + 1]!})),
  });

  test('two wires that cross count once, and once more for one colour', () => {
    expect(
      measureWires([wire('A', 'red', 0, 10, 20, 10), wire('B', 'red', 10, 0, 10, 20)], []),
    ).toMatchObject({crossings: 1, sameColour: 1});
    expect(
      measureWires([wire('A', 'red', 0, 10, 20, 10), wire('B', 'blue', 10, 0, 10, 20)], []),
    ).toMatchObject({crossings: 1, sameColour: 0});
  });

  test('wires side by side on one line are an overlap; a wire over a part is told', () => {
    expect(
      measureWires([wire('A', 'red', 0, 10, 20, 10), wire('B', 'blue', 5, 11, 30, 11)], []),
    ).toMatchObject({overlaps: 1});
    expect(
      measureWires([wire('A', 'red', 0, 10, 20, 10)], [{x: 5, y: 0, width: 8, height: 20}]),
    ).toMatchObject({through: 1});
  });
});
