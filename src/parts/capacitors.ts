import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import type {Element} from './element.ts';

const volts = z.number().positive().max(1000);
const microfarads = z.number().positive().max(1000);

const section = (id: string, a: string, b: string, value: number): Element => ({
  is: 'capacitor',
  id,
  a,
  b,
  microfarads: value,
  leakageOhms: 5e8,
});

function sectionModes(element: string, name: string): FaultMode[] {
  return [
    {id: `${element}-open`, name: `${name} open`, changes: [{element, open: true}], weight: 2},
    {
      id: `${element}-wrong`,
      name: `${name} of the wrong value fitted, half as many µF again`,
      changes: [{element, scale: 1.5}],
      weight: 0.5,
    },
    {id: `${element}-weak`, name: `${name} weak`, changes: [{element, scale: 0.55}], weight: 3},
    {
      id: `${element}-shorted`,
      name: `${name} shorted`,
      changes: [{element, besideOhms: 0.2}],
      weight: 0.7,
    },
  ];
}

/** Run capacitor with one section. */
export const capacitor = definePart({
  kind: 'capacitor',
  title: 'Run capacitor',
  data: z.strictObject({microfarads, volts}),
  terminals: () => ['1', '2'],
  elements: (d) => [section('section', '1', '2', d.microfarads)],
  modes: () => sectionModes('section', 'capacitor'),
});

/** Dual run capacitor: common, compressor (HERM) and fan sections in one can. */
export const dualCapacitor = definePart({
  kind: 'dual-capacitor',
  title: 'Dual run capacitor',
  data: z.strictObject({hermMicrofarads: microfarads, fanMicrofarads: microfarads, volts}),
  terminals: () => ['C', 'HERM', 'FAN'],
  elements: (d) => [
    section('herm', 'HERM', 'C', d.hermMicrofarads),
    section('fan', 'FAN', 'C', d.fanMicrofarads),
  ],
  modes: () => [
    ...sectionModes('herm', 'compressor section'),
    ...sectionModes('fan', 'fan section'),
  ],
});
