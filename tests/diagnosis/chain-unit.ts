import {loadUnit} from '../../src/content/load-unit.ts';
import type {Unit} from '../../src/content/unit.ts';

/** A 24 V call through so many safeties in series to a relay's coil, as a unit of its own: a chain to look for opens in. */
export function chainUnit(safeties: number): Unit {
  const parts = Array.from(
    {length: safeties},
    (_, i) => `  - id: S${i + 1}
    kind: float-switch
    title: Safety ${i + 1}
    enclosure: board
    data: {senses: panInches, opensOn: rise, cutOutInches: 1.25, cutInInches: 0.75}`,
  );
  const hops = Array.from({length: safeties + 1}, (_, i) => {
    const from = i === 0 ? 'SUP.L' : `S${i}.2`;
    const to = i === safeties ? 'K1.1' : `S${i + 1}.1`;
    return `  - {id: W${i + 1}, from: ${from}, to: ${to}, gauge: 18, feet: 2, colour: yellow, run: loom}`;
  });
  const text = `id: chain
title: Chain
about: Safeties in series.
frequencyHz: 60
nameplate: [{label: Control, value: 24 V}]
enclosures: [{id: board, title: Board, cover: false, cabinet: GND1.E}]
runs: [{id: loom, title: Loom, picofaradsPerFoot: 15}]
parts:
  - {id: SUP, kind: supply, title: Supply, enclosure: board, data: {legs: [{terminal: L, volts: 24, degrees: 0}]}}
  - {id: GND1, kind: ground-lug, title: Ground lug, enclosure: board}
${parts.join('\n')}
  - id: K1
    kind: relay
    title: Relay
    enclosure: board
    data:
      coil: {ratedVolts: 24, sealedVa: 4.5, inrushVa: 9, coilOhms: 45}
      contacts: [{id: main, terminals: ["2", "4"], form: "NO"}]
    spare: ["2", "4"]
wires:
${hops.join('\n')}
  - {id: WC, from: K1.3, to: SUP.N, gauge: 18, feet: 2, colour: blue, run: loom}
  - {id: WG, from: SUP.G, to: GND1.E, gauge: 18, feet: 1, colour: green, run: loom}
circuits: [{id: control, title: 24 V control, rails: [SUP.L, SUP.N], railTitles: [R, C], volts: 24}]
plant: {kind: hand, start: {panInches: 0}}
sequences:
  - id: call
    title: Call
    set: [{target: plant.panInches, value: 0}]
    waitSeconds: 1
    steps: [{title: The relay pulls in, check: {closed: K1.main}}]
    complaint: The relay does not pull in.
`;
  const {unit, errors} = loadUnit(text, 'chain.yaml');
  if (!unit) throw new Error(errors.map((error) => JSON.stringify(error)).join('\n'));
  return unit;
}
