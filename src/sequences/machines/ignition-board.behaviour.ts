import {dataOf} from '../../parts/part-kind.ts';
import type {ignitionBoard} from '../../parts/ignition-board.ts';
import {defineBehaviour} from '../part-behaviour.ts';
import {ignitionBoardMachine} from './ignition-board.machine.ts';
import {inputNames, inputsNow, type BoardInputs} from './ignition-inputs.ts';

type Ignition =
  | 'dark'
  | 'standby'
  | 'overheated'
  | 'lockedOut'
  | 'postPurge'
  | 'checking'
  | 'switchClosed'
  | 'drafting'
  | 'noDraft'
  | 'purging'
  | 'warmingUp'
  | 'trying'
  | 'burning'
  | 'failed'
  | 'airing';

/** The innermost name of a nested state. */
function ignitionOf(value: unknown): Ignition {
  let inner = (value as {ignition: unknown}).ignition;
  while (typeof inner === 'object' && inner !== null) inner = Object.values(inner)[0];
  return inner as Ignition;
}

const opensValve: ReadonlySet<Ignition> = new Set(['trying', 'burning']);
const feedsIgniter: ReadonlySet<Ignition> = new Set(['warmingUp', 'trying']);
const runsInducer: ReadonlySet<Ignition> = new Set([
  'overheated',
  'postPurge',
  'drafting',
  'noDraft',
  'purging',
  'warmingUp',
  'trying',
  'burning',
  'airing',
]);

export const ignitionBoardBehaviour = defineBehaviour<typeof ignitionBoardMachine>({
  machine: ignitionBoardMachine,
  input: (part) => {
    const data = dataOf<typeof ignitionBoard>(part);
    const ms = (seconds: number): number => Math.round(seconds * 1000);
    return {
      purgeMs: ms(data.purgeSeconds),
      igniterWarmUpMs: ms(data.igniterWarmUpSeconds),
      trialMs: ms(data.trialSeconds),
      interPurgeMs: ms(data.interPurgeSeconds),
      postPurgeMs: ms(data.postPurgeSeconds),
      tries: data.tries,
      lockoutMs: ms(data.lockoutMinutes * 60),
      draftWithinMs: ms(data.draftWithinSeconds),
      blowerOnMs: ms(data.blowerOnSeconds),
      blowerOffMs: ms(data.blowerOffSeconds),
      provedMicroamps: data.provedMicroamps,
      lostMicroamps: data.lostMicroamps,
      blankBelowVolts: data.blankBelowVolts,
    };
  },
  sense: (snapshot, look, part) => {
    const {context, value} = snapshot;
    const {inputs, dipEndsAtMs, wakesAtMs} = context;
    const now = inputsNow(context, look, part.id, opensValve.has(ignitionOf(value)));
    const {atMs} = look;
    // at time 0 the unit has long been standing there with its power on
    if (!inputs.powered && atMs > 0) {
      if (now.powered === (wakesAtMs !== undefined)) return undefined;
      return {type: now.powered ? 'power.came' : 'power.went', atMs};
    }
    if (inputNames.some((name) => now[name] && !inputs[name])) {
      const both = inputNames.map((name) => [name, now[name] || inputs[name]] as const);
      return {type: 'inputs.came', atMs, inputs: Object.fromEntries(both) as BoardInputs};
    }
    const dips = inputNames.some((name) => inputs[name] && !now[name]);
    if (dips === (dipEndsAtMs !== undefined)) return undefined;
    return dips ? {type: 'dip.began', atMs} : {type: 'dip.passed', atMs};
  },
  onTime: ({context, value}, look, part) => ({
    type: 'time.reached',
    atMs: look.atMs,
    inputs: inputsNow(context, look, part.id, opensValve.has(ignitionOf(value))),
  }),
  dueAtMs: ({context: {dueAtMs, blowerDueAtMs, dipEndsAtMs, wakesAtMs}}) => {
    const due = Math.min(
      ...[dueAtMs, blowerDueAtMs, dipEndsAtMs, wakesAtMs].map((at) => at ?? Infinity),
    );
    return due === Infinity ? undefined : due;
  },
  states: ({value}, {id}) => {
    const ignition = ignitionOf(value);
    const heats = value.blower === 'blowing' || value.blower === 'runningOn';
    return {
      [`${id}.inducer`]: {closed: runsInducer.has(ignition)},
      [`${id}.igniter`]: {closed: feedsIgniter.has(ignition)},
      [`${id}.valve`]: {closed: opensValve.has(ignition)},
      [`${id}.blower`]: {closed: heats || value.fan === 'on'},
    };
  },
  observe: ({value}, _look, {id, title}) => {
    const lamp = lampCodes[ignitionOf(value)];
    return [
      {
        part: id,
        is: lamp === undefined ? 'blank' : 'lit',
        sense: 'seen',
        text:
          lamp === undefined
            ? `The lamp of ${title} ${id} is dark.`
            : `The lamp of ${title} ${id}: ${lamp}.`,
        display: lamp ?? 'dark',
        behindCover: true,
      },
    ];
  },
});

/** The board's lamp. A code of our own, as its label would explain it. */
const lampCodes: Readonly<Record<Ignition, string | undefined>> = {
  dark: undefined,
  standby: 'slow flashing: standing by',
  postPurge: 'slow flashing: standing by',
  checking: 'steady: call for heat',
  drafting: 'steady: call for heat',
  purging: 'steady: call for heat',
  warmingUp: 'steady: call for heat',
  trying: 'steady: call for heat',
  burning: 'steady: call for heat',
  failed: 'steady: call for heat',
  airing: 'two flashes: no flame, trying again',
  lockedOut: 'three flashes: no flame, locked out',
  noDraft: 'four flashes: pressure switch open with the inducer on',
  switchClosed: 'five flashes: pressure switch closed with the inducer off',
  overheated: 'six flashes: limit or roll-out switch open',
};
