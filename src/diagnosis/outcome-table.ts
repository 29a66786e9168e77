import type {Solution} from '../circuits/solution.ts';
import {TransferWork, transferOhms, type TransferOhms} from '../circuits/transfer-ohms.ts';
import {disturbingAcVolts, disturbingDcVolts, meterSpec, testAmps} from '../meter/meter-spec.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {OutcomeScale} from './outcome-scale.ts';
import {allPairs, type Pair} from './places.ts';

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

/** Scratch for one unit's transfer ohms, kept from suspect to suspect. */
const acWork = new TransferWork();
const dcWork = new TransferWork();

/** Behind more ohms than this a voltage is stray: a person with a good meter in hand calls it nothing. */
const strayOhms = 50e3;
/** Less than this on a line or control circuit is nothing. */
const nothingVolts = 1;

/**
 * Readings of a meter function at many pairs of points (or, for the clamp, all wires) on all suspects, without a
 * solve for each reading: a suspect's node volts, and the impedance behind every pair from one block substitution
 * with the factor at hand, give the loaded reading of each pair in a few operations.
 *
 * @param units suspects' units in the state in which they are to be read; not changed
 * @param points points for the leads; the lifted ends among them must be lifted on every unit
 * @param options `pairs`: which pairs, instead of all. `practical`: stray voltage and less than a volt read as
 *   nothing, so that no plan rests on what a floating conductor happens to pick up
 */
export function outcomeTable(
  fn: MeterFunction,
  units: readonly OperatingUnit[],
  points: readonly string[],
  options: {readonly pairs?: readonly Pair[]; readonly practical?: boolean} = {},
): OutcomeTable {
  if (fn === 'clamp-amps') return clampTable(units);
  const pairs = options.pairs ?? allPairs(points);
  const table = emptyTable(fn, units.length, pairs.length, points);
  const indexOf = new Map(points.map((point, index) => [point, index]));
  pairs.forEach(([red, black], place) => {
    table.first[place] = indexOf.get(red)!;
    table.second[place] = indexOf.get(black)!;
  });
  const least = options.practical ? nothingVolts : 0;
  const mostOhms = options.practical ? strayOhms : Infinity;
  units.forEach((unit, suspect) => {
    if (fn === 'ohms' || fn === 'continuity') fillOhms(table, unit, points, suspect);
    else if (fn === 'dc-volts') fillDirect(table, unit, points, suspect);
    else fillVolts(table, unit, points, suspect, least, mostOhms);
  });
  return table;
}

function emptyTable(
  fn: MeterFunction,
  suspects: number,
  places: number,
  names: readonly string[],
): OutcomeTable {
  return {
    fn,
    scale: scaleOf(fn),
    suspects,
    places,
    outcomes: new Uint16Array(suspects * places),
    names,
    first: new Uint16Array(places),
    second: new Uint16Array(places),
  };
}

function clampTable(units: readonly OperatingUnit[]): OutcomeTable {
  const wires = units[0]?.unit.wires.map((wire) => wire.id) ?? [];
  const table = emptyTable('clamp-amps', units.length, wires.length, wires);
  wires.forEach((wire, place) => {
    table.first[place] = place;
    table.second[place] = place;
    units.forEach((unit, suspect) => {
      const {re, im} = unit.amps(wire);
      table.outcomes[place * units.length + suspect] = table.scale.of(Math.hypot(re, im));
    });
  });
  return table;
}

/** One suspect's node volts at the points, and all transfer ohms among them. */
interface Basis {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly z: TransferOhms;
}

function basisOf(solution: Solution, points: readonly string[], work: TransferWork): Basis {
  const positions = Int32Array.from(points, (point) => solution.plan.positionOf.get(point) ?? -1);
  const re = Float64Array.from(positions, (at) => (at < 0 ? 0 : solution.voltsRe[at]));
  const im = Float64Array.from(positions, (at) => (at < 0 ? 0 : solution.voltsIm[at]));
  return {re, im, z: transferOhms(solution, positions, work)};
}

