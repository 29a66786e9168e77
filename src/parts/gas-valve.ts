import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {coilModes, magnetCoil, magnetCoilData} from './magnet-coil.ts';

const data = z.strictObject({coil: magnetCoilData});

/** Redundant gas valve, both seats lifted by one circuit: coil 1–2, and a knob that shuts the gas by hand. */
export const gasValve = definePart({
  kind: 'gas-valve',
  title: 'Gas valve',
  data,
  terminals: () => ['1', '2'],
  elements: (d) => [magnetCoil('coil', '1', '2', d.coil)],
  modes: (d) => [
    ...coilModes('coil', d.coil, 'coil'),
    {id: 'stuck', name: 'stuck closed', behaviour: {armature: 'jammed'}, weight: 1},
  ],
  controls: () => [
    {
      id: 'knob',
      title: 'Gas valve knob',
      type: 'choice',
      choices: [
        {value: 'on', title: 'On'},
        {value: 'off', title: 'Off'},
      ],
      initial: 'on',
    },
  ],
});
