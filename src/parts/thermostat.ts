import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import {plantValueNames} from './plant-value.ts';
import {thermostatCalls} from './thermostat-calls.ts';

const data = z.strictObject({
  /** What it is set up for: which calls it has, and which of them heating and cooling make. */
  equipment: z
    .enum(['heat-pump', 'furnace', 'furnace-cooling', 'two-stage-cooling'])
    .default('heat-pump'),
  /** Plant value of the room it hangs in. */
  senses: z.enum(plantValueNames).default('roomDegF'),
  /** Reversing valve is energised in cooling (O). */
  differentialDegF: z.number().positive().max(5).default(1),
  /** Auxiliary heat joins when the room is this far below the set point. */
  auxiliaryBelowDegF: z.number().positive().max(10).default(2.5),
  /** The second stage of cooling joins when the room is this far above the set point. */
  secondStageAboveDegF: z.number().positive().max(10).default(2),
  /** Below this supply it goes blank and lets go of every call. */
  blankBelowVolts: z.number().positive().max(24).default(16),
});

export type ThermostatData = z.infer<typeof data>;

const modeTitles = {off: 'Off', cool: 'Cool', heat: 'Heat'} as const;
const modesOf = ({equipment}: ThermostatData): (keyof typeof modeTitles)[] =>
  equipment === 'furnace'
    ? ['off', 'heat']
    : equipment === 'two-stage-cooling'
      ? ['off', 'cool']
      : ['off', 'cool', 'heat'];

/** Room thermostat: R, C and a terminal for each call of its set-up. A contact from R is named for its call; `supply` R–C feeds it. */
export const thermostat = definePart({
  kind: 'thermostat',
  title: 'Thermostat',
  data,
  terminals: (d) => ['R', 'C', ...thermostatCalls[d.equipment]],
  elements: (d) => [
    // about 1.5 VA at 24 V for display and relays (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'R', b: 'C', acOhms: {re: 384, im: 0}, dcOhms: 22000},
    ...thermostatCalls[d.equipment].map((call) => ({
      is: 'contact' as const,
      id: call,
      a: 'R',
      b: call,
      normally: 'open' as const,
      closedOhms: 0.05,
    })),
  ],
  modes: (d) => [
    ...thermostatCalls[d.equipment].flatMap((call): FaultMode[] => [
      {
        id: `${call}-dead`,
        name: `${call} output dead`,
        changes: [{element: call, held: 'open'}],
        weight: 0.6,
      },
      {
        id: `${call}-stuck`,
        name: `${call} output stuck on`,
        changes: [{element: call, held: 'closed'}],
        weight: 0.3,
      },
    ]),
    {
      id: 'supply-open',
      name: 'blank, supply open inside',
      changes: [{element: 'supply', open: true}],
      weight: 0.6,
    },
  ],
  controls: (d) => [
    {
      id: 'mode',
      title: 'Mode',
      type: 'choice',
      choices: modesOf(d).map((value) => ({value, title: modeTitles[value]})),
      initial: 'off',
    },
    {
      id: 'fan',
      title: 'Fan',
      type: 'choice',
      choices: [
        {value: 'auto', title: 'Auto'},
        {value: 'on', title: 'On'},
      ],
      initial: 'auto',
    },
    {
      id: 'setPointDegF',
      title: 'Set point',
      type: 'number',
      min: 45,
      max: 95,
      step: 1,
      unit: '°F',
      initial: 72,
    },
  ],
});
