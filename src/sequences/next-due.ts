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
  for (const {watches} of works.operated())
    for (const {value, setPoint, on} of watches) {
      const crossesAtMs = works.course.reachesAtMs(value, setPoint, on, works.atMs);
      if (crossesAtMs !== undefined && crossesAtMs < atMs) {
        atMs = crossesAtMs;
        // the part that waits for it sees it when the unit settles
        fire = nothing;
      }
    }
  return atMs === Infinity ? undefined : {atMs, fire};
}

const nothing = (): void => undefined;
const timeReached = (atMs: number): {type: string; atMs: number} => ({type: 'time.reached', atMs});
