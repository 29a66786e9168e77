import type {Part} from '../content/unit.ts';
import type {SymbolName} from './symbols.ts';
import {localName, type Edge} from './wiring.ts';

/** How one element is shown: its symbol, what is written in it, above it and below it. */
export interface ElementSymbol {
  readonly symbol: SymbolName;
  /** Bold, above: the reference designator. */
  readonly tag: string;
  /** Above the tag: what a technician calls it. */
  readonly caption: string;
  /** Below: a rating. */
  readonly value: string;
  /** Written inside the symbol (coil circles, modules). */
  readonly inside?: string;
  /** Loads go to the right-hand rail, contacts stay left. */
  readonly load: boolean;
}

/** Value of a key of a part's data, if it is a number. */
function figure(part: Part, key: string): number | undefined {
  const value = (part.data as Readonly<Record<string, unknown>> | undefined)?.[key];
  return typeof value === 'number' ? value : undefined;
}

const rating = (value: number | undefined, unit: string): string =>
  value === undefined ? '' : `${Number(value.toPrecision(3))} ${unit}`;

/** Watts as people write them: 70 W, 5 kW. */
const watts = (value: number | undefined): string =>
  value === undefined ? '' : value >= 1000 ? rating(value / 1000, 'kW') : rating(value, 'W');

/** A word for an element of a board: `y-input` → `Y input`. */
const words = (id: string): string => {
  const text = id.replace(/-/g, ' ');
  return text.length > 0 ? text[0]!.toUpperCase() + text.slice(1) : text;
};

const direction = (part: Part): 'rise' | 'fall' =>
  (part.data as {opensOn?: string} | undefined)?.opensOn === 'fall' ? 'fall' : 'rise';

/** Contacts of a part with several are told apart by their terminals or their order. */
function contactTag(edge: Edge): string {
  const contacts = edge.part.elements.filter((element) => element.is === 'contact');
  if (contacts.length < 2) return edge.part.id;
  return `${edge.part.id}-${contacts.indexOf(edge.element as (typeof contacts)[number]) + 1}`;
}

function contactSymbol(edge: Edge): ElementSymbol {
  const {part} = edge;
  const normally = edge.element.is === 'contact' ? edge.element.normally : 'open';
  const plain = {tag: contactTag(edge), caption: '', value: '', load: false};
  switch (part.kind) {
    case 'disconnect':
      return {...plain, symbol: 'disconnect-pole', tag: part.id, caption: part.title};
    case 'breaker':
      return {
        ...plain,
        symbol: 'breaker-pole',
        tag: part.id,
        caption: part.title,
        value: rating(figure(part, 'amps'), 'A'),
      };
    case 'fuse':
      return {
        ...plain,
        symbol: 'fuse',
        caption: part.title,
        value: rating(figure(part, 'amps'), 'A'),
      };
    case 'fusible-link':
      return {...plain, symbol: 'fusible-link', caption: part.title};
    case 'pressure-switch':
      return {...plain, symbol: `pressure-${direction(part)}`, caption: part.title};
    case 'draft-switch':
      return {
        ...plain,
        symbol: normally === 'open' ? 'draft-open' : 'pressure-rise',
        caption: part.title,
      };
    case 'door-switch':
      return {...plain, symbol: 'contact-closed', caption: part.title};
    case 'float-switch':
      return {...plain, symbol: `float-${direction(part)}`, caption: part.title};
    case 'temperature-switch':
      return {...plain, symbol: `temperature-${direction(part)}`, caption: part.title};
    case 'toggle-switch':
      return {...plain, symbol: 'toggle', caption: part.title};
    case 'thermostat':
      return {...plain, symbol: 'thermostat-contact', tag: `${part.id} ${localName(edge.id)}`};
    case 'delay-timer':
      return {...plain, symbol: 'contact-timed', caption: part.title};
    case 'psc-motor':
    case 'three-phase-motor':
      return {...plain, symbol: 'overload', tag: '', caption: 'Overload'};
    case 'defrost-board':
    case 'ignition-board':
      return {
        ...plain,
        symbol: normally === 'open' ? 'contact-open' : 'contact-closed',
        tag: part.id,
        caption: words(localName(edge.id)),
      };
    case 'phase-monitor':
    case 'economiser':
      return {
        ...plain,
        symbol: normally === 'open' ? 'contact-open' : 'contact-closed',
        caption: part.title,
      };
    case 'sequencer':
      return {...plain, symbol: 'contact-timed'};
    case 'relay':
      if (normally === 'open' && (figure(part, 'offDelaySeconds') ?? 0) > 0)
        return {...plain, symbol: 'contact-off-delay'};
      if (normally === 'open' && (figure(part, 'onDelaySeconds') ?? 0) > 0)
        return {...plain, symbol: 'contact-timed'};
      break;
  }
  return {...plain, symbol: normally === 'open' ? 'contact-open' : 'contact-closed'};
}

