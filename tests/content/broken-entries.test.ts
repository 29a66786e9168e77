import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {broken, mistakesIn, smallUnit} from './small-unit.ts';

// In the texts below ▸ marks the place that the message must name; it is taken out before loading.

/** The places that the messages name, without what they say. */
const placesOf = (errors: readonly string[]): string[] =>
  errors.map((error) => /^unit\.yaml:(\d+:\d+) /.exec(error)![1]!);

describe('every independent mistake in the syntax of a file is told at once', () => {
  test('a bracket, a quote and a brace left open, in three entries', () => {
    const {places, errors} = mistakesIn(
      broken(
        ['frequencyHz: 60', 'frequencyHz: [60▸'],
        ['title: Ground lug, enclosure: board}', 'title: Ground lug, enclosure: board▸'],
        ['title: Float switch\n', 'title: "Float switch▸\n'],
      ),
    );
    expect(errors).toEqual([
      `unit.yaml:${places[0]} the YAML cannot be read here: its closing ] is missing — line the entry up with its neighbours, and close every bracket`,
      `unit.yaml:${places[1]} the YAML cannot be read here: its closing } is missing — close the quote or bracket, or put the missing mark in`,
      `unit.yaml:${places[2]} the YAML cannot be read here: its closing quote " is missing — close the quote or bracket, or put the missing mark in`,
    ]);
  });

  test('two in one entry, each in a line of its own', () => {
    const {places, errors} = mistakesIn(
      broken(
        ['sealedVa: 4.5, inrushVa: 9, coilOhms: 45}', 'sealedVa: 4.5, inrushVa: 9, coilOhms: 45▸'],
        ['spare: ["4"]', 'spare: ["4"▸'],
      ),
    );
    expect(placesOf(errors)).toEqual(places);
    expect(places).toHaveLength(2);
  });

  test('two steps of one sequence', () => {
    const {places, errors} = mistakesIn(
      broken(
        ['atLeast: 20}, closed: S1.contact}', 'atLeast: 20}, closed: S1.contact▸'],
        ['title: The relay pulls in', "title: 'The relay pulls in▸"],
      ),
    );
    expect(placesOf(errors)).toEqual(places);
    expect(places).toHaveLength(2);
  });

  test('entries out of line, which only the whole file shows', () => {
    const {places, errors} = mistakesIn(
      broken(['  - {id: GND1,', '   ▸- {id: GND1,'], ['  - {id: W4,', ' ▸- {id: W4,']),
    );
    expect(placesOf(errors)).toEqual(places);
    expect(errors[0]).toContain('this dash does not stand below the dashes of its list');
  });

  test('an unclosed text does not swallow the entries below it', () => {
    const {places, errors} = mistakesIn(broken(['title: Bell board\n', 'title: "Bell board▸\n']));
    expect(placesOf(errors)).toEqual(places);
  });
});

describe('around broken entries the rest of the file is still checked', () => {
  test('values and names that are wrong elsewhere are told too, in file order', () => {
    const {places, errors} = mistakesIn(
      broken(
        ['frequencyHz: 60', 'frequencyHz: ▸400'],
        ['{id: S1, kind: toggle-switch, title: Switch, enclosure: board}', '{id: S1, kind: toggle-switch, title: Switch, enclosure: board▸'], // prettier-ignore
        ['enclosure: loft', 'enclosure: ▸attic'],
        ['gauge: 18, feet: 3,', 'gauge: ▸17, feet: 3,'],
        ['colour: blue, run: cable', 'colour: blue, run: ▸trench'],
      ),
    );
    expect(placesOf(errors)).toEqual(places);
    expect(places).toHaveLength(5);
  });

  test('of the part that could not be read nothing more is said, nor of the wires on it', () => {
    const {errors} = mistakesIn(broken(['  - {id: S1, kind', '  - {id: "S1, kind']));
    expect(errors).toHaveLength(1);
    expect(errors[0]).toContain('its closing quote " is missing');
  });

  test('a key that could not be read is not told as missing', () => {
    const {errors} = mistakesIn(broken(['frequencyHz: 60', 'frequencyHz: {60']));
    expect(errors).toHaveLength(1);
  });
});

/** One-line entries and keys of the small unit, by line number from 1. */
const breakable = smallUnit
  .split('\n')
  .map((line, i) => ({line, number: i + 1}))
  .filter(({line}) => /^ {2}- \{.*\}$/.test(line));

const ways: readonly ((line: string) => string)[] = [
  (line) => line.slice(0, -1),
  (line) => line.replace(/: (\w)/, ': "$1'),
  (line) => line.replace(/: (\w)/, ": '$1"),
  (line) => line.replace(/, (\w)/, ', [$1'),
  (line) => line.replace(/, (\w+):/, ', {$1:'),
];

test('any entries broken in any of these ways: one message for each, at its line, and no other', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.nat(breakable.length - 1), {minLength: 1, maxLength: 6}),
      fc.array(fc.nat(ways.length - 1), {minLength: 6, maxLength: 6}),
      (which, how) => {
        const lines = smallUnit.split('\n');
        which.forEach((at, i) => {
          const {line, number} = breakable[at]!;
          lines[number - 1] = ways[how[i]!]!(line);
        });
        const expected = which.map((at) => breakable[at]!.number).sort((a, b) => a - b);
        const told = mistakesIn(lines.join('\n')).errors.map((error) =>
          Number(/^unit\.yaml:(\d+):/.exec(error)![1]),
        );
        expect(told).toEqual(expected);
      },
    ),
    {numRuns: 200, seed: 31},
  );
});
