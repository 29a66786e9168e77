import type {Unit} from '../content/unit.ts';
import {disturbingAcVolts, disturbingDcVolts, meterSpec, testAmps} from '../meter/meter-spec.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {OutcomeScale} from './outcome-scale.ts';
import type {Pair} from './places.ts';
import {Places} from './behind-places.ts';

/**
 * What the meter would show at every place on every suspect, as steps of an {@link OutcomeScale}. One column of
 * numbers for each place: `outcomes[place * suspects + suspect]`. For the clamp a place is a wire; for the leads it
 * is a pair of points, red being the first.
 */
export interface OutcomeTable {
  readonly fn: MeterFunction;
  readonly scale: OutcomeScale;
  readonly suspects: number;
  readonly places: number;
  readonly outcomes: Uint16Array;
  /** Points of the leads, or wires. */
  readonly names: readonly string[];
  /** Index into `names` of the first and second point of each place; of a clamp both are the wire. */
  readonly first: Uint16Array;
  readonly second: Uint16Array;
}

/** Functions whose readings can be laid out in a table. Continuity tells no more than ohms. */
export const tableFunctions = [
  'ac-volts',
  'low-impedance-volts',
  'dc-volts',
  'ohms',
  'clamp-amps',
] as const;

const scales = new Map<MeterFunction, OutcomeScale>();

export function scaleOf(fn: MeterFunction): OutcomeScale {
  let scale = scales.get(fn);
  if (!scale) scales.set(fn, (scale = new OutcomeScale(fn)));
  return scale;
}

/** Behind more ohms than this a voltage is stray: a person with a good meter in hand calls it nothing. */
const strayOhms = 50e3;
/** Less than this on a line or control circuit is nothing. */
const nothingVolts = 1;

/** How tables are laid out. */
export interface TableOptions {
  /** Which pairs, instead of all. */
  readonly pairs?: readonly Pair[];
  /** Stray voltage and less than a volt read as nothing, so that no plan rests on what a floating conductor picks up. */
  readonly practical?: boolean;
}

/**
 * Readings of meter functions at many pairs of points (or, for the clamp, all wires) on all suspects, without a solve
 * for each reading: a suspect's node volts, and the impedances behind the pairs from the factor at hand, give the
 * loaded reading of each pair in a few operations. Filled one suspect after the other, when there is time for it.
 */
export class OutcomeTables {
  readonly tables: readonly OutcomeTable[];
  private readonly places: Places;
  private readonly practical: boolean;

  /**
   * @param suspects how many there will be
   * @param points points for the leads; the lifted ends among them must be lifted on every unit
   */
  constructor(
    functions: readonly MeterFunction[],
    unit: Unit,
    suspects: number,
    points: readonly string[],
    {pairs, practical = false}: TableOptions = {},
  ) {
    this.places = new Places(points, pairs);
    this.practical = practical;
    const {first, second} = this.places;
    const wires = unit.wires.map((wire) => wire.id);
    const each = Uint16Array.from(wires.keys());
    this.tables = functions.map((fn) =>
      fn === 'clamp-amps'
        ? emptyTable(fn, suspects, wires, each, each)
        : emptyTable(fn, suspects, points, first, second),
    );
  }

  /** Fills the columns of one suspect, whose unit is in the state in which it is to be read; it is not changed. */
  fill(suspect: number, unit: OperatingUnit): void {
    const {places} = this;
    places.at(unit);
    for (const table of this.tables) {
      const {fn} = table;
      if (fn === 'clamp-amps') fillClamp(table, unit, suspect);
      else if (fn === 'ohms' || fn === 'continuity') fillOhms(table, places, unit, suspect);
      else if (fn === 'dc-volts') fillDirect(table, places, suspect);
      else fillVolts(table, places, unit, suspect, this.practical);
    }
  }
}

/** One function's table of all suspects at once; see {@link OutcomeTables}. */
export function outcomeTable(
  fn: MeterFunction,
  units: readonly OperatingUnit[],
  points: readonly string[],
  options: TableOptions = {},
): OutcomeTable {
  return outcomeTables([fn], units, points, options)[0];
}

/** Tables of several functions of all suspects at once; see {@link OutcomeTables}. */
export function outcomeTables(
  functions: readonly MeterFunction[],
  units: readonly OperatingUnit[],
  points: readonly string[],
  options: TableOptions = {},
): readonly OutcomeTable[] {
  if (units.length === 0)
    return functions.map((fn) => emptyTable(fn, 0, [], new Uint16Array(0), new Uint16Array(0)));
  const all = new OutcomeTables(functions, units[0].unit, units.length, points, options);
  units.forEach((unit, suspect) => all.fill(suspect, unit));
  return all.tables;
}

