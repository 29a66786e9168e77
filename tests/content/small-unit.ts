import {formatContentError} from '../../src/content/content-error.ts';
import {loadUnit} from '../../src/content/load-unit.ts';

/** A right unit file, small enough to break by hand. */
export const smallUnit = `id: bell-board
title: Bell board
about: A switch and a relay on 24 V.
frequencyHz: 60
nameplate:
  - {label: Control, value: 24 V}
enclosures:
  - {id: board, title: Board, cover: false, cabinet: GND1.E}
  - {id: loft, title: Loft, cover: true}
runs:
  - {id: loom, title: Loom, picofaradsPerFoot: 15}
  - {id: cable, title: Cable, picofaradsPerFoot: 25}
parts:
  - id: SUP
    kind: supply
    title: Supply
    enclosure: board
    data: {legs: [{terminal: L, volts: 24, degrees: 0}]}
  - {id: GND1, kind: ground-lug, title: Ground lug, enclosure: board}
  - {id: S1, kind: toggle-switch, title: Switch, enclosure: board}
  - id: FS1
    kind: float-switch
    title: Float switch
    enclosure: board
    data: {senses: panInches, opensOn: rise, cutOutInches: 1.25, cutInInches: 0.75}
  - id: K1
    kind: relay
    title: Relay
    enclosure: loft
    data:
      coil: {ratedVolts: 24, sealedVa: 4.5, inrushVa: 9, coilOhms: 45}
      contacts: [{id: bell, terminals: ["2", "4"], form: "NO"}]
      offDelaySeconds: 5
    spare: ["4"]
wires:
  - {id: W1, from: SUP.L, to: S1.1, gauge: 18, feet: 3, colour: red, run: loom}
  - {id: W2, from: S1.2, to: FS1.1, gauge: 18, feet: 2, colour: yellow, run: loom}
  - {id: W3, from: FS1.2, to: K1.1, gauge: 18, feet: 20, colour: yellow, run: cable}
  - {id: W4, from: K1.3, to: SUP.N, gauge: 18, feet: 20, colour: blue, run: cable}
  - {id: W5, from: SUP.L, to: K1.2, gauge: 18, feet: 20, colour: red, run: cable}
  - {id: W6, from: SUP.G, to: GND1.E, gauge: 18, feet: 1, colour: green, run: loom}
circuits:
  - {id: control, title: 24 V control, rails: [SUP.L, SUP.N], railTitles: [R, C], volts: 24}
plant:
  kind: hand
  start: {panInches: 0}
sequences:
  - id: call
    title: Call
    set:
      - {target: S1.position, value: "on"}
      - {target: plant.panInches, value: 0}
    waitSeconds: 2
    steps:
      - title: The switch passes
        check: {volts: {between: [S1.2, SUP.N], atLeast: 20}, closed: S1.contact}
      - title: The relay pulls in
        check: {closed: K1.bell, state: {part: K1, is: pulled-in}}
    complaint: The bell does not ring.
`;

/** Where a mark stands in a broken file, as `line:column`. */
export const placeMark = '▸';

/** The small unit with pieces of its text exchanged. Each piece must be there, once. */
export function broken(...exchanges: readonly (readonly [right: string, wrong: string])[]): string {
  return exchanges.reduce((text, [right, wrong]) => {
    if (text.split(right).length !== 2) throw new Error(`"${right}" is not there just once`);
    return text.replace(right, () => wrong);
  }, smallUnit);
}

/** Loads a file with place marks in it: the places marked, and the errors found, as text. */
export function mistakesIn(marked: string): {places: string[]; errors: string[]} {
  const places: string[] = [];
  let text = '';
  for (const [i, piece] of marked.split(placeMark).entries()) {
    if (i > 0) {
      const lines = text.split('\n');
      places.push(`${lines.length}:${lines.at(-1)!.length + 1}`);
    }
    text += piece;
  }
  return {places, errors: loadUnit(text, 'unit.yaml').errors.map(formatContentError)};
}
