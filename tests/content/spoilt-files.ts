import fc from 'fast-check';
import {loadUnit} from '../../src/content/load-unit.ts';

/** Either a whole unit or at least one error, and every error stands in the file and says how to mend it. */
export function isHonest(text: string): boolean {
  const {unit, errors} = loadUnit(text, 'unit.yaml');
  if (unit) return errors.length === 0 && unit.parts.length > 0 && unit.wires.length > 0;
  const lines = text.split('\n');
  return (
    errors.length > 0 &&
    errors.every(
      ({line, column, message, mend}) =>
        line >= 1 &&
        line <= lines.length &&
        column >= 1 &&
        column <= lines[line - 1]!.length + 1 &&
        message.length > 0 &&
        mend.length > 0,
    )
  );
}

/** Pieces that break YAML, schemas and names in their own ways. */
const scraps = fc.constantFrom(
  '', ' ', '\n', '\t', ':', ': ', '- ', '{', '}', '[', ']', ',', '"', "'", '#', '&a ', '*a ', '!x ', '|', '>',
  '? ', '<<: ', '---\n', '...\n', '%', '@', '~', '-1', '1e999', '.nan', '0x10', 'null', '[]', '{}', 'K1', 'K1.', '.A1',
  '__proto__', 'constructor', 'toString', 'earth', 'µ°▸',
); // prettier-ignore

/** A cut of the text at `at` (0–1) of `length` characters, with a scrap put in its place. */
const slip = fc.record({
  at: fc.double({min: 0, max: 1, noNaN: true}),
  length: fc.integer({min: 0, max: 12}),
  scrap: scraps,
});

function withSlip(
  text: string,
  {at, length, scrap}: {at: number; length: number; scrap: string},
): string {
  const from = Math.floor(at * text.length);
  return text.slice(0, from) + scrap + text.slice(from + length);
}

/** Ways in which a hand, an editor or a disk spoils a file; each makes spoilt texts of a sound one. */
export const spoilings: Readonly<Record<string, (text: string) => fc.Arbitrary<string>>> = {
  'one to three slips': (text) =>
    fc.array(slip, {minLength: 1, maxLength: 3}).map((slips) => slips.reduce(withSlip, text)),
  'a word put where another stands': (text) => {
    const words = [...text.matchAll(/[A-Za-z0-9.]+/g)];
    const index = fc.integer({min: 0, max: words.length - 1});
    return fc.tuple(index, index).map(([i, j]) => {
      const {index: at, 0: word} = words[i]!;
      return text.slice(0, at) + words[j]![0] + text.slice(at + word.length);
    });
  },
  'a line taken out, doubled or moved': (text) => {
    const lines = text.split('\n');
    const index = fc.integer({min: 0, max: lines.length - 1});
    return fc.tuple(index, index, fc.boolean()).map(([i, j, keep]) => {
      const rest = keep ? [...lines] : lines.filter((_, k) => k !== i);
      rest.splice(j, 0, ...(i === j ? [] : [lines[i]!]));
      return rest.join('\n');
    });
  },
  'a file cut short': (text) => fc.nat(text.length).map((length) => text.slice(0, length)),
  'any text at all': () => fc.string({unit: 'binary', maxLength: 60}),
};
