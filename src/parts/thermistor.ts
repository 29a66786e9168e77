import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {plantValueNames} from './plant-value.ts';

const data = z.strictObject({
  senses: z.enum(plantValueNames),
  ohmsAt77DegF: z.number().positive().default(10000),
  /**
   * Beta of the curve, kelvin. It falls towards the cold: a type 2 sensor has about 3977 between 77 °F and
   * 185 °F (data sheets), but 3827 keeps within 1 % of the published table from −4 °F to 77 °F, where an
   * outdoor sensor works.
   */
  betaKelvin: z.number().min(2000).max(6000).default(3827),
});

/** Negative-temperature-coefficient sensor. Element `element`, ohms given by the sequences from the plant. */
export const thermistor = definePart({
  kind: 'thermistor',
  title: 'Temperature sensor',
  data,
  terminals: () => ['1', '2'],
  elements: (d) => [{is: 'variable', id: 'element', a: '1', b: '2', restOhms: d.ohmsAt77DegF}],
  modes: () => [
    {id: 'open', name: 'sensor open', changes: [{element: 'element', open: true}], weight: 1.5},
    {
      id: 'shorted',
      name: 'sensor shorted',
      changes: [{element: 'element', besideOhms: 1}],
      weight: 0.7,
    },
  ],
});
