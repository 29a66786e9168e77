import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {coilModes, magnetCoil, magnetCoilData} from './magnet-coil.ts';

const data = z.strictObject({coil: magnetCoilData});

/** Solenoid of a valve (reversing valve). Element `coil`; shifts when the coil pulls in. */
export const solenoid = definePart({
  kind: 'solenoid',
  title: 'Valve solenoid',
  data,
  terminals: () => ['1', '2'],
  elements: (d) => [magnetCoil('coil', '1', '2', d.coil)],
  modes: (d) => [
    ...coilModes('coil', d.coil, 'coil'),
    {id: 'stuck', name: 'valve stuck unshifted', behaviour: {armature: 'jammed'}, weight: 1},
  ],
});
