import {z} from 'zod';
import {definePart} from './part-kind.ts';

const loadData = z.strictObject({
  watts: z.number().positive().max(100000),
  volts: z.number().positive().max(1000),
});

/** Electric heating element or crankcase heater: V²/W, hot and cold nearly alike. */
export const heater = definePart({
  kind: 'heater',
  title: 'Heater',
  data: loadData,
  terminals: () => ['1', '2'],
  elements: (d) => {
    const ohms = d.volts ** 2 / d.watts;
    return [
      {is: 'impedance', id: 'element', a: '1', b: '2', acOhms: {re: ohms, im: 0}, dcOhms: ohms},
    ];
  },
  modes: () => [
    {id: 'open', name: 'element open', changes: [{element: 'element', open: true}], weight: 1.5},
    {
      id: 'grounded',
      name: 'element grounded to the cabinet',
      toCabinet: {terminal: '1', ohms: 2},
      weight: 0.7,
    },
  ],
});

/** Filament lamp: cold it reads about a tenth of its running resistance (tungsten, common practice, no source). */
export const lamp = definePart({
  kind: 'lamp',
  title: 'Lamp',
  data: loadData,
  terminals: () => ['1', '2'],
  elements: (d) => {
    const ohms = d.volts ** 2 / d.watts;
    return [
      {
        is: 'impedance',
        id: 'filament',
        a: '1',
        b: '2',
        acOhms: {re: ohms, im: 0},
        dcOhms: ohms / 10,
      },
    ];
  },
  modes: () => [
    {id: 'open', name: 'filament open', changes: [{element: 'filament', open: true}], weight: 3},
    {
      id: 'shorted',
      name: 'lampholder shorted',
      changes: [{element: 'filament', besideOhms: 0.1}],
      weight: 0.5,
    },
  ],
});
