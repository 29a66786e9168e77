import type {WindingSource} from '../circuits/winding-source.ts';
import type {Complex} from '../parts/element.ts';
import type {WiredNetwork} from './live-network.ts';

/** A search for the speed at which a motor's torque meets its load, and what it found. */
interface SpeedSearch {
  readonly source: WindingSource;
  readonly present: number;
  readonly speed: number;
}

/** The last search for each motor of a network. */
const searches = new WeakMap<WiredNetwork, Map<string, SpeedSearch>>();

/**
 * The speed that a search finds, or found when it last began from the same speed behind the very same source: a unit
 * that goes round and round asks the same again and again.
 */
export function speedFound(
  wired: WiredNetwork,
  source: WindingSource,
  present: number,
  search: () => number,
): number {
  let known = searches.get(wired);
  if (!known) searches.set(wired, (known = new Map()));
  const {id} = source.motor;
  const last = known.get(id);
  if (last && last.present === present && sameSource(last.source, source)) return last.speed;
  const speed = search();
  known.set(id, {source, present, speed});
  return speed;
}

function sameSource(p: WindingSource, q: WindingSource): boolean {
  return (
    p.copper === q.copper &&
    p.volts.every((volts, i) => same(volts, q.volts[i]!)) &&
    p.ohms.every((row, i) => row.every((ohms, j) => same(ohms, q.ohms[i]![j]!)))
  );
}

function same(p: Complex, q: Complex): boolean {
  return p.re === q.re && p.im === q.im;
}
