import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {plantValueNames} from './plant-value.ts';

const data = z.strictObject({
  senses: z.enum(plantValueNames),
  opensAtDegF: z.number().min(100).max(1000),
});

/** One-shot thermal link in an electric heater: opens on temperature, never closes again. */
export const fusibleLink = definePart({
  kind: 'fusible-link',
  title: 'Fusible link',
  data,
  terminals: () => ['1', '2'],
  elements: () => [
    {is: 'contact', id: 'link', a: '1', b: '2', normally: 'closed', closedOhms: 0.01},
  ],
  modes: () => [{id: 'open', name: 'open', changes: [{element: 'link', held: 'open'}], weight: 1}],
});
