import type {MotorModel} from '../parts/element.ts';

/** Search step, share of synchronous speed: finer than the hump of any torque curve. */
const step = 0.02;

/**
 * Speed at which a rotor comes to rest or runs on, starting from its present speed: it speeds up while the torque
 * is more than the load's and slows while it is less, and stays at the first stable meeting of the two. From
 * standstill it leaves only above the breakaway torque. Run-up takes no time here.
 *
 * @param torqueAt air-gap torque in newton-metres at a share of synchronous speed, forward positive
 * @returns share of synchronous speed; negative when it turns backwards
 */
export function balancedSpeed(
  model: Pick<MotorModel, 'loadNewtonMetres' | 'loadExponent' | 'breakawayNewtonMetres'>,
  present: number,
  torqueAt: (speed: number) => number,
): number {
  let direction = Math.sign(present);
  if (direction === 0) {
    const starting = torqueAt(0);
    if (Math.abs(starting) <= model.breakawayNewtonMetres) return 0;
    direction = Math.sign(starting);
  }
  const surplus = (speed: number): number =>
    direction * torqueAt(direction * speed) - model.loadNewtonMetres * speed ** model.loadExponent;

  let speed = Math.abs(present);
  if (present === 0 || surplus(speed) > 0) {
    // climbs; no induction motor reaches synchronous speed, so there is a meeting below it
    while (speed < 1) {
      const next = Math.min(1, speed + step);
      if (surplus(next) <= 0) return direction * meeting(surplus, speed, next);
      speed = next;
    }
    return direction;
  }
  while (speed > 0) {
    const next = Math.max(0, speed - step);
    if (next > 0 && surplus(next) > 0) return direction * meeting(surplus, next, speed);
    speed = next;
  }
  return 0;
}

/** Speed between `low` (surplus) and `high` (none) at which they meet, by bisection to a billionth. */
function meeting(surplus: (speed: number) => number, low: number, high: number): number {
  for (let i = 0; i < 26; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
