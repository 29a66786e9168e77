/**
 * Symbols of a ladder print as data: strokes about a middle at (0, 0), leads running out to x = ±24 along
 * y = 0. Always in the resting, de-energised position: a drawing never tells what a contact is doing now.
 *
 * Shapes follow the usual North American ladder conventions (contacts as two bars, pressure dome, float
 * ball, bimetal step). Common practice, no source; no claim of conformity to a drawing standard.
 */
export type SymbolName =
  | 'contact-open'
  | 'contact-closed'
  | 'contact-timed'
  | 'contact-off-delay'
  | 'thermostat-contact'
  | 'toggle'
  | 'disconnect-pole'
  | 'breaker-pole'
  | 'pressure-rise'
  | 'pressure-fall'
  | 'draft-open'
  | 'float-rise'
  | 'float-fall'
  | 'temperature-rise'
  | 'temperature-fall'
  | 'fuse'
  | 'fusible-link'
  | 'overload'
  | 'coil'
  | 'solenoid'
  | 'winding'
  | 'transformer-primary'
  | 'transformer-secondary'
  | 'capacitor'
  | 'heater'
  | 'lamp'
  | 'thermistor'
  | 'flame'
  | 'module'
  | 'source'
  | 'dc-source'
  | 'motor'
  | 'earth';

/** A stroke of a symbol. `heavy` strokes are contact bars and arms; `solid` ones are filled with ink. */
export type Stroke =
  | {readonly d: string; readonly heavy?: true; readonly solid?: true; readonly hollow?: true}
  | {
      readonly circle: readonly [number, number, number];
      readonly hollow?: true;
      readonly solid?: true;
    };

export interface SymbolShape {
  readonly strokes: readonly Stroke[];
  /** Ink above and below the line, for spacing of labels. */
  readonly above: number;
  readonly below: number;
  /** Where the tag is written, if the symbol carries one. */
  readonly tagAt?: readonly [number, number];
}

/** Half the width of every symbol, lead to lead. */
export const SYMBOL_REACH = 24;

const leads = (gap: number): Stroke => ({d: `M-24 0H${-gap}M${gap} 0H24`});
const pivots: readonly Stroke[] = [
  {d: 'M-24 0H-15.5M15.5 0H24'},
  {circle: [-13, 0, 2.5], hollow: true},
  {circle: [13, 0, 2.5], hollow: true},
];
const humps = (x: number, y: number, count: number, up: boolean): string =>
  `M${x} ${y}` + `a4 4.6 0 0 ${up ? 1 : 0} 8 0`.repeat(count);
const dome = 'M-7.5 17.5a7.5 7.5 0 0 1 15 0z';

