import {z} from 'zod';
import {definePart} from './part-kind.ts';

/**
 * Damper actuator, spring return: 24 V on PWR–COM drives it to where 2–10 V DC on SIG asks; without power the spring
 * shuts the damper. Elements: `supply`, `input`.
 */
export const damperActuator = definePart({
  kind: 'damper-actuator',
  title: 'Damper actuator',
  data: z.strictObject({}),
  terminals: () => ['PWR', 'COM', 'SIG'],
  elements: () => [
    // about 5 VA at 24 V (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'PWR', b: 'COM', acOhms: {re: 115, im: 0}, dcOhms: 9000},
    {is: 'impedance', id: 'input', a: 'SIG', b: 'COM', acOhms: {re: 1e5, im: 0}, dcOhms: 1e5},
  ],
  modes: () => [
    {id: 'dead', name: 'actuator dead', behaviour: {damper: 'dead'}, weight: 1},
    {id: 'stuck-open', name: 'damper stuck open', behaviour: {damper: 'stuck-open'}, weight: 0.7},
    {
      id: 'stuck-shut',
      name: 'damper stuck shut',
      behaviour: {damper: 'stuck-shut'},
      weight: 1,
    },
  ],
});
