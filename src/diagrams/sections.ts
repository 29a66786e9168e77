import type {Box, Drawing} from './drawing.ts';

/** A piece of the drawing that is worked at by itself: a circuit of the ladder, an enclosure. */
export interface Section {
  readonly id: string;
  readonly title: string;
  readonly box: Box;
}

/** Room beside a circuit's rails for rung numbers and what is lettered at the rails. */
const BESIDE = 40;
/** Room below them for the ground that a rail may stand on. */
const BELOW = 40;

/** The sections of a drawing, in its own order: enclosures in the connection view, circuits in the ladder. */
export function sectionsOf(drawing: Drawing): Section[] {
  if (drawing.view === 'connection')
    return drawing.enclosures.map(({id, title, x, y, width, height}) => ({
      id,
      title,
      box: {x, y, width, height},
    }));
  const rails = drawing.lines.filter(({kind}) => kind === 'rail').map(({points}) => points);
  return drawing.labels
    .filter(({role}) => role === 'circuit')
    .flatMap((label) => {
      // a circuit's title stands over the head of its left-hand rail; the right-hand one begins level with it
      const left = rails
        .filter(([head]) => head!.y > label.y && Math.abs(head!.x - label.x) < 1)
        .sort(([a], [b]) => a!.y - b!.y)[0];
      const right = rails
        .filter(([head]) => left && Math.abs(head!.y - left[0]!.y) < 1 && head!.x > left[0]!.x + 1)
        .sort(([a], [b]) => a!.x - b!.x)[0];
      if (!left || !right) return [];
      const top = label.y - 20;
      const bottom = Math.max(left[left.length - 1]!.y, right[right.length - 1]!.y) + BELOW;
      const x = left[0]!.x - BESIDE;
      return [
        {
          id: label.text,
          title: label.text,
          box: {x, y: top, width: right[0]!.x + BESIDE - x, height: bottom - top},
        },
      ];
    });
}

/** The section to begin with where the whole sheet would be too small to read: the largest one. */
export const largest = (sections: readonly Section[]): Section | undefined =>
  [...sections].sort((a, b) => b.box.width * b.box.height - a.box.width * a.box.height)[0];
