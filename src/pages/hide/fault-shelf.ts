import type {Part, Unit, Wire} from '../../content/unit.ts';
import type {CatalogueEntry} from '../desk/desk-messages.ts';

/** One thing that can be broken and the ways in which it can: a line of the hide page's list. */
export interface FaultSiteLine {
  /** `part:K1`, `wire:W12`, `plant`. */
  readonly id: string;
  readonly title: string;
  /** What it is, in small beside the title: the kind's title, or where a wire runs. */
  readonly about: string;
  readonly colour?: Wire['colour'];
  readonly section: FaultSection;
  /** Enclosures that it lies in. */
  readonly enclosures: readonly string[];
  readonly modes: readonly {
    readonly fault: string;
    readonly label: string;
    readonly name: string;
  }[];
}

export type FaultSection = 'parts' | 'wires' | 'air';

export const sections: readonly {readonly id: FaultSection; readonly title: string}[] = [
  {id: 'parts', title: 'Parts'},
  {id: 'wires', title: 'Wires'},
  {id: 'air', title: 'Air and refrigerant'},
];

/** Orders a unit's catalogue for reading: parts, wires, then the plant, each with its ways to fail on one line. */
export function faultLines(unit: Unit, catalogue: readonly CatalogueEntry[]): FaultSiteLine[] {
  const enclosureOf = new Map(unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const at = (terminal: string): string => enclosureOf.get(terminal.split('.')[0]) ?? '';
  const partLines = unit.parts.map((part): FaultSiteLine => ({
    id: `part:${part.id}`,
    title: part.id,
    about: part.title,
    section: 'parts',
    enclosures: [part.enclosure],
    modes: catalogue
      .filter(({site}) => site.on === 'part' && site.part === part.id)
      .map(({id, mode, name}) => ({fault: id, label: partModeLabel(part, mode), name})),
  }));
  const wireLines = unit.wires.map((wire): FaultSiteLine => ({
    id: `wire:${wire.id}`,
    title: wire.id,
    about: `${wire.from} to ${wire.to}`,
    colour: wire.colour,
    section: 'wires',
    enclosures: [...new Set([at(wire.from), at(wire.to)])],
    modes: catalogue
      .filter(
        ({site}) =>
          (site.on === 'wire' && site.wire === wire.id) ||
          (site.on === 'wires' && site.wires[0] === wire.id),
      )
      .map(({id, mode, name, site}) => ({
        fault: id,
        label: wireModeLabel(mode, site.on === 'wires' ? site.wires[1] : undefined),
        name,
      })),
  }));
  const plantModes = catalogue
    .filter(({site}) => site.on === 'plant')
    .map(({id, name}) => ({fault: id, label: name, name}));
  const plantLine: FaultSiteLine = {
    id: 'plant',
    title: 'Air and refrigerant',
    about: 'Wrong outside the wiring',
    section: 'air',
    enclosures: [],
    modes: plantModes,
  };
  return [...partLines, ...wireLines, plantLine].filter(({modes}) => modes.length > 0);
}

/**
 * What is left after the search words, the section and the enclosure. A way to fail is left where every word is found in
 * it or in its line: "contactor weld" leaves the one line with the one way.
 */
export function findLines(
  lines: readonly FaultSiteLine[],
  wanted: {
    readonly words: string;
    readonly section?: FaultSection;
    readonly enclosure?: string;
    readonly site?: string;
  },
): FaultSiteLine[] {
  if (wanted.site) return lines.filter(({id}) => id === wanted.site);
  const words = wanted.words.toLowerCase().split(/\s+/).filter(Boolean);
  return lines
    .filter(
      ({section, enclosures}) =>
        (!wanted.section || section === wanted.section) &&
        (!wanted.enclosure || enclosures.includes(wanted.enclosure)),
    )
    .map((line) => ({
      ...line,
      modes: line.modes.filter(({label, name}) => {
        const text = [line.title, line.about, line.colour ?? '', label, name]
          .join(' ')
          .toLowerCase();
        return words.every((word) => text.includes(word));
      }),
    }))
    .filter(({modes}) => modes.length > 0);
}

function partModeLabel(part: Part, mode: string): string {
  return sentence(part.modes.find(({id}) => id === mode)?.name ?? mode);
}

function wireModeLabel(mode: string, other: string | undefined): string {
  switch (mode) {
    case 'open':
      return 'Open';
    case 'high-resistance':
      return 'High resistance';
    case 'short':
      return `Shorted to ${other ?? 'its neighbour'}`;
    case 'earth':
      return 'Shorted to the cabinet';
    default:
      return sentence(mode);
  }
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
