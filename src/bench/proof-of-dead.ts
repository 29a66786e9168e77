import {conductorsOf, partOf} from '../faults/nets.ts';
import {terminalsOf} from './live.ts';
import type {LogEntry} from './bench-view.ts';
import type {Standing} from './standing.ts';

/** How far the absence of voltage has been proved since an isolating part was last moved. */
export type ProofOfDead = 'none' | 'tested' | 'proved';

/** A known live source shows at least this much; a dead pair at most this much. */
const knownLiveVolts = 20;
const deadVolts = 5;

/**
 * The order of an absence-of-voltage test: prove the tester on a known live source, test the locked-out
 * conductors, prove the tester again (Lessons in Electric Circuits, vol. I, ch. 3 "Safe circuit design" and
 * "Emergency response"). `tested`: a dead reading in this enclosure, but the meter not proved both
 * before and after. A reading between two points of one conductor tests nothing and does not count.
 */
export function proofOfDead(standing: Standing, enclosure: string): ProofOfDead {
  const {log, isolatedSince} = standing;
  const line = terminalsOf(standing, enclosure, 'line');
  const conductors = conductorsOf(standing.unit);
  const isDeadTest = (entry: LogEntry): boolean => {
    const value = voltsRead(entry);
    if (value === undefined || value > deadVolts || !entry.red || !entry.black) return false;
    if (conductors.same(entry.red, entry.black)) return false;
    return [entry.red, entry.black].some(
      (point) => line.has(point) || line.has(landing(standing, point)),
    );
  };
  const tests = log
    .slice(isolatedSince)
    .filter(isDeadTest)
    .map((entry) => entry.index);
  if (tests.length === 0) return 'none';
  const proving = log
    .filter((entry) => (voltsRead(entry) ?? 0) >= knownLiveVolts)
    .map((entry) => entry.index);
  const proved = tests.some(
    (test) => proving.some((live) => live < test) && proving.some((live) => live > test),
  );
  return proved ? 'proved' : 'tested';
}

/** Volts of an alternating-voltage reading, else undefined. */
function voltsRead(entry: LogEntry): number | undefined {
  if (entry.function !== 'ac-volts' && entry.function !== 'low-impedance-volts') return undefined;
  // a meter that says its battery is empty proves nothing
  return entry.display?.batteryLow ? undefined : entry.display?.value;
}

/** The terminal that a lifted end came from; any other point is itself. */
function landing({reach}: Standing, point: string): string {
  return reach.end(point)?.terminal ?? point;
}

/** Enclosure in which a point lies. */
export function enclosureOfPoint(standing: Standing, point: string): string | undefined {
  return standing.reach.enclosureOf(partOf(landing(standing, point)))?.id;
}

/** Whether a capacitor has been found empty since an isolating part was last moved: volts DC read between two of its terminals. */
export function provedDischarged(standing: Standing, part: string): boolean {
  const conductors = conductorsOf(standing.unit);
  const terminals = (standing.unit.parts.find(({id}) => id === part)?.terminals ?? []).map(
    (terminal) => `${part}.${terminal}`,
  );
  const at = (point: string): string | undefined =>
    terminals.find((terminal) => conductors.same(terminal, landing(standing, point)));
  const pairs = new Set<string>();
  for (const entry of standing.log.slice(standing.isolatedSince)) {
    const {value = Infinity, batteryLow} = entry.display ?? {};
    if (entry.function !== 'dc-volts' || batteryLow || Math.abs(value) > deadVolts) continue;
    const [red, black] = [at(entry.red!), at(entry.black!)];
    if (red && black && red !== black) pairs.add([red, black].sort().join(' '));
  }
  // a section between each terminal and the first, the common
  return pairs.size >= terminals.length - 1;
}
