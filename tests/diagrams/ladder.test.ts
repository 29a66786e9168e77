import {describe, expect, test} from 'vitest';
import type {Box, Drawing} from '../../src/diagrams/drawing.ts';
import {planLadder} from '../../src/diagrams/ladder-plan.ts';
import {edgesIn} from '../../src/diagrams/series-parallel.ts';
import {layoutLadder} from '../../src/diagrams/ladder-layout.ts';
import {symbols} from '../../src/diagrams/symbols.ts';
import {labelBox} from '../../src/diagrams/text-width.ts';
import {isHidden, readWiring} from '../../src/diagrams/wiring.ts';
import {drawnJoints, wiredJoints} from './drawn-connections.ts';
import {bridgeUnit, shippedUnits, spareUnit} from './units.ts';

const wide = {aspect: 1.6};
const everyUnit = [...shippedUnits, bridgeUnit, spareUnit];

const sources = new Set(['acSource']);

/** Boxes of letters, symbols and terminals that overlap by more than half a unit. */
function overlaps(drawing: Drawing): string[] {
  const boxes: (Box & {name: string; kind: string})[] = [
    ...drawing.labels.map((label) => ({
      ...labelBox(label),
      name: `"${label.text}"`,
      kind: 'label',
    })),
    ...drawing.symbols.map(({element, symbol, x, y, width}) => {
      const shape = symbols[symbol];
      const half = symbol === 'module' ? (width ?? 48) / 2 : Math.min(15, (width ?? 48) / 2);
      return {
        x: x - half,
        y: y - shape.above,
        width: 2 * half,
        height: shape.above + shape.below,
        name: element ?? symbol,
        kind: 'symbol',
      };
    }),
    ...drawing.terminals.map(({terminal, x, y, width, height}) => ({
      x: x - width / 2,
      y: y - height / 2,
      width,
      height,
      name: terminal,
      kind: 'terminal',
    })),
    ...drawing.flags.map(({terminal, x, y, width, points}) => ({
      x: points === 'right' ? x - width : x,
      y: y - 8.5,
      width,
      height: 17,
      name: `flag ${terminal}`,
      kind: 'flag',
    })),
  ];
  const found: string[] = [];
  boxes.forEach((a, i) =>
    boxes.slice(i + 1).forEach((b) => {
      if (a.kind === 'flag' || b.kind === 'flag') {
        if (a.kind === 'label' || b.kind === 'label') return; // the flag's own letters
      }
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      if (across > 0.5 && down > 0.5) found.push(`${a.kind} ${a.name} on ${b.kind} ${b.name}`);
    }),
  );
  return found;
}

describe.each(everyUnit.map((unit) => [unit.title + ' ' + unit.id, unit] as const))(
  'the ladder of %s',
  (_, unit) => {
    const drawing = layoutLadder(unit, wide);
    const wiring = readWiring(unit);
    const grounds = new Set(
      unit.parts.filter(({kind}) => kind === 'ground-lug').map(({id}) => `${id}.E`),
    );

    test('every element stands on exactly one rung; only what feeds the rails is drawn for each circuit', () => {
      const drawn = drawing.symbols.flatMap(({element}) => element ?? []);
      // breaker and disconnect of three lines stand in the feed of each pair
      const feeding = new Set(
        planLadder(unit).circuits.flatMap(({header}) =>
          header ? edgesIn(header).map(({edge}) => edge.id) : [],
        ),
      );
      for (const edge of wiring.edges) {
        const times = drawn.filter((id) => id === edge.id).length;
        if (sources.has(edge.element.is) || feeding.has(edge.id))
          expect(times).toBeGreaterThanOrEqual(1);
        else expect(times, edge.id).toBe(1);
      }
      expect(new Set(drawn)).toEqual(new Set(wiring.edges.map(({id}) => id)));
    });

    test('every terminal that an element ends at is a test point', () => {
      const marks = new Set(drawing.terminals.map(({terminal}) => terminal));
      for (const {a, b} of wiring.edges)
        for (const end of [a, b])
          if (!isHidden(end) && end !== 'earth') expect(marks).toContain(end);
    });

    test('joins what the wires join, and nothing else', () => {
      const marks = [...new Set(drawing.terminals.map(({terminal}) => terminal))].filter(
        (it) => !grounds.has(it),
      );
      const drawn = drawnJoints(drawing);
      const wired = wiredJoints(wiring);
      for (const a of marks)
        for (const b of marks) expect(drawn(a, b), `${a} and ${b}`).toBe(wired(a, b));
    });

    test("taking a wire's drawn lines away separates what taking the wire away separates", () => {
      const marks = [...new Set(drawing.terminals.map(({terminal}) => terminal))].filter(
        (it) => !grounds.has(it),
      );
      expect(drawing.wires.length).toBeGreaterThan(0);
      for (const {id} of drawing.wires) {
        if (wiring.groundWires.has(id)) continue; // the nets of a ladder leave the ground out
        const drawn = drawnJoints(drawing, id);
        const wired = wiredJoints(wiring, id);
        const wrong = marks.flatMap((a) =>
          marks.filter((b) => drawn(a, b) !== wired(a, b)).map((b) => `${id}: ${a} ${b}`),
        );
        expect(wrong).toEqual([]);
      }
    });

    test('draws no equipment ground, but for a wire that grounds a rail', () => {
      const rails = unit.circuits.flatMap((circuit) => circuit.rails);
      for (const {id} of drawing.wires) {
        const wire = unit.wires.find((it) => it.id === id)!;
        if (wiring.groundWires.has(id))
          expect(
            rails.some((rail) => rail === wire.from || rail === wire.to),
            id,
          ).toBe(true);
      }
    });

    test('no letters, symbols or terminals lie on one another', () => {
      expect(overlaps(drawing)).toEqual([]);
    });

    test('no line runs through letters', () => {
      const lines = [
        ...drawing.lines.map(({points}) => points),
        ...drawing.wires.flatMap(({paths}) => paths),
      ];
      const crossed = drawing.labels.flatMap((label) => {
        const box = labelBox(label);
        return lines.some((points) => {
          const [from, to] = [points[0]!, points[points.length - 1]!];
          const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
          const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
          return (
            right > box.x + 0.5 &&
            left < box.x + box.width - 0.5 &&
            bottom > box.y + 0.5 &&
            top < box.y + box.height - 0.5
          );
        })
          ? [label.text]
          : [];
      });
      expect(crossed).toEqual([]);
    });

    test('terminals of one row are at least 24 apart', () => {
      for (const a of drawing.terminals)
        for (const b of drawing.terminals)
          if (a !== b)
            expect(
              Math.hypot(a.x - b.x, a.y - b.y),
              `${a.terminal} ${b.terminal}`,
            ).toBeGreaterThanOrEqual(24);
    });

    test('is the same each time', () => {
      expect(JSON.stringify(layoutLadder(unit, wide))).toBe(JSON.stringify(drawing));
    });

    test('nothing lies outside the sheet', () => {
      for (const {x, y} of drawing.terminals) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(drawing.width);
        expect(y).toBeLessThan(drawing.height);
      }
      for (const label of drawing.labels) {
        const box = labelBox(label);
        expect(box.x, label.text).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width, label.text).toBeLessThanOrEqual(drawing.width);
      }
    });
  },
);

