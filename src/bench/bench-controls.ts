import {inSentence} from '../content/in-sentence.ts';
import type {Unit} from '../content/unit.ts';
import type {Control} from '../parts/part-kind.ts';
import {plantControls} from '../plant/plant-of.ts';
import {unknown, type Reach} from './reach.ts';

/** A control as it stands on the unit, before any value. */
export interface PlacedControl {
  readonly target: string;
  readonly part: string;
  readonly control: Control;
}

/** Every control that a student may work: those of the parts, covers to tap on, then the weather and the room. */
export function controlsOf(unit: Unit): PlacedControl[] {
  const parts = unit.parts.flatMap((part) =>
    part.controls.map((control) => ({target: `${part.id}.${control.id}`, part: part.id, control})),
  );
  const plant = plantControls(unit.plant.kind)
    .filter((control) => control.setBy === 'anyone' && control.id in unit.plant.start)
    .map((control) => ({target: `plant.${control.id}`, part: 'plant', control}));
  // a loose joint may make when the sheet metal about it shakes
  const covers = unit.enclosures
    .filter(({cover}) => cover)
    .map(({id, title}): PlacedControl => ({
      target: `${id}.tap`,
      part: id,
      control: {id: 'tap', title: `Tap the ${inSentence(title)}`, type: 'press', initial: ''},
    }));
  return [...parts, ...covers, ...plant];
}

/** Why this control cannot be set to this value, in a sentence; undefined when it can. */
export function refuseSetting(
  controls: readonly PlacedControl[],
  target: string,
  value: string | number,
  reach: Reach,
  open: ReadonlySet<string>,
  locked: ReadonlySet<string>,
): string | undefined {
  const found = controls.find((each) => each.target === target);
  if (!found)
    return unknown(
      'control',
      target,
      controls.map((each) => each.target),
    );
  const {control, part} = found;
  if (locked.has(part))
    return `${part} is locked and tagged; take your lock off before you move it.`;
  // levers, dials and displays are on the outside; a reset button sits on the part itself
  if (control.type === 'press' && part !== 'plant') {
    const refusal = reach.refuseCover(part, `The ${control.title.toLowerCase()} of ${part}`, open);
    if (refusal) return refusal;
  }
  return refuseValue(target, control, value);
}

function refuseValue(target: string, control: Control, value: string | number): string | undefined {
  if (control.type === 'choice') {
    const choices = (control.choices ?? []).map((choice) => choice.value);
    return choices.includes(String(value))
      ? undefined
      : `${target} cannot be "${value}"; it is one of ${choices.join(', ')}.`;
  }
  if (control.type === 'number') {
    const {min = -Infinity, max = Infinity, unit = ''} = control;
    const fits = typeof value === 'number' && value >= min && value <= max;
    return fits
      ? undefined
      : `${target} cannot be ${value}; give a number from ${min} to ${max} ${unit}`.trim() + '.';
  }
  return undefined;
}

/** Whether this value of an isolating control lets no current pass, by a position that a lock can hold. */
export const isolating = (value: string | number): boolean => value === 'open' || value === 'off';
