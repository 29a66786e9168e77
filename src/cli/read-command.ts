import {parseArgs} from 'node:util';
import {calibrationOf} from '../meter/calibration.ts';
import {meterFunctions, type MeterFunction} from '../meter/meter-function.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import {readMeter, type Placement} from '../meter/read-meter.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {stateOf, stateOptions} from './state-options.ts';
import {unitOf} from './unit-argument.ts';
import {UsageError} from './usage-error.ts';

/** `rungbench read`: what the meter shows. */
export function readCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {
      ...stateOptions,
      meter: {type: 'string'},
      red: {type: 'string'},
      black: {type: 'string'},
      wire: {type: 'string'},
      seed: {type: 'string'},
      json: {type: 'boolean'},
    },
  });
  const unit = unitOf(positionals[0]);
  const fn = meterFunction(values.meter);
  const operating = stateOf(unit, values);
  const wires = unit.wires.map((wire) => wire.id);
  const at =
    fn === 'clamp-amps'
      ? clampAt(values.wire, wires)
      : leadsAt(values.red, values.black, operating);
  const display = readMeter(fn, operating, at, calibrationOf(seedOf(values.seed)));
  print(values.json ? JSON.stringify(asJson(display)) : inWords(display));
}

function meterFunction(name: string | undefined): MeterFunction {
  if (name === undefined)
    throw new UsageError(`Choose a function: --meter ${meterFunctions.join(' | ')}.`);
  const found = meterFunctions.find((fn) => fn === name);
  if (!found) throw UsageError.unknown('meter function', name, meterFunctions);
  return found;
}

function leadsAt(
  red: string | undefined,
  black: string | undefined,
  operating: OperatingUnit,
): Placement {
  const points = [...operating.probePoints(), 'earth'];
  for (const [lead, point] of Object.entries({red, black})) {
    if (point === undefined)
      throw new UsageError(`Put the ${lead} lead somewhere: --${lead} PART.TERMINAL.`);
    if (!points.includes(point)) throw UsageError.unknown('point for a lead', point, points);
  }
  return {red: red!, black: black!};
}

function clampAt(wire: string | undefined, wires: readonly string[]): Placement {
  if (wire === undefined) throw new UsageError('Close the clamp around a wire: --wire W15.');
  if (!wires.includes(wire)) throw UsageError.unknown('wire', wire, wires);
  return {wire};
}

function seedOf(text: string | undefined): number {
  if (text === undefined) return 0;
  if (!/^\d{1,9}$/.test(text))
    throw new UsageError(`--seed ${text} is not a whole number from 0 on.`);
  return Number(text);
}

function asJson({
  text,
  unit,
  value,
  overload,
  tone,
  hazard,
}: MeterDisplay): Record<string, unknown> {
  return {
    display: text,
    unit,
    value: value ?? null,
    overload,
    ...(tone === undefined ? {} : {tone}),
    ...(hazard ? {hazard} : {}),
  };
}

function inWords({text, unit, tone, hazard}: MeterDisplay): string {
  const notes = [
    ...(tone ? ['tone'] : []),
    ...(hazard ? ['warning triangle: voltage on the leads, no resistance reading'] : []),
  ];
  return `${text} ${unit}${notes.length ? ` (${notes.join('; ')})` : ''}`;
}
