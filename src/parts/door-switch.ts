import {z} from 'zod';
import {definePart} from './part-kind.ts';

/**
 * Interlock behind a panel: the door, or a technician's hand while the door is off, holds it closed. It does not
 * isolate: its line side stays live, and it can close again by itself.
 */
export const doorSwitch = definePart({
  kind: 'door-switch',
  title: 'Door switch',
  data: z.strictObject({}),
  terminals: () => ['1', '2'],
  elements: () => [
    {is: 'contact', id: 'contact', a: '1', b: '2', normally: 'closed', closedOhms: 0.02},
  ],
  modes: () => [
    {
      id: 'stuck-open',
      name: 'contact does not close',
      changes: [{element: 'contact', held: 'open'}],
      weight: 1.5,
    },
    {
      id: 'burnt',
      name: 'burnt contact (high resistance)',
      changes: [{element: 'contact', seriesOhms: 8}],
      weight: 0.5,
    },
  ],
  controls: () => [
    {
      id: 'position',
      title: 'Door switch',
      type: 'choice',
      choices: [
        {value: 'closed', title: 'Pressed: door on, or held in'},
        {value: 'open', title: 'Released'},
      ],
      initial: 'closed',
    },
  ],
});
