import {inSentence} from '../content/in-sentence.ts';
import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Control} from '../parts/part-kind.ts';
import {plantControls} from '../plant/plant-of.ts';
import type {MeterCare} from '../meter/meter-condition.ts';
import type {Action} from './actions.ts';

/** What was done, for its line in the field log. The fault that was named is what the student said, not what is. */
export function doneText(action: Action, unit: Unit): string {
  switch (action.do) {
    case 'set':
      return setText(action.target, action.value, unit);
    case 'lock':
      return `Hung lock and tag on ${action.part}`;
    case 'unlock':
      return `Took lock and tag off ${action.part}`;
    case 'open-cover':
      return `Took the cover off the ${title(unit, action.enclosure)}`;
    case 'close-cover':
      return `Put the cover on the ${title(unit, action.enclosure)}`;
    case 'lift':
      return `Lifted ${wireEnd(unit, action.end)}`;
    case 'land':
      return `Landed ${wireEnd(unit, action.end)}`;
    case 'jumper':
      return `Laid a jumper from ${action.from} to ${action.to}`;
    case 'remove-jumper':
      return `Took the jumper off ${action.from} and ${action.to}`;
    case 'renew':
      return renewed[action.what];
    case 'discharge':
      return `Laid a bleed resistor across ${action.from} and ${action.to}`;
    case 'wait':
      return `Waited ${duration(action.seconds)}`;
    case 'note':
    case 'hint':
      return action.text;
    case 'name':
      return `Named: ${faultName(unit, action.fault)}${action.evidence.length ? `, on the evidence of ${lines(action.evidence)}` : ', without evidence'}`;
    case 'clear':
      return 'Cleared the fault';
    case 'give-up':
      return 'Gave up the search';
    case 'meter':
    case 'keep':
    case 'read':
    case 'clamp':
      return '';
  }
}

const renewed: Readonly<Record<MeterCare, string>> = {
  battery: 'Put a fresh battery in the meter',
  leads: 'Took other leads for the meter',
  fuse: 'Put a new fuse in the meter',
};

/** "Thermostat TS: mode to Cool", "Outdoor temperature to 92 °F": by the titles that stand on the controls. */
function setText(target: string, value: string | number, unit: Unit): string {
  const at = target.indexOf('.');
  const part = unit.parts.find((each) => each.id === target.slice(0, at));
  const controls: readonly Control[] = part ? part.controls : plantControls(unit.plant.kind);
  const control = controls.find((each) => each.id === target.slice(at + 1));
  if (!control) return `Set ${target} to ${value}`;
  const shown =
    control.choices?.find((choice) => choice.value === value)?.title ??
    (control.unit ? `${value} ${control.unit}` : `${value}`);
  if (control.type === 'press')
    return `${part ? `${part.title} ${part.id}: ` : ''}pressed ${inSentence(control.title)}`;
  return part
    ? `${part.title} ${part.id}: ${inSentence(control.title)} to ${shown}`
    : `${control.title} to ${shown}`;
}

/** `W12.from`: "wire W12 off" its terminal is said by where it lands. */
function wireEnd(unit: Unit, end: string): string {
  const at = end.lastIndexOf('.');
  const wire = unit.wires.find((each) => each.id === end.slice(0, at));
  return wire
    ? `wire ${wire.id} at ${end.endsWith('.from') ? wire.from : wire.to}`
    : `wire end ${end}`;
}

const faultName = (unit: Unit, id: string): string =>
  catalogue(unit).find((fault) => fault.id === id)?.name ?? id;

const title = (unit: Unit, id: string): string =>
  inSentence(unit.enclosures.find((enclosure) => enclosure.id === id)?.title ?? id);

/** Log lines are numbered from 1 for people. */
const lines = (indices: readonly number[]): string =>
  `${indices.length === 1 ? 'line' : 'lines'} ${indices.map((index) => index + 1).join(', ')}`;

/** "10 s", "1 min", "1 min 30 s". */
export function duration(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = seconds - minutes * 60;
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}
