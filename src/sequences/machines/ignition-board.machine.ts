import {assign, setup} from 'xstate';
import {noInputs, type BoardInputs} from './ignition-inputs.ts';

export interface IgnitionSettings {
  readonly purgeMs: number;
  readonly igniterWarmUpMs: number;
  readonly trialMs: number;
  readonly interPurgeMs: number;
  readonly postPurgeMs: number;
  readonly tries: number;
  readonly lockoutMs: number;
  readonly draftWithinMs: number;
  readonly blowerOnMs: number;
  readonly blowerOffMs: number;
  readonly provedMicroamps: number;
  readonly lostMicroamps: number;
  readonly blankBelowVolts: number;
}

interface BoardContext extends IgnitionSettings {
  /** Inputs as the board has accepted them: what comes counts at once, what goes when it has stayed away. */
  readonly inputs: BoardInputs;
  readonly atMs: number;
  readonly dueAtMs: number | undefined;
  readonly blowerDueAtMs: number | undefined;
  readonly dipEndsAtMs: number | undefined;
  /** Power has come; until then its processor starts and it obeys nothing. */
  readonly wakesAtMs: number | undefined;
  /** The gas valve is open on a proved flame: the blower's clock runs. */
  readonly burning: boolean;
  /** The limit string is open: the blower must cool the heat exchanger now. */
  readonly overheated: boolean;
  readonly failedTries: number;
}
type BoardEvent =
  | {type: 'inputs.came'; atMs: number; inputs: BoardInputs}
  | {type: 'power.came'; atMs: number}
  | {type: 'power.went'; atMs: number}
  | {type: 'dip.began'; atMs: number}
  | {type: 'dip.passed'; atMs: number}
  | {type: 'time.reached'; atMs: number; inputs: BoardInputs};

/** A shorter loss of power, call, switch or flame it does not feel; a control fuse blows within it (common practice, no source). */
const ridesThroughMs = 1000;
/** From power to the first thing that it obeys: its processor starts and tests itself (common practice, no source). */
const wakesMs = 3000;
/** After a call the switch has this long to be found open: an inducer that has just stopped still turns. */
const checkMs = 10_000;

/**
 * Proves each step before it takes the next: switch open with the inducer at rest, draft, igniter hot, flame. Without
 * a flame in the trial time the valve closes, the chamber is aired and tried again, then the board locks out. The
 * blower follows the flame, late on and late off.
 */