export const symbols: Readonly<Record<SymbolName, SymbolShape>> = {
  'contact-open': {
    strokes: [leads(5), {d: 'M-5 -9V9M5 -9V9', heavy: true}],
    above: 10,
    below: 10,
  },
  'contact-closed': {
    strokes: [leads(5), {d: 'M-5 -9V9M5 -9V9', heavy: true}, {d: 'M-11 11L11 -11'}],
    above: 12,
    below: 12,
  },
  // a hanging arm with an arrow that points the way it is held back: closes late
  'contact-timed': {
    strokes: [
      ...pivots,
      {d: 'M-11 1.5L13.5 9', heavy: true},
      {d: 'M1 5.4V17.5M-2.8 10.4L1 6.4L4.8 10.4M-4.5 17.5H6.5'},
    ],
    above: 4,
    below: 19,
  },
  // arrow the other way: opens late
  'contact-off-delay': {
    strokes: [
      ...pivots,
      {d: 'M-11 1.5L13.5 9', heavy: true},
      {d: 'M1 5.4V17.5M-2.8 13.5L1 17.5L4.8 13.5M-4.5 8.2'},
    ],
    above: 4,
    below: 19,
  },
  'thermostat-contact': {
    strokes: [...pivots, {d: 'M-10.8 -1.2L13 -11', heavy: true}],
    above: 12,
    below: 4,
  },
  toggle: {
    strokes: [...pivots, {d: 'M-10.8 -1.2L13 -11', heavy: true}, {d: 'M1 -6.2V-14M-3.5 -14H5.5'}],
    above: 15,
    below: 4,
  },
  'disconnect-pole': {
    strokes: [...pivots, {d: 'M-10.8 -1.2L12 -10.5', heavy: true}, {d: 'M18 -6V6'}],
    above: 11,
    below: 7,
  },
  'breaker-pole': {
    strokes: [...pivots, {d: 'M-13 -4.5Q0 -16 13 -4.5', heavy: true}],
    above: 12,
    below: 4,
  },
  // arm on top of the contacts is pushed off by what rises beneath it
  'pressure-rise': {
    strokes: [
      ...pivots,
      {d: 'M-15 -3.6H16', heavy: true},
      {d: 'M0 -3V10'},
      {d: dome, hollow: true},
    ],
    above: 6,
    below: 19,
  },
  // arm beneath the contacts drops when what holds it up falls
  'pressure-fall': {
    strokes: [...pivots, {d: 'M-15 3.6H16', heavy: true}, {d: 'M0 4V10'}, {d: dome, hollow: true}],
    above: 4,
    below: 19,
  },
  // hanging open: what rises beneath it lifts it to the contacts
  'draft-open': {
    strokes: [
      ...pivots,
      {d: 'M-11 1.5L13.5 8', heavy: true},
      {d: 'M0 4.5V10'},
      {d: dome, hollow: true},
    ],
    above: 4,
    below: 19,
  },
  'float-rise': {
    strokes: [
      ...pivots,
      {d: 'M-15 -3.6H16', heavy: true},
      {d: 'M0 -3V9.5'},
      {circle: [0, 14, 4.5], hollow: true},
    ],
    above: 6,
    below: 20,
  },
  'float-fall': {
    strokes: [
      ...pivots,
      {d: 'M-15 3.6H16', heavy: true},
      {d: 'M0 4V9.5'},
      {circle: [0, 14, 4.5], hollow: true},
    ],
    above: 4,
    below: 20,
  },
  'temperature-rise': {
    strokes: [...pivots, {d: 'M-15 -3.6H16', heavy: true}, {d: 'M0 -3V7H-5.5V12H4.5V17H0V20'}],
    above: 6,
    below: 21,
  },
  'temperature-fall': {
    strokes: [...pivots, {d: 'M-15 3.6H16', heavy: true}, {d: 'M0 4V8H-5.5V12.5H4.5V17H0V20'}],
    above: 4,
    below: 21,
  },
  fuse: {
    strokes: [{d: 'M-15 -5.5H15V5.5H-15Z', hollow: true}, {d: 'M-24 0H24'}],
    above: 7,
    below: 7,
  },
  'fusible-link': {
    strokes: [
      leads(15),
      {d: 'M-15 0C-9 -11 -5 -5 0 0C5 5 9 11 15 0'},
      {circle: [-15, 0, 1.8], solid: true},
      {circle: [15, 0, 1.8], solid: true},
    ],
    above: 8,
    below: 8,
  },
  overload: {
    strokes: [leads(12), {d: 'M-12 0A6 6.5 0 0 1 0 0A6 6.5 0 0 0 12 0'}],
    above: 8,
    below: 8,
  },
  coil: {
    strokes: [leads(13), {circle: [0, 0, 13], hollow: true}],
    above: 14,
    below: 14,
    tagAt: [0, 3.8],
  },
  solenoid: {
    strokes: [{d: 'M-24 0H-14L-10.5 -8L-3.5 8L3.5 -8L10.5 8L14 0H24'}],
    above: 9,
    below: 9,
  },
  winding: {strokes: [{d: `M-24 0H-16${humps(-16, 0, 4, true)}H24`}], above: 7, below: 3},
  'transformer-primary': {
    strokes: [{d: `M-24 0H-16${humps(-16, 0, 4, true)}H24`}, {d: 'M-16 5H16M-16 8.5H16'}],
    above: 7,
    below: 10,
  },
  'transformer-secondary': {
    strokes: [{d: `M-24 0H-16${humps(-16, 0, 4, false)}H24`}, {d: 'M-16 -5H16M-16 -8.5H16'}],
    above: 10,
    below: 7,
  },
  // one plate curved: two straight ones would read as a contact
  capacitor: {
    strokes: [leads(3.5), {d: 'M-3.5 -9V9', heavy: true}, {d: 'M9 -9.5Q-1.5 0 9 9.5', heavy: true}],
    above: 11,
    below: 11,
  },
  heater: {
    strokes: [
      leads(17),
      {d: 'M-17 -5.5H17V5.5H-17Z', hollow: true},
      {d: 'M-8.5 -5.5V5.5M0 -5.5V5.5M8.5 -5.5V5.5'},
    ],
    above: 7,
    below: 7,
  },
  lamp: {
    strokes: [
      leads(11),
      {circle: [0, 0, 11], hollow: true},
      {d: 'M-7.8 -7.8L7.8 7.8M-7.8 7.8L7.8 -7.8'},
    ],
    above: 12,
    below: 12,
  },
  thermistor: {
    strokes: [leads(14), {d: 'M-14 -5H14V5H-14Z', hollow: true}, {d: 'M-17 9.5H-11L10 -9.5'}],
    above: 11,
    below: 11,
  },
  flame: {
    strokes: [
      leads(12),
      {circle: [0, 0, 12], hollow: true},
      {d: 'M0 8C-7 4.5 -4.5 -1.5 0 -8.5C4.5 -1.5 7 4.5 0 8Z'},
    ],
    above: 13,
    below: 13,
  },
  module: {strokes: [], above: 12, below: 12, tagAt: [0, 3.8]},
  source: {
    strokes: [
      leads(12),
      {circle: [0, 0, 12], hollow: true},
      {d: 'M-7 0C-5 -7.5 -2 -7.5 0 0C2 7.5 5 7.5 7 0'},
    ],
    above: 13,
    below: 13,
  },
  'dc-source': {
    strokes: [
      leads(12),
      {circle: [0, 0, 12], hollow: true},
      {d: 'M-6 -2.5H6M-6 2.5H-3M-1.5 2.5H1.5M3 2.5H6'},
    ],
    above: 13,
    below: 13,
  },
  motor: {
    strokes: [{circle: [0, 0, 15], hollow: true}],
    above: 16,
    below: 16,
    tagAt: [0, 4.5],
  },
  earth: {strokes: [{d: 'M0 -10V0M-9 0H9M-5.5 4H5.5M-2 8H2'}], above: 10, below: 9},
};
