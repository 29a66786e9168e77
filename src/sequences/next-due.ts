import {jointWatch} from './loose-joint.ts';
import type {PlantWatch} from './part-behaviour.ts';
import type {Works} from './works.ts';

/** The next thing that time will bring, and how to let it happen. */
export interface Due {
  readonly atMs: number;
  fire(): void;
}

/**
 * The earliest of: a due time of a part, the plant looking at its course again, a plant value reaching a set point
 * that a part waits for. At one moment parts come first, in the order of the unit file; one thing at a time.
 */
export function nextDue(works: Works): Due | undefined {
  let atMs = Infinity;
  let fire: () => void = nothing;
  works.operated().forEach(({behaviour, dueAtMs, part, state}, index) => {
    if (dueAtMs === undefined || dueAtMs >= atMs) return;
    atMs = dueAtMs;
    fire = () =>
      works.send(index, behaviour.onTime?.(state, works, part) ?? timeReached(works.atMs));
  });
  const plantAtMs = works.course.dueAtMs();
  if (plantAtMs !== undefined && plantAtMs < atMs) {
    atMs = plantAtMs;
    fire = () => {
      works.course = works.course.arrive(works.atMs);
    };
  }
  const waitFor = ({value, setPoint, on}: PlantWatch): void => {
    const crossesAtMs = works.course.reachesAtMs(value, setPoint, on, works.atMs);
    if (crossesAtMs === undefined || crossesAtMs >= atMs) return;
    atMs = crossesAtMs;
    // what waits for it sees it when the unit settles
    fire = nothing;
  };
  for (const {watches} of works.operated()) for (const watch of watches) waitFor(watch);
  for (const joint of works.joints) {
    const watch = jointWatch(joint);
    if (watch) waitFor(watch);
    if (joint.dueAtMs !== undefined && joint.dueAtMs < atMs) {
      atMs = joint.dueAtMs;
      fire = nothing;
    }
  }
  return atMs === Infinity ? undefined : {atMs, fire};
}

const nothing = (): void => undefined;
const timeReached = (atMs: number): {type: string; atMs: number} => ({type: 'time.reached', atMs});