function fillVolts(
  table: OutcomeTable,
  unit: OperatingUnit,
  points: readonly string[],
  suspect: number,
  least: number,
  mostOhms: number,
): void {
  const {re, im, z} = basisOf(unit.solution('ac'), points, acWork);
  const [g, b] = inputSiemens(table.fn, unit.network.frequencyHz);
  const {outcomes, scale, suspects, places, first, second} = table;
  const {count, re: zr, im: zi} = z;
  const straySquare = mostOhms * mostOhms;
  for (let place = 0; place < places; place += 1) {
    const p = first[place];
    const q = second[place];
    const pp = p * count;
    const qq = q * count;
    const zRe = zr[pp + p] + zr[qq + q] - zr[pp + q] - zr[qq + p];
    const zIm = zi[pp + p] + zi[qq + q] - zi[pp + q] - zi[qq + p];
    const vRe = re[p] - re[q];
    const vIm = im[p] - im[q];
    // |V / (1 + Z·Y)|, as loadedAcVolts; Math.hypot is several times slower than a root
    const dRe = 1 + zRe * g - zIm * b;
    const dIm = zRe * b + zIm * g;
    const volts = Math.sqrt((vRe * vRe + vIm * vIm) / (dRe * dRe + dIm * dIm));
    const stray = zRe * zRe + zIm * zIm > straySquare;
    outcomes[place * suspects + suspect] = scale.of(volts < least || stray ? 0 : volts);
  }
}

function fillDirect(
  table: OutcomeTable,
  unit: OperatingUnit,
  points: readonly string[],
  suspect: number,
): void {
  const {re, z} = basisOf(unit.solution('dc'), points, dcWork);
  const [g] = inputSiemens(table.fn, 0);
  const {outcomes, scale, suspects, places, first, second} = table;
  for (let place = 0; place < places; place += 1) {
    const p = first[place];
    const q = second[place];
    const volts = (re[p] - re[q]) / (1 + ohmsBetween(z, p, q) * g);
    outcomes[place * suspects + suspect] = scale.of(volts);
  }
}

function fillOhms(
  table: OutcomeTable,
  unit: OperatingUnit,
  points: readonly string[],
  suspect: number,
): void {
  const ac = basisOf(unit.solution('ac'), points, acWork);
  const dc = basisOf(unit.solution('dc'), points, dcWork);
  const [g, b] = inputSiemens(table.fn, unit.network.frequencyHz);
  const {outcomes, scale, suspects, places, first, second} = table;
  const {count, re: zr, im: zi} = ac.z;
  const disturbingSquare = disturbingAcVolts * disturbingAcVolts;
  for (let place = 0; place < places; place += 1) {
    const p = first[place];
    const q = second[place];
    const ohms = ohmsBetween(dc.z, p, q);
    const direct = dc.re[p] - dc.re[q];
    const vRe = ac.re[p] - ac.re[q];
    const vIm = ac.im[p] - ac.im[q];
    const square = vRe * vRe + vIm * vIm;
    let disturbed = Math.abs(direct) >= disturbingDcVolts * (1 + ohms * g);
    // the input could raise a voltage only by resonance with it; half the limit leaves room for that
    if (!disturbed && square >= disturbingSquare / 4) {
      const pp = p * count;
      const qq = q * count;
      const zRe = zr[pp + p] + zr[qq + q] - zr[pp + q] - zr[qq + p];
      const zIm = zi[pp + p] + zi[qq + q] - zi[pp + q] - zi[qq + p];
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

function ohmsBetween(z: TransferOhms, p: number, q: number): number {
  const pp = p * z.count;
  const qq = q * z.count;
  return z.re[pp + p] + z.re[qq + q] - z.re[pp + q] - z.re[qq + p];
}