export const ignitionBoardMachine = setup({
  types: {context: {} as BoardContext, input: {} as IgnitionSettings, events: {} as BoardEvent},
  guards: {
    isDark: ({context}) => !context.inputs.powered,
    isPowered: ({context}) => context.inputs.powered,
    limitIsOpen: ({context}) => !context.inputs.limit,
    limitIsClosed: ({context}) => context.inputs.limit,
    isCalled: ({context}) => context.inputs.called,
    callIsGone: ({context}) => !context.inputs.called,
    draftIsProved: ({context}) => context.inputs.pressure,
    draftIsLost: ({context}) => !context.inputs.pressure,
    flameIsProved: ({context}) => context.inputs.flame,
    flameIsLost: ({context}) => !context.inputs.flame,
    isDue: ({context, event}) =>
      event.type === 'time.reached' &&
      context.dueAtMs !== undefined &&
      event.atMs >= context.dueAtMs,
    blowerIsDue: ({context, event}) =>
      event.type === 'time.reached' &&
      context.blowerDueAtMs !== undefined &&
      event.atMs >= context.blowerDueAtMs,
    dipHasLasted: ({context, event}) =>
      event.type === 'time.reached' &&
      context.dipEndsAtMs !== undefined &&
      event.atMs >= context.dipEndsAtMs,
    hasWoken: ({context, event}) =>
      event.type === 'time.reached' &&
      context.wakesAtMs !== undefined &&
      event.atMs >= context.wakesAtMs,
    fanIsCalled: ({context}) => context.inputs.fanCalled,
    fanCallIsGone: ({context}) => !context.inputs.fanCalled,
    triesAreSpent: ({context}) => context.failedTries >= context.tries,
    isBurning: ({context}) => context.burning,
    isOverheated: ({context}) => context.overheated,
    isCool: ({context}) => !context.burning && !context.overheated,
  },
  actions: {
    wait: assign((_, params: {ms: number; atMs: number}) => ({dueAtMs: params.atMs + params.ms})),
    waitNoMore: assign({dueAtMs: undefined}),
    countTry: assign({failedTries: ({context}) => context.failedTries + 1}),
    forgetTries: assign({failedTries: 0}),
  },
}).createMachine({
  id: 'ignition board',
  context: ({input}) => ({
    ...input,
    inputs: noInputs,
    atMs: 0,
    dueAtMs: undefined,
    blowerDueAtMs: undefined,
    dipEndsAtMs: undefined,
    wakesAtMs: undefined,
    burning: false,
    overheated: false,
    failedTries: 0,
  }),
  type: 'parallel',
  on: {
    'inputs.came': {
      actions: assign({inputs: ({event}) => event.inputs, atMs: ({event}) => event.atMs}),
    },
  },
  states: {
    // first, so that the clock is right when the other regions set their due times
    inputs: {
      initial: 'steady',
      on: {'time.reached': {actions: assign({atMs: ({event}) => event.atMs})}},
      states: {
        steady: {
          on: {
            'power.came': {
              target: 'waking',
              actions: assign({
                wakesAtMs: ({event}) => event.atMs + wakesMs,
                atMs: ({event}) => event.atMs,
              }),
            },
            'dip.began': {
              target: 'dipping',
              actions: assign({
                dipEndsAtMs: ({event}) => event.atMs + ridesThroughMs,
                atMs: ({event}) => event.atMs,
              }),
            },
          },
        },
        waking: {
          exit: assign({wakesAtMs: undefined}),
          on: {
            'power.went': {target: 'steady', actions: assign({atMs: ({event}) => event.atMs})},
            'time.reached': {
              guard: 'hasWoken',
              target: 'steady',
              actions: assign({inputs: ({event}) => event.inputs, atMs: ({event}) => event.atMs}),
            },
          },
        },
        dipping: {
          exit: assign({dipEndsAtMs: undefined}),
          on: {
            'dip.passed': {target: 'steady', actions: assign({atMs: ({event}) => event.atMs})},
            'time.reached': {
              guard: 'dipHasLasted',
              target: 'steady',
              actions: assign({inputs: ({event}) => event.inputs, atMs: ({event}) => event.atMs}),
            },
          },
        },
      },
    },
    fan: {
      initial: 'off',
      states: {
        off: {always: {guard: 'fanIsCalled', target: 'on'}},
        on: {always: {guard: 'fanCallIsGone', target: 'off'}},
      },
    },
    ignition: {
      initial: 'dark',
      states: {
        dark: {
          entry: ['waitNoMore', 'forgetTries'],
          always: {guard: 'isPowered', target: 'awake'},
        },
        awake: {
          initial: 'standby',
          always: {guard: 'isDark', target: 'dark'},
          states: {
            standby: {
              entry: 'waitNoMore',
              always: [
                {guard: 'limitIsOpen', target: 'overheated'},
                {guard: 'isCalled', target: 'called'},
              ],
            },
            // blower and inducer carry the heat away until the string closes again
            overheated: {
              entry: ['waitNoMore', assign({overheated: true})],
              exit: assign({overheated: false}),
              always: {guard: 'limitIsClosed', target: 'standby'},
            },
            lockedOut: {
              id: 'lockedOut',
              entry: {
                type: 'wait',
                params: ({context}) => ({ms: context.lockoutMs, atMs: context.atMs}),
              },
              exit: 'forgetTries',
              always: {guard: 'callIsGone', target: 'standby'},
              on: {'time.reached': {guard: 'isDue', target: 'standby'}},
            },
            postPurge: {
              entry: {
                type: 'wait',
                params: ({context}) => ({ms: context.postPurgeMs, atMs: context.atMs}),
              },
              always: {guard: 'limitIsOpen', target: 'overheated'},
              on: {'time.reached': {guard: 'isDue', target: 'standby'}},
            },
            called: {
              initial: 'checking',
              exit: 'forgetTries',
              always: [
                {guard: 'limitIsOpen', target: 'overheated'},
                {guard: 'callIsGone', target: 'postPurge'},
              ],
              states: {
                checking: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: checkMs, atMs: context.atMs}),
                  },
                  always: {guard: 'draftIsLost', target: 'drafting'},
                  on: {'time.reached': {guard: 'isDue', target: 'switchClosed'}},
                },
                // a switch that is closed with the inducer at rest proves nothing: it waits
                switchClosed: {
                  entry: 'waitNoMore',
                  always: {guard: 'draftIsLost', target: 'drafting'},
                },
                drafting: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: context.draftWithinMs, atMs: context.atMs}),
                  },
                  always: {guard: 'draftIsProved', target: 'purging'},
                  on: {'time.reached': {guard: 'isDue', target: 'noDraft'}},
                },
                noDraft: {
                  entry: 'waitNoMore',
                  always: {guard: 'draftIsProved', target: 'purging'},
                },
                purging: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: context.purgeMs, atMs: context.atMs}),
                  },
                  always: {guard: 'draftIsLost', target: 'drafting'},
                  on: {'time.reached': {guard: 'isDue', target: 'warmingUp'}},
                },
                warmingUp: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: context.igniterWarmUpMs, atMs: context.atMs}),
                  },
                  always: {guard: 'draftIsLost', target: 'drafting'},
                  on: {'time.reached': {guard: 'isDue', target: 'trying'}},
                },
                trying: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: context.trialMs, atMs: context.atMs}),
                  },
                  always: [
                    {guard: 'draftIsLost', target: 'drafting'},
                    {guard: 'flameIsProved', target: 'burning'},
                  ],
                  on: {'time.reached': {guard: 'isDue', target: 'failed'}},
                },
                burning: {
                  entry: ['waitNoMore', assign({burning: true})],
                  exit: assign({burning: false}),
                  always: [
                    {guard: 'draftIsLost', target: 'drafting'},
                    {guard: 'flameIsLost', target: 'failed'},
                  ],
                },
                failed: {
                  entry: 'countTry',
                  always: [
                    {
                      guard: 'triesAreSpent',
                      target: '#lockedOut',
                    },
                    {target: 'airing'},
                  ],
                },
                airing: {
                  entry: {
                    type: 'wait',
                    params: ({context}) => ({ms: context.interPurgeMs, atMs: context.atMs}),
                  },
                  always: {guard: 'draftIsLost', target: 'drafting'},
                  on: {'time.reached': {guard: 'isDue', target: 'warmingUp'}},
                },
              },
            },
          },
        },
      },
    },
    blower: {
      initial: 'resting',
      states: {
        resting: {
          entry: assign({blowerDueAtMs: undefined}),
          always: [
            {guard: 'isOverheated', target: 'blowing'},
            {guard: 'isBurning', target: 'holdingBack'},
          ],
        },
        holdingBack: {
          entry: assign({blowerDueAtMs: ({context}) => context.atMs + context.blowerOnMs}),
          always: [
            {guard: 'isDark', target: 'resting'},
            {guard: 'isOverheated', target: 'blowing'},
            {guard: 'isCool', target: 'resting'},
          ],
          on: {'time.reached': {guard: 'blowerIsDue', target: 'blowing'}},
        },
        blowing: {
          entry: assign({blowerDueAtMs: undefined}),
          always: [
            {guard: 'isDark', target: 'resting'},
            {guard: 'isCool', target: 'runningOn'},
          ],
        },
        runningOn: {
          entry: assign({blowerDueAtMs: ({context}) => context.atMs + context.blowerOffMs}),
          always: [
            {guard: 'isDark', target: 'resting'},
            {guard: 'isBurning', target: 'blowing'},
            {guard: 'isOverheated', target: 'blowing'},
          ],
          on: {'time.reached': {guard: 'blowerIsDue', target: 'resting'}},
        },
      },
    },
  },
});
