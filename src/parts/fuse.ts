import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({
  amps: z.number().positive().max(200),
  /** Cold resistance; a 3 A blade fuse is near 30 mΩ (common practice, no source). */
  coldOhms: z.number().positive().max(10).default(0.03),
});

/** A replaceable fuse. Opens by its time-current curve and stays open until replaced. */
export const fuse = definePart({
  kind: 'fuse',
  title: 'Fuse',
  data,
  terminals: () => ['1', '2'],
  elements: (d) => [
    {is: 'contact', id: 'link', a: '1', b: '2', normally: 'closed', closedOhms: d.coldOhms},
  ],
  modes: () => [
    {id: 'open', name: 'blown', changes: [{element: 'link', held: 'open'}], weight: 3},
    {
      id: 'loose',
      name: 'loose in its clips (high resistance)',
      changes: [{element: 'link', seriesOhms: 15}],
      weight: 0.5,
    },
  ],
});
