import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import {plantValueNames} from './plant-value.ts';

const data = z.strictObject({
  /** Plant value of the room it hangs in. */
  senses: z.enum(plantValueNames).default('roomDegF'),
  /** Reversing valve is energised in cooling (O). */
  differentialDegF: z.number().positive().max(5).default(1),
  /** Auxiliary heat joins when the room is this far below the set point. */
  auxiliaryBelowDegF: z.number().positive().max(10).default(2.5),
  /** Below this supply it goes blank and lets go of every call. */
  blankBelowVolts: z.number().positive().max(24).default(16),
});

const calls = ['Y', 'G', 'O', 'W2'] as const;

/** Heat-pump room thermostat, R C Y G O W2. Contacts `Y`, `G`, `O`, `W2` from R; `supply` R–C feeds it. */
export const thermostat = definePart({
  kind: 'thermostat',
  title: 'Thermostat',
  data,
  terminals: () => ['R', 'C', ...calls],
  elements: () => [
    // about 1.5 VA at 24 V for display and relays (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'R', b: 'C', acOhms: {re: 384, im: 0}, dcOhms: 22000},
    ...calls.map((call) => ({
      is: 'contact' as const,
      id: call,
      a: 'R',
      b: call,
      normally: 'open' as const,
      closedOhms: 0.05,
    })),
  ],
  modes: () => [
    ...calls.flatMap((call): FaultMode[] => [
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
  controls: () => [
    {
      id: 'mode',
      title: 'Mode',
      type: 'choice',
      choices: [
        {value: 'off', title: 'Off'},
        {value: 'cool', title: 'Cool'},
        {value: 'heat', title: 'Heat'},
      ],
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
