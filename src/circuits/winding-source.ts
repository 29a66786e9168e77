import type {Complex, ElementStates, MotorModel} from '../parts/element.ts';
import {add, divide, multiply, quarterTurn, subtract} from './complex.ts';
import {motorOhms} from './motor-impedance.ts';
import type {Plan} from './plan.ts';
import {solveAc} from './solve.ts';
import type {Solution} from './solution.ts';

/**
 * Everything outside one motor as its two windings meet it: open-circuit volts at the main and start ports and the
 * 2×2 impedance between them, ohms[row][column] being volts at port `row` for one ampere into port `column`.
 */
export interface WindingSource {
  readonly mainVolts: Complex;
  readonly startVolts: Complex;
  readonly ohms: readonly [readonly [Complex, Complex], readonly [Complex, Complex]];
}

/**
 * Finds the source behind a motor's windings, with everything else as `states` has it. One solve; then
 * {@link motorAmpsBehind} gives the amps at any speed without solving again.
 *
 * @param motor placed motor id
 */
export function windingSource(
  plan: Plan,
  states: ElementStates,
  motor: string,
  reuse?: Solution,
): WindingSource {
  // both windings open: what is left is the network outside
  const solution = solveAc(plan, {...states, [motor]: {...states[motor], open: true}}, reuse);
  const coupling = plan.motors.find((each) => each.motor.id === motor)!;
  const {main, start} = coupling.motor;
  const mainPort = solution.injection(main.a, main.b);
  const [mm, sm] = [mainPort(main.a, main.b), mainPort(start.a, start.b)];
  const startPort = solution.injection(start.a, start.b);
  const [ms, ss] = [startPort(main.a, main.b), startPort(start.a, start.b)];
  return {
    mainVolts: solution.voltsBetween(main.a, main.b),
    startVolts: solution.voltsBetween(start.a, start.b),
    ohms: [
      [mm, ms],
      [sm, ss],
    ],
  };
}

/**
 * Winding amps of a motor at a speed, behind the given source: Cramer's rule on (Z outside + Z motor)·I = V.
 *
 * @param speed per unit of synchronous
 */
export function motorAmpsBehind(
  source: WindingSource,
  model: MotorModel,
  speed: number,
): {main: Complex; start: Complex} {
  const z = motorOhms(model, speed);
  const turned = quarterTurn(z.coupling);
  const mm = add(source.ohms[0][0], z.main);
  const ms = subtract(source.ohms[0][1], turned);
  const sm = add(source.ohms[1][0], turned);
  const ss = add(source.ohms[1][1], z.start);
  const determinant = subtract(multiply(mm, ss), multiply(ms, sm));
  const {mainVolts, startVolts} = source;
  return {
    main: divide(subtract(multiply(mainVolts, ss), multiply(ms, startVolts)), determinant),
    start: divide(subtract(multiply(mm, startVolts), multiply(sm, mainVolts)), determinant),
  };
}
