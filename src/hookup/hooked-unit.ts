import type {CableRun, Unit, Wire} from '../content/unit.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';

/** A wire within one box, and one from box to box (common practice, no source). */
const feetWithin = 2;
const feetBetween = 25;

/**
 * The unit that stands there once these wires are in: the task's parts, its given wires, and the student's, each in
 * the run between its two boxes. Wires from a terminal to itself or to one that is not there are left out.
 */
export function hookedUnit(task: HookupTask, wires: readonly HookupWire[]): Unit {
  const boxes = new Map(
    task.parts.flatMap(({id, terminals, enclosure}) =>
      terminals.map((terminal): [string, string] => [`${id}.${terminal}`, enclosure]),
    ),
  );
  const runs = new Map<string, CableRun>();
  const put: Wire[] = [];
  for (const wire of wires) {
    const [from, to] = [boxes.get(wire.from), boxes.get(wire.to)];
    if (from === undefined || to === undefined || wire.from === wire.to) continue;
    const [first, second] = [from, to].sort();
    const within = from === to;
    const run = within ? `hookup-${from}` : `hookup-${first}-${second}`;
    if (!runs.has(run))
      runs.set(run, {
        id: run,
        title: within
          ? `Wires in ${titleOf(task, from)}`
          : `Cable from ${titleOf(task, first)} to ${titleOf(task, second)}`,
        // a loose loom, a cable (common practice, no source)
        picofaradsPerFoot: within ? 12 : 25,
      });
    put.push({...wire, feet: within ? feetWithin : feetBetween, run});
  }
  return {
    id: task.id,
    title: task.title,
    about: task.about,
    frequencyHz: task.frequencyHz,
    nameplate: [{label: 'Task', value: task.title}],
    enclosures: task.enclosures,
    runs: [...task.runs, ...runs.values()],
    parts: task.parts,
    wires: [...task.given, ...put],
    circuits: task.circuits,
    plant: {kind: 'hand', start: task.plantStart},
    sequences: [],
  };
}

const titleOf = (task: HookupTask, box: string): string =>
  task.enclosures.find(({id}) => id === box)?.title.toLowerCase() ?? box;
