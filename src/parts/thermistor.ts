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

/** R = R25·exp(β(1/T − 1/298.15 K)), the beta equation of NTC data sheets. Ohms from degrees Fahrenheit. */
export function thermistorOhms(degF: number, ohmsAt77DegF: number, betaKelvin: number): number {
  const kelvin = ((degF - 32) * 5) / 9 + 273.15;
  return ohmsAt77DegF * Math.exp(betaKelvin * (1 / kelvin - 1 / 298.15));
}

/** Inverse of {@link thermistorOhms}. */
export function thermistorDegF(ohms: number, ohmsAt77DegF: number, betaKelvin: number): number {
  const kelvin = 1 / (Math.log(ohms / ohmsAt77DegF) / betaKelvin + 1 / 298.15);
  return ((kelvin - 273.15) * 9) / 5 + 32;
}
