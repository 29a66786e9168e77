import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({
  poles: z.literal([1, 2, 3]),
  amps: z.number().min(1).max(400),
});

/** Moulded-case circuit breaker. Terminals L are the bus side, T the load side. Tripped by its time-current curve. */
export const breaker = definePart({
  kind: 'breaker',
  title: 'Circuit breaker',
  data,
  terminals: (d) => Array.from({length: d.poles}, (_, i) => [`L${i + 1}`, `T${i + 1}`]).flat(),
  elements: (d) =>
    Array.from({length: d.poles}, (_, i) => ({
      is: 'contact' as const,
      id: `pole${i + 1}`,
      a: `L${i + 1}`,
      b: `T${i + 1}`,
      normally: 'closed' as const,
      closedOhms: 0.002,
    })),
  modes: (d) =>
    Array.from({length: d.poles}, (_, i) => ({
      id: `pole${i + 1}-open`,
      name: d.poles === 1 ? 'contact burnt open' : `pole ${i + 1} burnt open`,
      changes: [{element: `pole${i + 1}`, held: 'open' as const}],
      weight: 0.4,
    })),
  controls: () => [
    {
      id: 'position',
      title: 'Breaker',
      type: 'choice',
      choices: [
        {value: 'on', title: 'On'},
        {value: 'off', title: 'Off'},
      ],
      initial: 'on',
      isolates: true,
    },
  ],
});
