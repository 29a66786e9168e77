import type {Complex, ElementStates} from '../parts/element.ts';
import {motorWindings, type AnyMotor} from '../parts/motor-windings.ts';
import {add} from './complex.ts';
import {eliminate, windingOhms} from './motor-windings.ts';
import type {Plan} from './plan.ts';
import {solveAc} from './solve.ts';
import type {Solution} from './solution.ts';

/**
 * Everything outside one motor as its windings meet it: open-circuit volts at each winding's ends and the
 * impedances between them, ohms[row][column] being volts at winding `row` for one ampere into winding `column`.
 */
export interface WindingSource {
  readonly motor: AnyMotor;
  /** Resistance of its windings as a share of the model's. */
  readonly copper: number;
  readonly volts: readonly Complex[];
  readonly ohms: readonly (readonly Complex[])[];
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
  // all windings open: what is left is the network outside
  const solution = solveAc(plan, {...states, [motor]: {...states[motor], open: true}}, reuse);
  const coupling = plan.motors.find((each) => each.motor.id === motor)!;
  const windings = motorWindings(coupling.motor);
  const columns = windings.map(({a, b}) => {
    const volts = solution.injection(a, b);
    return windings.map((winding) => volts(winding.a, winding.b));
  });
  return {
    motor: coupling.motor,
    copper: states[motor]?.copper ?? 1,
    volts: windings.map(({a, b}) => solution.voltsBetween(a, b)),
    ohms: windings.map((_, row) => columns.map((column) => column[row])),
  };
}

/**
 * Winding amps of a motor at a speed, behind the given source: (Z outside + Z motor)·I = V, in the order of its
 * windings.
 *
 * @param speed per unit of synchronous
 */
export function motorAmpsBehind(source: WindingSource, speed: number): Complex[] {
  const inside = windingOhms(source.motor, speed, source.copper);
  const matrix = source.ohms.map((row, i) => row.map((ohms, j) => add(ohms, inside[i][j])));
  return eliminate(
    matrix,
    source.volts.map((volts) => [volts]),
  ).map(([amps]) => amps);
}
