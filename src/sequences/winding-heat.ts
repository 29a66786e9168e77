import type {Solution} from '../circuits/solution.ts';
import type {Part, Unit} from '../content/unit.ts';
import {copperShare, referenceDegF} from '../parts/copper.ts';
import type {MagnetCoilData} from '../parts/magnet-coil.ts';
import {dataOf} from '../parts/part-kind.ts';
import type {transformer} from '../parts/transformer.ts';
import {valueAt, type Course} from '../plant/first-order.ts';

/**
 * A magnet coil or transformer whose copper warms with what is lost in it. (A motor's winding is as warm as the
 * overload that lies in it, so its machine knows.)
 */
export interface WarmWinding {
  /** Placed element: `K1.coil`, `T1.core`. */
  readonly element: string;
  /** Plant value of the air round it; none where the plant has no such air. */
  readonly air: 'outdoorDegF' | 'roomDegF';
  /** Rise over that air after hours at the rating, and how soon. */
  readonly riseDegF: number;
  readonly tauMs: number;
  /** Loss now as a share of the loss at the rating. */
  lossShare(solution: Solution): number;
}

/** Steps of the share by which winding ohms follow temperature: 1 %, about 5 °F. Finer ones are below what a meter can tell. */
const step = 0.01;
/** A change of less than this in what a winding is on its way to is not worth a new course, °F. */
const worthDegF = 2;
/** Varnish stands no more (class H and some; past it something burns through), so no course leads further. */
const mostDegF = 400;

/** Rise of a coil sealed at rated volts: 40 °C, half of the 80 or so that class B allows (common practice, no source). */
const coilRiseDegF = 72;
const coilTauMs = 8 * 60_000;
/** Rise of a class 105 transformer's windings at full load: 55 °C (common practice, no source). */
const transformerRiseDegF = 99;
const transformerTauMs = 20 * 60_000;

/** Steps the ohms of a winding at a temperature. At room temperature they are the data's own. */
export function copperAt(degF: number): number {
  return Math.round(copperShare(degF) / step) * step;
}

/** The coils and transformers of a unit. */
export function warmWindings(unit: Unit): readonly WarmWinding[] {
  const outdoors = enclosuresOutdoors(unit);
  return unit.parts.flatMap((part) => {
    const air = outdoors.has(part.enclosure) ? 'outdoorDegF' : 'roomDegF';
    if (part.kind === 'transformer') return [warmTransformer(part, air)];
    return part.elements.some((element) => element.is === 'coil') ? [warmCoil(part, air)] : [];
  });
}

function warmCoil(part: Part, air: WarmWinding['air']): WarmWinding {
  const {ratedVolts, sealedVa} = (part.data as {coil: MagnetCoilData}).coil;
  const element = `${part.id}.coil`;
  const ratedAmps = sealedVa / ratedVolts;
  return {
    element,
    air,
    riseDegF: coilRiseDegF,
    tauMs: coilTauMs,
    lossShare: (solution) => square(solution, element) / ratedAmps ** 2,
  };
}

function warmTransformer(part: Part, air: WarmWinding['air']): WarmWinding {
  const {va, secondaryVolts, regulationPercent, coreLossFraction} =
    dataOf<typeof transformer>(part);
  const copperFraction = regulationPercent / 100;
  const ratedAmps = va / secondaryVolts;
  return {
    element: `${part.id}.core`,
    air,
    riseDegF: transformerRiseDegF,
    tauMs: transformerTauMs,
    lossShare: (solution) => {
      const {re, im} = solution.voltsBetween(`${part.id}.X1`, `${part.id}.X2`);
      const copper = copperFraction * (square(solution, `${part.id}.secondary`) / ratedAmps ** 2);
      const core = coreLossFraction * ((re * re + im * im) / secondaryVolts ** 2);
      return (copper + core) / (copperFraction + coreLossFraction);
    },
  };
}

/** Amps of a branch, squared. */
function square(solution: Solution, id: string): number {
  if (!solution.plan.branchOf.has(id)) return 0;
  const {re, im} = solution.roughAmps(id);
  return re * re + im * im;
}

/** A box with a compressor or its fan in it stands outdoors; of a rooftop unit all stands there but the thermostat. */
function enclosuresOutdoors(unit: Unit): ReadonlySet<string> {
  const holding = (holds: (part: Part) => boolean) =>
    new Set(unit.parts.filter(holds).map(({enclosure}) => enclosure));
  if (unit.plant.kind === 'rooftop') return holding(({kind}) => kind !== 'thermostat');
  return holding(({data}) =>
    ['compressor', 'fan'].includes((data as {drives?: string} | undefined)?.drives ?? ''),
  );
}

/**
 * The windings' temperatures on their way from here, told once the network has come to rest; the same array when
 * nothing is worth telling.
 *
 * @param courses in the order of the windings; none before the first time, when all are as warm as the air
 */
export function warmedBy(
  windings: readonly WarmWinding[],
  courses: readonly Course[] | undefined,
  solution: Solution,
  plant: (name: string) => number | undefined,
  atMs: number,
): readonly Course[] {
  let changed = courses === undefined;
  const next = windings.map(({air, riseDegF, tauMs, lossShare}, index) => {
    const airDegF = plant(air) ?? referenceDegF;
    const target = Math.min(mostDegF, airDegF + riseDegF * lossShare(solution));
    const before = courses?.[index];
    if (before && Math.abs(before.target - target) < worthDegF) return before;
    changed = true;
    return {startMs: atMs, start: before ? valueAt(before, atMs) : airDegF, target, tauMs};
  });
  return changed ? next : courses!;
}
