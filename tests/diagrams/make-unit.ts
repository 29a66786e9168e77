import type {Unit, Wire, WireColour} from '../../src/content/unit.ts';
import type {Element} from '../../src/parts/element.ts';
import {partKinds} from '../../src/parts/part-kinds.ts';

/** A unit from a few lines, for tests: parts as `[id, kind, enclosure, data]`, wires as `W1 K1.A1 TB1.R red`. */
export interface Sketch {
  readonly id?: string;
  readonly enclosures?: readonly string[];
  readonly parts: readonly (readonly [
    id: string,
    kind: string,
    enclosure: string,
    data?: unknown,
    title?: string,
  ])[];
  readonly wires: string;
  readonly circuits: readonly (readonly [
    title: string,
    left: string,
    right: string,
    volts: number,
    titles?: readonly [string, string],
  ])[];
}

export function makeUnit(sketch: Sketch): Unit {
  const boxes = sketch.enclosures ?? [...new Set(sketch.parts.map(([, , enclosure]) => enclosure))];
  const wires = sketch.wires
    .trim()
    .split('\n')
    .map((line): Wire => {
      const [id, from, to, colour] = line.trim().split(/\s+/) as [
        string,
        string,
        string,
        WireColour,
      ];
      return {id, from, to, colour, gauge: 18, feet: 2, run: 'loom'};
    });
  return {
    id: sketch.id ?? 'test-unit',
    title: 'Test unit',
    about: '',
    frequencyHz: 60,
    nameplate: [],
    enclosures: boxes.map((id) => ({id, title: id.replace(/-/g, ' '), cover: true})),
    runs: [{id: 'loom', title: 'Loom', picofaradsPerFoot: 20}],
    parts: sketch.parts.map(([id, kindName, enclosure, data, title]) => {
      const kind = partKinds.get(kindName);
      if (!kind) throw new Error(`No part kind "${kindName}".`);
      const parsed = kind.data.parse(data ?? {});
      return {
        id,
        kind: kindName,
        title: title ?? kind.title,
        enclosure,
        data: parsed,
        terminals: kind.terminals(parsed),
        elements: kind.elements(parsed).map((element) => placed(id, element)),
        modes: [],
        controls: [],
      };
    }),
    wires,
    circuits: sketch.circuits.map(([name, left, right, volts, titles]) => ({
      id: name.toLowerCase().replace(/\W+/g, '-'),
      title: name,
      rails: [left, right],
      railTitles: titles ?? ['L1', 'L2'],
      volts,
    })),
    plant: {kind: 'hand', start: {}},
    sequences: [],
  };
}

function placed(part: string, element: Element): Element {
  const name = (local: string): string => (local === 'earth' ? local : `${part}.${local}`);
  const between = <T extends {id: string; a: string; b: string}>(it: T): T => ({
    ...it,
    id: name(it.id),
    a: name(it.a),
    b: name(it.b),
  });
  if (element.is === 'transformer')
    return {...element, id: name(element.id), windings: element.windings.map(between)};
  if (element.is === 'motor')
    return {
      ...element,
      id: name(element.id),
      main: {a: name(element.main.a), b: name(element.main.b)},
      start: {a: name(element.start.a), b: name(element.start.b)},
    };
  if (element.is === 'threePhaseMotor') {
    const [one, two, three] = element.windings.map(between);
    return {...element, id: name(element.id), windings: [one, two, three]};
  }
  return between(element);
}
