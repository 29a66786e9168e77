import {describe, expect, test} from 'vitest';
import {loadUnit} from '../../src/content/load-unit.ts';
import {broken, mistakesIn, smallUnit} from './small-unit.ts';

// In the texts below ▸ marks the place that the message must name; it is taken out before loading.

test('a right file loads without errors', () => {
  const {unit, errors} = loadUnit(smallUnit, 'unit.yaml');
  expect(errors).toEqual([]);
  expect(unit?.wires).toHaveLength(6);
  expect(unit?.parts.map((part) => part.id)).toEqual(['SUP', 'GND1', 'S1', 'FS1', 'K1']);
});

test('elements are placed: ids and terminals carry the part, earth stays earth', () => {
  const {unit} = loadUnit(smallUnit, 'unit.yaml');
  const elements = unit!.parts.flatMap((part) => part.elements);
  expect(elements.find((element) => element.id === 'K1.coil')).toMatchObject({
    a: 'K1.1',
    b: 'K1.3',
  });
  expect(elements.find((element) => element.id === 'SUP.electrode')).toMatchObject({
    a: 'SUP.N',
    b: 'earth',
  });
});

test('data left out of the file take their defaults', () => {
  const {unit} = loadUnit(smallUnit, 'unit.yaml');
  expect(unit!.parts.find((part) => part.id === 'FS1')!.data).toMatchObject({reset: 'auto'});
  expect(unit!.parts.find((part) => part.id === 'S1')!.data).toEqual({});
});

