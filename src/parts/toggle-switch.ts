import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({});

/** A hand switch, single pole. */
export const toggleSwitch = definePart({
  kind: 'toggle-switch',
  title: 'Switch',
  data,
  terminals: () => ['1', '2'],
  elements: () => [
    {is: 'contact', id: 'contact', a: '1', b: '2', normally: 'open', closedOhms: 0.02},
  ],
  modes: () => [
    {
      id: 'stuck-open',
      name: 'does not close',
      changes: [{element: 'contact', held: 'open'}],
      weight: 1,
    },
    {
      id: 'stuck-closed',
      name: 'does not open',
      changes: [{element: 'contact', held: 'closed'}],
      weight: 0.5,
    },
    {
      id: 'burnt',
      name: 'burnt contact (high resistance)',
      changes: [{element: 'contact', seriesOhms: 60}],
      weight: 0.5,
    },
  ],
  controls: () => [
    {
      id: 'position',
      title: 'Switch',
      type: 'choice',
      choices: [
        {value: 'off', title: 'Off'},
        {value: 'on', title: 'On'},
      ],
      initial: 'off',
    },
  ],
});
