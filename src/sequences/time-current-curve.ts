/**
 * How long something carries a current before it opens: points of (multiple of rating, seconds), joined by straight
 * lines in log–log, as time-current curves are drawn.
 */
export interface TimeCurrentCurve {
  /** Rising multiples, falling seconds. Below the first it carries for ever. */
  readonly points: readonly (readonly [multiple: number, seconds: number])[];
  /** At or above this multiple it opens at once. */
  readonly atOnce: number;
  /** Time constant with which the heat of a passed overload is lost, seconds. */
  readonly coolingSeconds: number;
}

/** Seconds from cold to opening at a steady multiple of rating; Infinity where it carries for ever. */
export function secondsToOpen(curve: TimeCurrentCurve, multiple: number): number {
  const {points} = curve;
  if (multiple >= curve.atOnce) return 0;
  if (!(multiple >= points[0]![0])) return Infinity;
  for (let i = 1; i < points.length; i++) {
    const [m1, s1] = points[i - 1]!;
    const [m2, s2] = points[i]!;
    if (multiple <= m2) return s1 * (s2 / s1) ** (Math.log(multiple / m1) / Math.log(m2 / m1));
  }
  // past the last point all the heat stays in the link: I²t is constant
  const [last, seconds] = points[points.length - 1]!;
  return seconds * (last / multiple) ** 2;
}

/** How far an overload has gone, as a share of what opens it; steady current since `sinceMs`. */
export interface Overload {
  readonly share: number;
  readonly sinceMs: number;
  /** Present multiple of rating, taken as 0 wherever the curve carries for ever. */
  readonly multiple: number;
}

export const cold: Overload = {share: 0, sinceMs: 0, multiple: 0};

/** The current has changed: reckon what the old one did, go on with the new one. */
export function follow(
  curve: TimeCurrentCurve,
  overload: Overload,
  multiple: number,
  atMs: number,
): Overload {
  return {share: shareAt(curve, overload, atMs), sinceMs: atMs, multiple: heeded(curve, multiple)};
}

function shareAt(
  curve: TimeCurrentCurve,
  {share, sinceMs, multiple}: Overload,
  atMs: number,
): number {
  const seconds = (atMs - sinceMs) / 1000;
  if (multiple === 0) return share * Math.exp(-seconds / curve.coolingSeconds);
  const whole = secondsToOpen(curve, multiple);
  return whole === 0 ? 1 : Math.min(1, share + seconds / whole);
}

/** The multiple as the curve heeds it: 0 where it carries for ever. */
export function heeded(curve: TimeCurrentCurve, multiple: number): number {
  return multiple >= curve.points[0]![0] ? multiple : 0;
}

/** Whether a present multiple differs from the one reckoned with by more than a reading's worth. */
export function hasChanged(curve: TimeCurrentCurve, overload: Overload, multiple: number): boolean {
  const now = heeded(curve, multiple);
  return Math.abs(now - overload.multiple) > 0.002 * overload.multiple;
}

/** Whole millisecond at which the present current opens it; undefined where it never does. */
export function opensAtMs(curve: TimeCurrentCurve, overload: Overload): number | undefined {
  if (overload.multiple === 0) return undefined;
  const seconds = (1 - overload.share) * secondsToOpen(curve, overload.multiple);
  return overload.sinceMs + Math.max(1, Math.ceil(seconds * 1000));
}
