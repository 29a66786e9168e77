import {isMotor, type AnyMotor} from '../parts/motor-windings.ts';
import type {Complex, MotorModel, ThreePhaseMotorModel} from '../parts/element.ts';
import {divide, multiply, quarterTurn, scale, subtract} from './complex.ts';
import {motorOhms, motorTorque} from './motor-impedance.ts';
import {threePhaseTorque, windingMatrix} from './three-phase-motor.ts';

export {isMotor};

/**
 * Volts of each winding for an ampere in each, at a speed; rows and columns in the order of `motorWindings`.
 *
 * @param copper resistance of the stator windings as a share of the model's
 */
export function windingOhms(motor: AnyMotor, speed: number, copper = 1): Complex[][] {
  const matrix = coldWindingOhms(motor, speed);
  if (copper !== 1)
    matrix.forEach((row, i) => {
      const {re, im} = row[i]!;
      row[i] = {re: re + (copper - 1) * coldOhms(motor, i), im};
    });
  return matrix;
}

/** Ohms of one winding by the model: what `motorWindings` says, without its list, for the search of a speed. */
function coldOhms({is, model}: AnyMotor, winding: number): number {
  if (is === 'threePhaseMotor') return (model as ThreePhaseMotorModel).windingOhms;
  const {mainOhms, startOhms} = model as MotorModel;
  return winding === 0 ? mainOhms : startOhms;
}

function coldWindingOhms(motor: AnyMotor, speed: number): Complex[][] {
  if (motor.is === 'threePhaseMotor') return windingMatrix(motor.model, speed);
  const {main, start, coupling} = motorOhms(motor.model, speed);
  const turned = quarterTurn(coupling);
  return [
    [main, scale(turned, -1)],
    [turned, start],
  ];
}

/** Air-gap torque of any motor, newton-metres; positive drives forward. Amps in the order of `motorWindings`. */
export function airGapTorque(
  motor: AnyMotor,
  amps: readonly Complex[],
  speed: number,
  frequencyHz: number,
): number {
  return motor.is === 'threePhaseMotor'
    ? threePhaseTorque(motor.model, amps, speed, frequencyHz)
    : motorTorque(motor, amps[0]!, amps[1]!, speed, frequencyHz);
}

/**
 * Inverse of a small matrix, and its product with whatever stands beside it: Gauss and Jordan's elimination down the
 * diagonal. Winding resistance is on the diagonal of every matrix here, so no pivot vanishes. Overwrites its input.
 *
 * @returns the right-hand columns after elimination: `columns[row][k]`
 */
export function eliminate(matrix: Complex[][], columns: Complex[][]): Complex[][] {
  const size = matrix.length;
  for (let k = 0; k < size; k += 1) {
    const pivot = matrix[k]![k]!;
    for (const row of [matrix[k]!, columns[k]!])
      for (let c = 0; c < row.length; c += 1) row[c] = divide(row[c]!, pivot);
    for (let i = 0; i < size; i += 1) {
      if (i === k) continue;
      const factor = matrix[i]![k]!;
      for (const rows of [matrix, columns])
        for (let c = 0; c < rows[i]!.length; c += 1)
          rows[i]![c] = subtract(rows[i]![c]!, multiply(factor, rows[k]![c]!));
    }
  }
  return columns;
}
