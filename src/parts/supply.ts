import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';

const data = z.strictObject({
  /** One entry for each live conductor, volts to the neutral. */
  legs: z
    .array(
      z.strictObject({
        terminal: terminalName,
        volts: z.number().positive().max(1000),
        degrees: z.number().min(-360).max(360),
      }),
    )
    .min(1)
    .max(3),
  /** Ohms and reactance of utility transformer and service conductors, per leg. */
  sourceOhms: z.number().positive().max(10).default(0.02),
  sourceReactanceOhms: z.number().min(0).max(10).default(0.01),
});

/** The building's service: live legs, neutral, and the equipment ground bonded to it. */
export const supply = definePart({
  kind: 'supply',
  title: 'Service supply',
  data,
  terminals: (d) => [...d.legs.map((leg) => leg.terminal), 'N', 'G'],
  elements: (d) => [
    ...d.legs.map((leg) => ({
      is: 'acSource' as const,
      id: leg.terminal,
      a: leg.terminal,
      b: 'N',
      volts: leg.volts,
      degrees: leg.degrees,
      ohms: {re: d.sourceOhms, im: d.sourceReactanceOhms},
    })),
    {is: 'conductor', id: 'main-bond', a: 'G', b: 'N', ohms: 0.002},
    {is: 'conductor', id: 'electrode', a: 'N', b: 'earth', ohms: 0.01},
  ],
  modes: (d) => [
    ...d.legs.map((leg) => ({
      id: `${leg.terminal}-dead`,
      name: `no supply on ${leg.terminal}`,
      changes: [{element: leg.terminal, open: true}],
      weight: 0.5,
    })),
    // a loaded utility bank: some 5 % out of balance between the lines (common practice, no source)
    ...(d.legs.length === 3
      ? d.legs.slice(1, 2).map((leg) => ({
          id: `${leg.terminal}-low`,
          name: `supply out of balance, ${leg.terminal} low`,
          changes: [{element: leg.terminal, scale: 0.84}],
          weight: 0.4,
        }))
      : []),
  ],
});
