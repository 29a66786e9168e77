import {describe, expect, it} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {drawElevation, glyphSize} from '../../src/pages/units/unit-elevation.ts';
import {Tracks} from '../../src/pages/units/track-lanes.ts';

describe.each(shippedUnitIds())('the elevation of %s', (id) => {
  const unit = readShippedUnit(id);
  const elevation = drawElevation(unit);

  it('shows every part inside its own enclosure, and every wire', () => {
    for (const part of unit.parts) {
      const glyph = elevation.glyphs.find((each) => each.part === part.id);
      const box = elevation.boxes.find((each) => each.id === part.enclosure);
      if (!glyph || !box) throw new Error(`${part.id} is not drawn`);
      expect(glyph.x).toBeGreaterThanOrEqual(box.x);
      expect(glyph.x + glyphSize).toBeLessThanOrEqual(box.x + box.width);
      expect(glyph.y).toBeGreaterThanOrEqual(box.y);
      expect(glyph.y + glyphSize).toBeLessThanOrEqual(box.y + box.height);
    }
    expect(elevation.wires.map((wire) => wire.id)).toEqual(unit.wires.map((wire) => wire.id));
  });

  it('draws wires level or upright and within its edges', () => {
    for (const {points} of elevation.wires) {
      points.forEach(([x, y], index) => {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(elevation.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(elevation.height);
        if (index > 0) expect(points[index - 1][0] === x || points[index - 1][1] === y).toBe(true);
      });
    }
  });

  it('lets no two enclosures overlap', () => {
    elevation.boxes.forEach((a, index) => {
      for (const b of elevation.boxes.slice(index + 1)) {
        const apart =
          a.x + a.width < b.x ||
          b.x + b.width < a.x ||
          a.y + a.height < b.y ||
          b.y + b.height < a.y;
        expect(apart).toBe(true);
      }
    });
  });
});

describe('lanes', () => {
  it('are shared by stretches that do not meet and split between those that do', () => {
    const tracks = new Tracks();
    tracks.put('here', 0, 10, 'W1');
    tracks.put('here', 5, 15, 'W2');
    tracks.put('here', 12, 20, 'W3');
    tracks.assign();
    expect([
      tracks.lane('here', 'W1'),
      tracks.lane('here', 'W2'),
      tracks.lane('here', 'W3'),
    ]).toEqual([0, 1, 0]);
    expect(tracks.count('here')).toBe(2);
    expect(tracks.count('there')).toBe(0);
  });
});
