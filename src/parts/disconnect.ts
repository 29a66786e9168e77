import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({
  poles: z.literal([1, 2, 3]),
  amps: z.number().min(1).max(400),
});

/** Disconnect switch in sight of the equipment. L terminals are the supply side and stay live when it is open. */
export const disconnect = definePart({
  kind: 'disconnect',
  title: 'Disconnect',
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
    Array.from({length: d.poles}, (_, i) => [
      {
        id: `pole${i + 1}-open`,
        name: `pole ${i + 1} open`,
        changes: [{element: `pole${i + 1}`, held: 'open' as const}],
        weight: 0.5,
      },
      {
        id: `pole${i + 1}-burnt`,
        name: `pole ${i + 1} burnt (high resistance)`,
        changes: [{element: `pole${i + 1}`, seriesOhms: 1.5}],
        weight: 0.5,
      },
    ]).flat(),
  controls: () => [
    {
      id: 'position',
      title: 'Disconnect',
      type: 'choice',
      choices: [
        {value: 'closed', title: 'Closed'},
        {value: 'open', title: 'Open'},
      ],
      initial: 'closed',
      isolates: true,
    },
  ],
});
