/** One value on its way: x(t) = target + (start − target)·e^(−(t − startMs)/τ), the first-order step response. */
export interface Course {
  readonly startMs: number;
  readonly start: number;
  readonly target: number;
  /** Time constant; 0 = the value stays where it was put. */
  readonly tauMs: number;
}

/** A value that nothing moves. */
export function still(value: number, atMs: number): Course {
  return {startMs: atMs, start: value, target: value, tauMs: 0};
}

export function valueAt(course: Course, atMs: number): number {
  if (course.tauMs === 0 || course.start === course.target) return course.start;
  return (
    course.target +
    (course.start - course.target) * Math.exp(-Math.max(0, atMs - course.startMs) / course.tauMs)
  );
}

/** Whether a value is at or beyond a set point. */
export function isBeyond(value: number, setPoint: number, on: 'rise' | 'fall'): boolean {
  return on === 'rise' ? value >= setPoint : value <= setPoint;
}

/**
 * First whole millisecond after `afterMs` at which the course is at or beyond the set point; undefined when it
 * never gets there, or is there already (then there is nothing to cross).
 */
export function reachesAtMs(
  course: Course,
  setPoint: number,
  on: 'rise' | 'fall',
  afterMs: number,
): number | undefined {
  if (isBeyond(valueAt(course, afterMs), setPoint, on)) return undefined;
  if (course.tauMs === 0 || course.start === course.target) return undefined;
  // a response only ever nears its target, so a set point at or past it is never reached
  const share = (setPoint - course.target) / (course.start - course.target);
  if (!(share > 0) || share >= 1) return undefined;
  let atMs = Math.max(afterMs + 1, Math.floor(course.startMs - course.tauMs * Math.log(share)));
  // rounding may leave it a hair short: the answer must itself be beyond, or the same crossing comes again
  for (let tries = 0; tries < 4; tries++, atMs++)
    if (isBeyond(valueAt(course, atMs), setPoint, on)) return atMs;
  // within rounding of the target the curve is flat: take it as never reached
  return undefined;
}