function impedanceSymbol(edge: Edge): ElementSymbol {
  const {part} = edge;
  const named = {tag: part.id, caption: part.title, load: true};
  if (part.kind === 'heater')
    return {...named, symbol: 'heater', value: watts(figure(part, 'watts'))};
  if (part.kind === 'hot-surface-igniter') return {...named, symbol: 'heater', value: ''};
  if (part.kind === 'lamp') return {...named, symbol: 'lamp', value: ''};
  const local = localName(edge.id);
  return {
    symbol: 'module',
    tag: '',
    caption: local === 'supply' || part.kind === 'phase-monitor' ? part.title : words(local),
    value: '',
    inside: part.id,
    load: true,
  };
}

/** The symbol and lettering of an element, from its kind and its part's data only. */
export function elementSymbol(edge: Edge): ElementSymbol {
  const {part, element} = edge;
  const named = {tag: part.id, caption: part.title, value: '', load: true};
  switch (element.is) {
    case 'contact':
      return contactSymbol(edge);
    case 'impedance':
      return impedanceSymbol(edge);
    case 'coil':
      return part.kind === 'solenoid' || part.kind === 'gas-valve'
        ? {...named, symbol: 'solenoid'}
        : {...named, symbol: 'coil', tag: '', inside: part.id};
    case 'variable':
      return {...named, symbol: 'thermistor'};
    case 'capacitor': {
      const section = localName(edge.id);
      const tag = section === 'section' ? part.id : `${part.id} ${section.toUpperCase()}`;
      return {
        ...named,
        symbol: 'capacitor',
        tag,
        caption: '',
        value: rating(element.microfarads, 'µF'),
        load: false,
      };
    }
    case 'acSource':
      return {
        ...named,
        symbol: 'source',
        caption: part.title,
        value: rating(element.volts, 'V'),
        load: false,
      };
    case 'dcSource':
      if (part.kind === 'flame-rod') return {...named, symbol: 'flame'};
      return {
        symbol: 'dc-source',
        tag: part.id,
        caption: words(localName(edge.id)),
        value: `${element.volts} V DC`,
        load: false,
      };
    case 'transformer': {
      const secondary = edge.winding.startsWith('secondary');
      if (secondary)
        return {
          ...named,
          symbol: 'transformer-secondary',
          value: rating(figure(part, 'secondaryVolts'), 'V'),
          load: false,
        };
      // sections of a tapped primary: the taps' own names tell their volts
      const [first] = element.windings;
      const tapped =
        element.windings.filter(({id}) => localName(id).startsWith('primary')).length > 1;
      return {
        ...named,
        ...(edge.id === first!.id ? {} : {tag: '', caption: ''}),
        symbol: 'transformer-primary',
        value: tapped ? '' : rating(first!.turnsVolts, 'V'),
      };
    }
    case 'motor':
      return {
        symbol: 'winding',
        tag: '',
        caption: edge.winding === 'main' ? 'Run' : 'Start',
        value: '',
        load: true,
      };
    case 'threePhaseMotor':
      return {
        symbol: 'winding',
        tag: '',
        caption: `Winding ${edge.winding.slice(-1)}`,
        value: '',
        load: true,
      };
    case 'conductor':
      return {...named, symbol: 'module', load: false};
  }
}
