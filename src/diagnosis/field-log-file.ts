import type {Action} from '../bench/actions.ts';
import type {AttemptRecord} from '../bench/attempt.ts';
import {readAttemptFile} from '../bench/attempt-file.ts';
import {overload, show} from '../meter/display.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** One thing done, with what the meter showed where it was a reading. */
export interface LoggedAction {
  readonly action: Action;
  readonly function: MeterFunction;
  readonly display?: MeterDisplay;
}

/** A field log written down by hand or by another program: what was done at a unit, and what was read. */
export interface FieldLog {
  readonly unit: string;
  readonly log: readonly LoggedAction[];
}

export type ReadLog = {readonly log: FieldLog} | {readonly reason: string};

/**
 * Reads a field log: `{"format": "rungbench-log", "version": 1, "unit": ID, "log": [ACTION…]}`. Actions are those of
 * an attempt; a `read` or `clamp` also has `shows`, an amount in volts, ohms, amps, hertz or farads, `"OL"`, or `"hazard"` for the
 * warning triangle.
 */
export function readFieldLog(text: string): ReadLog {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    return {
      reason: `This is not a whole JSON file (${where}). It may be cut short: write it again.`,
    };
  }
  if (!isRecord(value) || value.format !== 'rungbench-log')
    return {
      reason:
        'This file is no field log (its "format" is not "rungbench-log") and no attempt. See rungbench --help for what a log looks like.',
    };
  if (value.version !== 1)
    return {
      reason: `The log's "version" is ${JSON.stringify(value.version) ?? 'missing'}, and this Rungbench reads version 1.`,
    };
  if (typeof value.unit !== 'string')
    return {reason: 'The log does not name its "unit": give the id of the unit it was taken at.'};
  if (!Array.isArray(value.log))
    return {reason: 'The log has no list "log": give the actions in order, each as an object.'};
  const shown: unknown[] = [];
  const actions = value.log.map((line: unknown) => {
    if (!isRecord(line)) return line;
    const {shows, ...action} = line;
    shown.push(shows);
    return action;
  });
  const checked = readAttemptFile(JSON.stringify({...emptyAttempt, unit: value.unit, actions}));
  if ('reason' in checked) return {reason: checked.reason.replaceAll('"actions"', '"log"')};
  return withDisplays(value.unit, checked.attempt.actions, shown);
}

/** The actions of a log are checked as those of an attempt are; the rest of an attempt does not matter here. */
const emptyAttempt: AttemptRecord = {
  format: 'rungbench-attempt',
  version: 1,
  id: 'log',
  unit: '',
  complaint: '',
  sealed: '',
  seed: 0,
  begunAt: '2000-01-01T00:00:00Z',
  actions: [],
};

function withDisplays(
  unit: string,
  actions: readonly Action[],
  shown: readonly unknown[],
): ReadLog {
  let fn: MeterFunction = 'ac-volts';
  const log: LoggedAction[] = [];
  for (const [i, action] of actions.entries()) {
    if (action.do === 'meter') fn = action.function;
    if (action.do !== 'read' && action.do !== 'clamp') {
      log.push({action, function: fn});
      continue;
    }
    const display = displayOf(fn, shown[i]);
    if (!display)
      return {
        reason: `At "log", no. ${i + 1}: the reading has no "shows"; give an amount in the base unit, "OL" or "hazard".`,
      };
    log.push({action, function: fn, display});
  }
  return {log: {unit, log}};
}

function displayOf(fn: MeterFunction, shows: unknown): MeterDisplay | undefined {
  if (typeof shows === 'number' && Number.isFinite(shows)) return show(fn, shows);
  if (shows === 'OL') return overload(fn);
  if (shows === 'hazard') return {...overload(fn), hazard: true};
  return undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
