import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {loadUnit} from '../../src/content/load-unit.ts';
import {readShippedUnitText} from '../../src/content/node/read-shipped-unit.ts';
import {smallUnit} from './small-unit.ts';

/** Either a whole unit or at least one error, and every error stands in the file and says how to mend it. */
function isHonest(text: string): boolean {
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

describe('whatever a hand slips into a unit file, loading gives a unit or located errors, and never throws', () => {
  test.each([
    ['the small unit', smallUnit, 250],
    ['the practice panel', readShippedUnitText('practice-panel'), 50],
  ])('one to three slips in %s', (_, text, runs) => {
    fc.assert(
      fc.property(fc.array(slip, {minLength: 1, maxLength: 3}), (slips) =>
        isHonest(slips.reduce(withSlip, text)),
      ),
      {numRuns: runs, seed: 20},
    );
  });

  test('a word of the file put where another stands', () => {
    const words = [...smallUnit.matchAll(/[A-Za-z0-9.]+/g)];
    const index = fc.integer({min: 0, max: words.length - 1});
    fc.assert(
      fc.property(index, index, (i, j) => {
        const {index: at, 0: word} = words[i]!;
        return isHonest(smallUnit.slice(0, at) + words[j]![0] + smallUnit.slice(at + word.length));
      }),
      {numRuns: 200, seed: 21},
    );
  });

  test('a line taken out, doubled or moved', () => {
    const lines = smallUnit.split('\n');
    const index = fc.integer({min: 0, max: lines.length - 1});
    fc.assert(
      fc.property(index, index, fc.boolean(), (i, j, keep) => {
        const rest = keep ? [...lines] : lines.filter((_, k) => k !== i);
        rest.splice(j, 0, ...(i === j ? [] : [lines[i]!]));
        return isHonest(rest.join('\n'));
      }),
      {numRuns: 100, seed: 22},
    );
  });

  test('any text at all', () => {
    fc.assert(fc.property(fc.string({unit: 'binary', maxLength: 60}), isHonest), {
      numRuns: 300,
      seed: 23,
    });
  });
});

test('every value of the small unit, exchanged for one of another type, is refused at its line', () => {
  // each leaf of the file is the value of a key that the schema gives one type to
  const leaves = [
    ...smallUnit.matchAll(/(?<=[{,] ?|^ *(?:- )?)([a-zA-Z]+): (?!\{|\[|$)([^,}\n]+)/gm),
  ];
  expect(leaves.length).toBeGreaterThan(80);
  for (const leaf of leaves) {
    const at = leaf.index + leaf[0].length - leaf[2]!.length;
    const {unit, errors} = loadUnit(
      `${smallUnit.slice(0, at)}[[7]]${smallUnit.slice(at + leaf[2]!.length)}`,
      'unit.yaml',
    );
    const line = smallUnit.slice(0, at).split('\n').length;
    expect(unit, leaf[0]).toBeUndefined();
    expect(errors[0]!.line, leaf[0]).toBe(line);
  }
});