function emptyTable(
  fn: MeterFunction,
  suspects: number,
  names: readonly string[],
  first: Uint16Array,
  second: Uint16Array,
): OutcomeTable {
  const places = first.length;
  const outcomes = new Uint16Array(suspects * places);
  return {fn, scale: scaleOf(fn), suspects, places, outcomes, names, first, second};
}

function fillClamp(table: OutcomeTable, unit: OperatingUnit, suspect: number): void {
  const {outcomes, scale, suspects, names} = table;
  const solution = unit.solution('ac');
  for (let place = 0; place < names.length; place += 1) {
    const {re, im} = solution.roughAmps(names[place]);
    outcomes[place * suspects + suspect] = scale.of(Math.sqrt(re * re + im * im));
  }
}

function fillVolts(
  table: OutcomeTable,
  {ac}: Places,
  unit: OperatingUnit,
  suspect: number,
  practical: boolean,
): void {
  const least = practical ? nothingVolts : 0;
  const straySquare = practical ? strayOhms * strayOhms : Infinity;
  const {voltsRe, voltsIm, ohmsRe, ohmsIm} = ac();
  const [g, b] = inputSiemens(table.fn, unit.network.frequencyHz);
  const {outcomes, scale, suspects, places} = table;
  for (let place = 0; place < places; place += 1) {
    const zRe = ohmsRe[place];
    const zIm = ohmsIm[place];
    const vRe = voltsRe[place];
    const vIm = voltsIm[place];
    // |V / (1 + Z·Y)|, as loadedAcVolts; Math.hypot is several times slower than a root
    const dRe = 1 + zRe * g - zIm * b;
    const dIm = zRe * b + zIm * g;
    const volts = Math.sqrt((vRe * vRe + vIm * vIm) / (dRe * dRe + dIm * dIm));
    const stray = zRe * zRe + zIm * zIm > straySquare;
    outcomes[place * suspects + suspect] = scale.of(volts < least || stray ? 0 : volts);
  }
}

function fillDirect(table: OutcomeTable, {dc}: Places, suspect: number): void {
  const {voltsRe, ohmsRe} = dc();
  const [g] = inputSiemens(table.fn, 0);
  const {outcomes, scale, suspects, places} = table;
  for (let place = 0; place < places; place += 1)
    outcomes[place * suspects + suspect] = scale.of(voltsRe[place] / (1 + ohmsRe[place] * g));
}

function fillOhms(
  table: OutcomeTable,
  {ac: acPlaces, dc: dcPlaces}: Places,
  unit: OperatingUnit,
  suspect: number,
): void {
  // dead, as ohms want it, nothing disturbs anywhere: then the impedances at line frequency need not be found
  const ac = acPlaces(false);
  const dc = dcPlaces();
  const [g, b] = inputSiemens(table.fn, unit.network.frequencyHz);
  const {outcomes, scale, suspects, places} = table;
  const disturbingSquare = disturbingAcVolts * disturbingAcVolts;
  for (let place = 0; place < places; place += 1) {
    const ohms = dc.ohmsRe[place];
    const direct = dc.voltsRe[place];
    const vRe = ac.voltsRe[place];
    const vIm = ac.voltsIm[place];
    const square = vRe * vRe + vIm * vIm;
    let disturbed = Math.abs(direct) >= disturbingDcVolts * (1 + ohms * g);
    // the input could raise a voltage only by resonance with it; half the limit leaves room for that
    if (!disturbed && square >= disturbingSquare / 4) {
      acPlaces();
      const zRe = ac.ohmsRe[place];
      const zIm = ac.ohmsIm[place];
      const dRe = 1 + zRe * g - zIm * b;
      const dIm = zRe * b + zIm * g;
      disturbed = square >= disturbingSquare * (dRe * dRe + dIm * dIm);
    }
    outcomes[place * suspects + suspect] = disturbed
      ? scale.hazard
      : resistanceOutcome(scale, ohms, direct);
  }
}

/** Conductance and susceptance that a function puts on the leads. */
function inputSiemens(fn: MeterFunction, frequencyHz: number): [re: number, im: number] {
  const {inputOhms = Infinity, inputPicofarads = 0} = meterSpec[fn];
  return [1 / inputOhms, 2 * Math.PI * frequencyHz * inputPicofarads * 1e-12];
}

/** An ohmmeter adds the volts already there to those that its test current makes; see the meter's own reading. */
function resistanceOutcome(scale: OutcomeScale, ohms: number, direct: number): number {
  if (Math.abs(direct) < 1e-9) return scale.of(Math.max(0, ohms));
  const {ranges} = meterSpec[scale.fn];
  for (let i = 0; i < ranges.length; i += 1) {
    const seen = ohms + direct / testAmps[i];
    if (seen < -ranges[i].resolution) return scale.overload;
    if (seen <= ranges[i].upTo) return scale.of(Math.max(0, seen));
  }
  return scale.overload;
}
