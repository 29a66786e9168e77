import type {Control} from '../parts/part-kind.ts';
import {WrongTargetError} from './wrong-target-error.ts';

/**
 * The value that a control takes when somebody sets it. Numbers may come as text. Throws WrongTargetError naming
 * the right values where it cannot take this one.
 */
export function setControl(
  target: string,
  control: Pick<Control, 'type' | 'choices' | 'min' | 'max'>,
  value: string | number,
): string | number {
  if (control.type === 'press') return 'pressed';
  if (control.type === 'choice') {
    const choices = (control.choices ?? []).map((choice) => choice.value);
    const chosen = choices.find((choice) => choice === String(value));
    if (chosen === undefined)
      throw new WrongTargetError(`position of ${target}`, String(value), choices);
    return chosen;
  }
  const number = typeof value === 'number' ? value : value.trim() === '' ? NaN : Number(value);
  const {min = -Infinity, max = Infinity} = control;
  if (!(number >= min && number <= max))
    throw new WrongTargetError(`value for ${target}`, String(value), [
      `a number from ${min} to ${max}`,
    ]);
  return number;
}
