import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {coilModes, magnetCoil, magnetCoilData} from './magnet-coil.ts';

const data = z.strictObject({
  poles: z.literal([1, 2, 3]),
  coil: magnetCoilData,
});

/** Definite-purpose contactor. Coil A1–A2, poles L1–T1, L2–T2 … Elements: `coil`, `pole1`, `pole2` … */
export const contactor = definePart({
  kind: 'contactor',
  title: 'Contactor',
  data,
  terminals: (d) => [
    ...Array.from({length: d.poles}, (_, i) => [`L${i + 1}`, `T${i + 1}`]).flat(),
    'A1',
    'A2',
  ],
  elements: (d) => [
    magnetCoil('coil', 'A1', 'A2', d.coil),
    ...Array.from({length: d.poles}, (_, i) => ({
      is: 'contact' as const,
      id: `pole${i + 1}`,
      a: `L${i + 1}`,
      b: `T${i + 1}`,
      normally: 'open' as const,
      closedOhms: 0.003,
    })),
  ],
  modes: (d) => [
    ...coilModes('coil', d.coil, 'coil'),
    {
      id: 'poles-welded',
      name: 'contacts welded closed',
      changes: Array.from({length: d.poles}, (_, i) => ({
        element: `pole${i + 1}`,
        held: 'closed' as const,
      })),
      weight: 1.5,
    },
    {
      id: 'armature-jammed',
      name: 'armature jammed open',
      behaviour: {armature: 'jammed'},
      weight: 0.7,
    },
    ...Array.from({length: d.poles}, (_, i) => [
      {
        id: `pole${i + 1}-open`,
        name: `pole ${i + 1} burnt open`,
        changes: [{element: `pole${i + 1}`, held: 'open' as const}],
        weight: 1,
      },
      {
        id: `pole${i + 1}-pitted`,
        name: `pole ${i + 1} pitted (high resistance)`,
        // some 7 V at 15 A: felt under load, and the compressor still starts (common practice, no source)
        changes: [{element: `pole${i + 1}`, seriesOhms: 0.5}],
        weight: 2,
      },
    ]).flat(),
  ],
});
