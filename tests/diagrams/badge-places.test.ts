import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {BADGE_HEIGHT, placeBadges} from '../../src/diagrams/badge-places.ts';
import {labelType} from '../../src/diagrams/drawing.ts';
import {layoutLadder} from '../../src/diagrams/ladder-layout.ts';
import {textWidth} from '../../src/diagrams/text-width.ts';

const drawing = layoutLadder(readShippedUnit('split-heat-pump'), {aspect: 1.6});

describe('what is seen of a part, on the ladder', () => {
  test.each(['K1', 'K2', 'K3', 'CMP', 'M1', 'M2', 'RVS', 'TS', 'DB1'])(
    'the word about %s covers no lettering',
    (part) => {
      const [badge] = placeBadges(drawing, [{part, text: 'pulled in'}]);
      const covered = drawing.labels.filter((label) => {
        const {size, bold} = labelType[label.role];
        const width = textWidth(label.text, size, bold);
        const left = label.x - {start: 0, middle: width / 2, end: width}[label.anchor];
        return (
          left < badge!.x + badge!.width / 2 &&
          left + width > badge!.x - badge!.width / 2 &&
          label.y > badge!.y - BADGE_HEIGHT / 2 &&
          label.y - size * 0.75 < badge!.y + BADGE_HEIGHT / 2
        );
      });
      expect(covered.map(({text}) => text)).toEqual([]);
    },
  );

  test('the lamp of a board stands where the board is fed', () => {
    const [badge] = placeBadges(drawing, [{part: 'DB1', text: 'standing by'}]);
    const fed = drawing.symbols.find(({element}) => element === 'DB1.supply')!;
    expect(Math.abs(badge!.y - fed.y)).toBeLessThan(60);
  });
});
