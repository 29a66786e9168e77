import {parseArgs} from 'node:util';
import {MeterInHand} from '../bench/meter-in-hand.ts';
import {statedError} from '../meter/accuracy-text.ts';
import {accuracyBand} from '../meter/accuracy.ts';
import {calibrationOf} from '../meter/calibration.ts';
import {displayNotes} from '../meter/display-notes.ts';
import type {Extremes} from '../meter/extremes.ts';
import {meterFlaws, type MeterFlaw} from '../meter/meter-condition.ts';
import {clampFunctions, meterFunctions, type MeterFunction} from '../meter/meter-function.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {Placement} from '../meter/read-meter.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {milliseconds} from './do-action.ts';
import {stateOf, stateOptions} from './state-options.ts';
import {unitOf} from './unit-argument.ts';
import {UsageError} from './usage-error.ts';

/** `rungbench read`: what the meter shows, and with --record the least and the most while time passes. */
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
      flaw: {type: 'string'},
      record: {type: 'string'},
      error: {type: 'boolean'},
      json: {type: 'boolean'},
    },
  });
  const unit = unitOf(positionals[0]);
  const fn = meterFunction(values.meter);
  const operating = stateOf(unit, values);
  const wires = unit.wires.map((wire) => wire.id);
  const at = clampFunctions.has(fn)
    ? clampAt(values.wire, wires)
    : leadsAt(values.red, values.black, operating);
  const meter = new MeterInHand(operating, calibrationOf(seedOf(values.seed)), flawOf(values.flaw));
  // what --do has laid into the circuit is not taken off by choosing the function again
  if (fn !== meter.function && operating.meterLeads === undefined) meter.choose(fn);
  meter.function = fn;
  if (values.record !== undefined) meter.keep('extremes');
  const display = 'wire' in at ? meter.clampOn(at.wire) : meter.read(at.red, at.black);
  if (values.record !== undefined) meter.wait(milliseconds(values.record));
  const {extremes} = meter;
  print(
    values.json
      ? JSON.stringify(asJson(display, extremes, values.error ? fn : undefined))
      : [
          inWords(display),
          ...(values.error ? errorIn(fn, display) : []),
          ...(extremes ? [recorded(extremes)] : []),
        ].join('\n'),
  );
}

function flawOf(name: string | undefined): MeterFlaw | undefined {
  if (name === undefined) return undefined;
  const found = meterFlaws.find((flaw) => flaw === name);
  if (!found) throw UsageError.unknown('flaw of a meter', name, meterFlaws);
  return found;
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

/** @param errorOf the function whose limits of error are wanted too */
function asJson(
  display: MeterDisplay,
  extremes: Extremes | undefined,
  errorOf: MeterFunction | undefined,
): Record<string, unknown> {
  const {text, unit, value, overload, tone, hazard, charged, climbed, batteryLow, fuseBlew} =
    display;
  const band = errorOf && statedError(errorOf, display) && accuracyBand(errorOf, display);
  return {
    display: text,
    unit,
    value: value ?? null,
    overload,
    ...(tone === undefined ? {} : {tone}),
    ...(hazard ? {hazard} : {}),
    ...(charged ? {charged} : {}),
    ...(climbed ? {climbed} : {}),
    ...(batteryLow ? {batteryLow} : {}),
    ...(fuseBlew ? {fuseBlew} : {}),
    ...(band ? {truly: [band.low, band.high]} : {}),
    ...(extremes ? {least: extremes.least.value ?? null, most: extremes.most.value ?? null} : {}),
  };
}

function inWords(display: MeterDisplay): string {
  const {text, unit, tone, hazard, charged} = display;
  const notes = [
    ...(tone ? ['tone'] : []),
    ...(hazard && !charged
      ? [
          `warning triangle: voltage on the leads, no ${unit.endsWith('F') ? 'capacitance' : 'resistance'} reading`,
        ]
      : []),
    ...displayNotes({...display, hazard: charged ?? false}).map(
      (note) => note.charAt(0).toLowerCase() + note.slice(1),
    ),
  ];
  return `${text} ${unit}${notes.length ? ` (${notes.join('; ')})` : ''}`;
}

/** `±0.27 V AC = ±(1 % of 24.00 + 3 × 0.01) V AC`, where the reading has a number. */
function errorIn(fn: MeterFunction, display: MeterDisplay): string[] {
  const error = statedError(fn, display);
  return error ? [`${error.limit} = ${error.arithmetic}`] : [];
}

const recorded = ({least, most}: Extremes): string =>
  `min ${least.text} ${least.unit}, max ${most.text} ${most.unit}`;
