import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z
  .strictObject({
    volts: z.number().positive().max(300),
    /** Glowing, it draws this at its rated volts. */
    hotAmps: z.number().positive().max(10),
    /** What an ohmmeter reads across it at room temperature: more, for it is a semiconductor. */
    coldOhms: z.number().positive().max(1000),
  })
  .refine((d) => d.coldOhms > d.volts / d.hotAmps, {
    error:
      'coldOhms is not above volts over hotAmps — a glowing igniter has less resistance than a cold one',
    path: ['coldOhms'],
  });

/** Silicon-carbide igniter: glows at about 2500 °F after some 20 seconds. Element `element`. */
export const hotSurfaceIgniter = definePart({
  kind: 'hot-surface-igniter',
  title: 'Hot-surface igniter',
  data,
  terminals: () => ['1', '2'],
  elements: (d) => [
    {
      is: 'impedance',
      id: 'element',
      a: '1',
      b: '2',
      acOhms: {re: d.volts / d.hotAmps, im: 0},
      dcOhms: d.coldOhms,
    },
  ],
  modes: () => [
    {
      id: 'open',
      name: 'cracked, element open',
      changes: [{element: 'element', open: true}],
      weight: 4,
    },
    {
      id: 'aged',
      name: 'aged, does not get hot enough',
      changes: [{element: 'element', scale: 2.2}],
      weight: 1,
    },
  ],
});
