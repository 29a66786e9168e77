import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({
  /** Time after loss of the call during which it will not pass a new one. */
  delayOnBreakSeconds: z.number().min(1).max(3600),
});

/** Anti-short-cycle timer: passes IN to OUT, except for a delay after each break. Element `out`. */
export const delayTimer = definePart({
  kind: 'delay-timer',
  title: 'Anti-short-cycle timer',
  data,
  terminals: () => ['IN', 'OUT', 'C'],
  elements: () => [
    // about 1 VA at 24 V (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'IN', b: 'C', acOhms: {re: 576, im: 0}, dcOhms: 33000},
    {is: 'contact', id: 'out', a: 'IN', b: 'OUT', normally: 'open', closedOhms: 0.05},
  ],
  modes: () => [
    {id: 'dead', name: 'output dead', changes: [{element: 'out', held: 'open'}], weight: 1},
    {
      id: 'shorted',
      name: 'output shorted (no delay)',
      changes: [{element: 'out', held: 'closed'}],
      weight: 0.4,
    },
  ],
});