describe('reading a ladder from left to right', () => {
  const panel = shippedUnits.find(({id}) => id === 'practice-panel')!;
  const drawing = layoutLadder(panel, wide);
  const at = (element: string) => drawing.symbols.find((symbol) => symbol.element === element)!;

  test('the call passes the switch, the float, the high and the low pressure and ends at the coil', () => {
    const chain = ['S1.contact', 'FS1.contact', 'HPS.contact', 'LPS.contact', 'K1.coil'].map(at);
    expect(new Set(chain.map(({y}) => y)).size).toBe(1);
    const xs = chain.map(({x}) => x);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
  });

  test('loads stand at the right-hand rail, one above another', () => {
    expect(at('LT1.filament').x).toBeCloseTo(at('T1.primary').x, 0);
  });

  test('the fuse stands in the feed of the rail that it protects', () => {
    expect(at('F1.link').y).toBe(at('T1.secondary').y);
    expect(at('F1.link').y).toBeLessThan(at('S1.contact').y);
  });

  test('coil and contact name each other by rung', () => {
    const rung = (element: string) => {
      const {y} = at(element);
      return drawing.labels.find((label) => label.role === 'rung' && Math.abs(label.y - y) < 6)!
        .text;
    };
    const notes = drawing.labels.filter(({role}) => role === 'reference');
    const under = (element: string) => {
      const {x, y} = at(element);
      return notes.find((note) => Math.abs(note.x - x) < 12 && note.y > y && note.y - y < 40)?.text;
    };
    expect(under('K1.coil')).toBe(`(${rung('K1.lamp')})`);
    expect(under('K1.lamp')).toBe(`(${rung('K1.coil')})`);
  });

  test('circuits stand side by side on a wide sheet and one under another on a narrow one', () => {
    const pump = shippedUnits.find(({id}) => id === 'split-heat-pump')!;
    const [landscape, portrait] = [
      layoutLadder(pump, {aspect: 1.6}),
      layoutLadder(pump, {aspect: 0.5}),
    ];
    expect(portrait.width).toBeLessThan(landscape.width * 0.6);
    expect(portrait.height).toBeGreaterThan(landscape.height * 1.5);
  });
});

describe('a common that is grounded', () => {
  test('its rail ends in the ground wire and the earth sign', () => {
    const panel = shippedUnits.find(({id}) => id === 'practice-panel')!;
    const drawing = layoutLadder(panel, wide);
    const bond = drawing.wires.find(({id}) => id === 'W22')!;
    const rail = drawing.lines.find(({kind, terminal}) => kind === 'rail' && terminal === 'TB2.C')!;
    expect(bond.paths[0]![0]).toEqual(rail.points[1]);
    expect(drawing.symbols.find(({symbol}) => symbol === 'earth')!.part).toBe('GND2');
    expect(drawing.terminals.map(({terminal}) => terminal)).toContain('GND2.E');
  });
});

describe('what is not series-parallel', () => {
  test('a bridge is drawn on a rung of its own, tied by flags to terminals drawn elsewhere', () => {
    const drawing = layoutLadder(bridgeUnit, wide);
    expect(drawing.flags).toHaveLength(2);
    const marks = new Set(drawing.terminals.map(({terminal}) => terminal));
    for (const flag of drawing.flags) expect(marks).toContain(flag.terminal);
    const bridge = drawing.symbols.find(({element}) => element === 'S3.contact')!;
    for (const flag of drawing.flags) expect(flag.y).toBe(bridge.y);
  });

  test('a spare contact is drawn with its terminals and joined to nothing', () => {
    const drawing = layoutLadder(spareUnit, wide);
    const spare = drawing.symbols.find(({element}) => element === 'K1.spare')!;
    const own = drawing.terminals.filter(({y}) => y === spare.y).map(({terminal}) => terminal);
    expect(own).toEqual(['K1.5', 'K1.6']);
  });
});