describe('one mistake gives one message, with its place and its mend', () => {
  const cases: readonly (readonly [title: string, right: string, wrong: string, says: string])[] = [
    [
      'malformed YAML: a bracket left open',
      'rails: [SUP.L, SUP.N], railTitles: [R, C], volts: 24}',
      'rails: [SUP.L, SUP.N, railTitles: [R, C], volts: 24▸}',
      'the YAML cannot be read here',
    ],
    [
      'malformed YAML: a tab',
      '    title: Relay\n',
      '▸\ttitle: Relay\n',
      'the YAML cannot be read here: tabs are not allowed as indentation — indent with spaces',
    ],
    [
      'a duplicate key',
      'gauge: 18, feet: 3, colour: red',
      'gauge: 18, feet: 3, ▸gauge: 16, colour: red',
      'the key `gauge` stands twice (first on line 36) — keep one of the two',
    ],
    [
      'an unknown part kind',
      'kind: relay',
      'kind: ▸realy',
      'there is no part kind "realy" — did you mean "relay"?',
    ],
    [
      'a part kind that is like no other',
      'kind: relay',
      'kind: ▸zzzzzzzzzzzz',
      'there is no part kind "zzzzzzzzzzzz" — use one of breaker, ',
    ],
    [
      'a part without a kind',
      '{id: S1, kind: toggle-switch,',
      '▸{id: S1,',
      '`kind` is missing — add `kind`',
    ],
    [
      'a part with its kind misspelt',
      '{id: S1, kind: toggle-switch,',
      '{id: S1, ▸knid: toggle-switch,',
      'the key `knid` is not known here — write `kind`',
    ],
    [
      'a wire to a terminal that the part does not have',
      'to: K1.1,',
      'to: ▸K1.7,',
      'K1 has no terminal 7 — K1 has 1, 3, 2, 4; did you mean K1.1?',
    ],
    [
      'a wire to a part without naming a terminal',
      'to: S1.1,',
      'to: ▸S1,',
      'S1 names a part but no terminal — write one of S1.1, S1.2',
    ],
    [
      'a wire to nowhere',
      'to: SUP.N,',
      'to: ▸XSUP.N,',
      'there is no part XSUP — did you mean SUP?',
    ],
    [
      'a wire with no far end',
      '{id: W6, from: SUP.G, to: GND1.E,',
      '▸{id: W6, from: SUP.G,',
      '`to` is missing — add `to`',
    ],
    [
      'a wire from a terminal to itself',
      'from: S1.2, to: FS1.1',
      'from: S1.2, to: ▸S1.2',
      'this wire begins and ends at S1.2 — name the terminal at its other end',
    ],
    [
      'two parts with one id',
      '{id: S1, kind',
      '{id: ▸GND1, kind',
      'two parts have the id GND1 (the first on line 19) — give one of them another id',
    ],
    [
      'two wires with one id',
      '{id: W5,',
      '{id: ▸W2,',
      'two wires have the id W2 (the first on line 37) — give one of them another id',
    ],
    [
      'two enclosures with one id',
      '{id: loft,',
      '{id: ▸board,',
      'two enclosures have the id board (the first on line 8) — give one of them another id',
    ],
    [
      'a part in an unknown enclosure',
      'enclosure: loft',
      'enclosure: ▸lofft',
      'there is no enclosure lofft — did you mean loft?',
    ],
    [
      'a wire in an unknown run',
      'colour: blue, run: cable',
      'colour: blue, run: ▸cabel',
      'there is no run cabel — did you mean cable?',
    ],
    [
      'a wire size that is not made',
      'gauge: 18, feet: 3,',
      'gauge: ▸15, feet: 3,',
      '`gauge` is 15, expected one of 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22 — the nearest is',
    ],
    [
      'an unknown colour',
      'colour: blue',
      'colour: ▸bleu',
      '`colour` is "bleu", expected one of black, white, red',
    ],
    [
      'a length out of range',
      'feet: 3,',
      'feet: ▸-3,',
      '`feet` is -3, expected more than 0 — change it to that',
    ],
    [
      'a value of a part out of range',
      'sealedVa: 4.5',
      'sealedVa: ▸4500',
      '`sealedVa` is 4500, expected at most 500 — change it to that',
    ],
    [
      'a coil that draws more sealed than open',
      'sealedVa: 4.5',
      'sealedVa: ▸12',
      'sealedVa is not below inrushVa — an open armature draws more than a sealed one',
    ],
    [
      'cut-out and cut-in the wrong way round',
      'data: {senses: panInches, opensOn: rise, cutOutInches: 1.25, cutInInches: 0.75}',
      'data: ▸{senses: panInches, opensOn: rise, cutOutInches: 0.75, cutInInches: 1.25}',
      'cut-out and cut-in are the wrong way round — opening on rise the cut-in is lower, on fall higher',
    ],
    [
      'a part with two terminals of one name',
      'data: {legs: [{terminal: L, volts: 24, degrees: 0}]',
      'data: ▸{legs: [{terminal: L, volts: 24, degrees: 0}, {terminal: L, volts: 24, degrees: 180}]',
      'SUP has two terminals L — give one of them another name',
    ],
    [
      'a number where text belongs',
      'terminals: ["2", "4"]',
      'terminals: ["2", ▸4]',
      'entry 2 of `terminals` is 4, expected text — put quotes around it: "4"',
    ],
    [
      'text where a number belongs',
      'coilOhms: 45',
      'coilOhms: ▸"45 ohms"',
      '`coilOhms` is "45 ohms", expected a number — change it to that',
    ],
    [
      'a misspelt key of a wire',
      'feet: 3,',
      '▸foot: 3,',
      'the key `foot` is not known here — write `feet`',
    ],
    [
      'a misspelt optional key of a part',
      'offDelaySeconds: 5',
      '▸offDelaySecond: 5',
      'the key `offDelaySecond` is not known here — write `offDelaySeconds`',
    ],
    [
      'an unknown key at the top',
      'frequencyHz: 60',
      'frequencyHz: 60\n▸wibble: 3',
      'the key `wibble` is not known here — take it out, or look for the right name',
    ],
    [
      'a comma inside braces that cuts a text in two',
      'value: 24 V}',
      'value: 24 V, ▸40 VA class 2}',
      'the key `40 VA class 2` is not known here — put quotes around a text that has a comma in it',
    ],
    [
      'a missing key of a part’s data',
      'coil: {ratedVolts: 24, sealedVa: 4.5, ',
      'coil: ▸{ratedVolts: 24, ',
      '`sealedVa` is missing — add `sealedVa`: a number',
    ],
    [
      'rails on an unknown terminal',
      'rails: [SUP.L, SUP.N]',
      'rails: [SUP.L, ▸SUP.M]',
      'SUP has no terminal M — SUP has L, N, G; did you mean SUP.L?',
    ],
    [
      'a cabinet bonded to an unknown terminal',
      'cabinet: GND1.E',
      'cabinet: ▸GND1.X',
      'GND1 has no terminal X — GND1 has E; did you mean GND1.E?',
    ],
    [
      'a cabinet bonded to a lug of another enclosure',
      'title: Loft, cover: true}',
      'title: Loft, cover: true, cabinet: ▸GND1.E}',
      'GND1.E is bonded to loft but lies in board — name a ground lug of this enclosure',
    ],
    [
      'a step that checks an unknown part',
      'state: {part: K1,',
      'state: {part: ▸K2,',
      'there is no part K2 — did you mean K1?',
    ],
    [
      'a step that checks an unknown contact',
      'closed: S1.contact',
      'closed: ▸S1.contatc',
      'S1 has no contact contatc — did you mean S1.contact?',
    ],
    [
      'a step that checks a coil as if it were a contact',
      'closed: K1.bell',
      'closed: ▸K1.coil',
      'K1 has no contact coil — did you mean K1.bell?',
    ],
    [
      'a step that measures at an unknown terminal',
      'between: [S1.2, SUP.N]',
      'between: [▸S1.3, SUP.N]',
      'S1 has no terminal 3 — S1 has 1, 2; did you mean S1.1?',
    ],
    [
      'a step that clamps an unknown wire',
      'check: {closed: K1.bell,',
      'check: {amps: {through: ▸W9, atLeast: 1}, closed: K1.bell,',
      'there is no wire W9 — did you mean W1?',
    ],
    [
      'a step that reads a plant value that the unit does not start with',
      'check: {closed: K1.bell,',
      'check: {plant: {value: ▸roomDegF, atMost: 80}, closed: K1.bell,',
      'the plant does not start with roomDegF — there are plant.panInches',
    ],
    [
      'a step whose bounds exclude each other',
      'between: [S1.2, SUP.N], atLeast: 20}',
      'between: [S1.2, SUP.N], atLeast: 20, atMost: 2}',
      'atLeast is more than atMost, so the check can never hold — swap them',
    ],
    [
      'a step that asks for an unknown state',
      'is: pulled-in',
      'is: ▸puled-in',
      '`is` is "puled-in", expected one of running, humming',
    ],
    [
      'a step that checks nothing',
      'check: {closed: K1.bell, state: {part: K1, is: pulled-in}}',
      'check: ▸{}',
      'this step checks nothing — add volts, amps, plant, closed, open or state',
    ],
    [
      'a voltage check without a bound',
      '{between: [S1.2, SUP.N], atLeast: 20}',
      '▸{between: [S1.2, SUP.N]}',
      'this check asks for no volts — add atLeast or atMost',
    ],
    [
      'a control that the part does not have',
      'target: S1.position',
      'target: ▸S1.postion',
      'S1 has no control postion — did you mean S1.position?',
    ],
    [
      'a control set to something impossible',
      'value: "on"',
      'value: ▸"up"',
      'S1.position is set to "up", expected one of off, on — set it to that',
    ],
    [
      'a plant value that the unit does not start with',
      'target: plant.panInches',
      'target: ▸plant.panInch',
      'the plant does not start with panInch — did you mean plant.panInches?',
    ],
    [
      'a switch that senses what the plant does not start with',
      'senses: panInches',
      'senses: ▸suctionPsig',
      'FS1 senses suctionPsig, which the plant does not start with — add suctionPsig under plant: start:',
    ],
    [
      'a start value of the plant misspelt',
      'start: {panInches: 0}',
      'start: {▸panInch: 0}',
      'the key `panInch` is not known here — write `panInches`',
    ],
    [
      'a switch that senses what no plant has',
      'senses: panInches',
      'senses: ▸panInchs',
      '`senses` is "panInchs", expected one of roomDegF',
    ],
    [
      'a wire on a terminal that is kept as a spare',
      'spare: ["4"]',
      'spare: [▸"2"]',
      'K1.2 is kept as a spare, but a wire lands on it — take it off the list of spares',
    ],
    [
      'an id that is not one',
      '{id: W1,',
      '{id: ▸w-1,',
      '`id` is "w-1", expected a capital letter, then letters or digits',
    ],
    [
      'an alias',
      'colour: blue',
      'colour: ▸*sea',
      'the alias *sea is not used in unit files — write the value out',
    ],
    [
      'a second document in the file',
      'sequences:\n',
      '▸---\nsequences:\n',
      'the YAML cannot be read here: a second document begins — keep one unit in a file',
    ],
  ];

  test.each(cases)('%s', (_, right, wrong, says) => {
    const {places, errors} = mistakesIn(broken([right, wrong]));
    expect(errors).toHaveLength(1);
    expect(errors[0]).toContain(says);
    expect(errors[0]).toMatch(/^unit\.yaml:\d+:\d+ .+ — .+$/);
    if (places.length > 0) expect(errors[0]).toMatch(new RegExp(`^unit\\.yaml:${places[0]} `));
  });

  test('a part left out: told once, with the lines of all its uses', () => {
    const text = smallUnit.replace(/ {2}- \{id: S1,.*\n/, '');
    const {errors} = mistakesIn(text);
    expect(errors).toEqual([
      'unit.yaml:35:31 there is no part S1 (also on lines 36, 50, 55) — did you mean FS1?',
    ]);
  });

  test('a part whose id was taken from its neighbour: only the doubled id is told', () => {
    const {places, errors} = mistakesIn(broken(['id: K1\n', 'id: ▸FS1\n']));
    expect(errors).toEqual([
      `unit.yaml:${places[0]} two parts have the id FS1 (the first on line 21) — give one of them another id`,
    ]);
  });

  test('a part whose data are wrong: nothing is said of the wires on it', () => {
    const {errors} = mistakesIn(broken(['contacts: [{id: bell,', 'contacts: [{idd: bell,']));
    expect(errors).toEqual(['unit.yaml:32:19 the key `idd` is not known here — write `id`']);
  });

  test('an empty file', () => {
    expect(mistakesIn('').errors).toEqual([
      'unit.yaml:1:1 the file is empty, expected a map of keys — change it to that',
    ]);
  });

  test('a file that is no map', () => {
    expect(mistakesIn('- K1\n- K2\n').errors).toEqual([
      'unit.yaml:1:1 the file is a list of 2, expected a map of keys — change it to that',
    ]);
  });
});

test('all mistakes of a file are told at once, in file order', () => {
  const {places, errors} = mistakesIn(
    broken(
      ['frequencyHz: 60', 'frequencyHz: ▸400'],
      ['kind: float-switch', 'kind: ▸flot-switch'],
      ['enclosure: loft', 'enclosure: ▸attic'],
      ['inrushVa: 9,', 'inrushVa: ▸0,'],
      ['gauge: 18, feet: 3,', 'gauge: ▸17, feet: 3, ▸feet: 4,'],
      ['from: S1.2', 'from: ▸S1.9'],
      ['colour: blue, run: cable', 'colour: ▸mauve, run: ▸trench'],
      ['railTitles: [R, C]', '▸railTitle: [R, C]'],
      ['value: "on"', 'value: ▸"up"'],
      ['part: K1,', 'part: ▸KX9,'],
    ),
  );
  expect(errors.map((error) => /^unit\.yaml:(\d+:\d+) /.exec(error)![1])).toEqual(places);
  expect(places).toHaveLength(12);
});
