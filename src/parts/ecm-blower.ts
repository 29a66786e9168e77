import {z} from 'zod';
import {ecmStandbyWatts} from './ecm-standby.ts';
import {definePart, type FaultMode} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';

const data = z.strictObject({
  /** Line volts that stand on its power connector all the time. */
  volts: z.number().positive().max(300).default(230),
  /** Taken in at full torque and full speed. */
  watts: z.number().positive().max(2000),
  /** Speed taps: 24 V between a tap and C asks for that share of full torque; of several the strongest wins. */
  taps: z
    .array(z.strictObject({terminal: terminalName, torquePercent: z.number().positive().max(100)}))
    .min(1)
    .max(5),
  /** From a call to the first turn: the rotor is aligned and run up softly (common practice, no source). */
  softStartSeconds: z.number().min(0).max(30).default(4),
});
export type EcmBlowerData = z.infer<typeof data>;

/**
 * Constant-torque blower motor with its control module: line power on L1–L2 stands always, 24 V on a tap starts it
 * and chooses its torque. An ohmmeter tells little of it: there is a rectifier behind the connector. Elements:
 * `line`, and an input for each tap, `tap-<terminal>`.
 */
export const ecmBlower = definePart({
  kind: 'ecm-blower',
  title: 'Blower motor',
  data,
  terminals: (d) => ['L1', 'L2', 'C', ...d.taps.map(({terminal}) => terminal)],
  elements: (d) => [
    {is: 'variable', id: 'line', a: 'L1', b: 'L2', restOhms: d.volts ** 2 / ecmStandbyWatts},
    // about 15 mA at 24 V (common practice, no source)
    ...d.taps.map(({terminal}) => ({
      is: 'impedance' as const,
      id: `tap-${terminal}`,
      a: terminal,
      b: 'C',
      acOhms: {re: 1600, im: 0},
      dcOhms: 1600,
    })),
  ],
  modes: (d) => [
    {
      id: 'module-dead',
      name: 'control module dead',
      behaviour: {module: 'dead'},
      weight: 1.5,
    },
    {
      id: 'power-connector-open',
      name: 'line pin of the power connector open',
      changes: [{element: 'line', open: true}],
      weight: 1,
    },
    {
      id: 'winding-fault',
      name: 'winding of the motor failed, it rocks and does not start',
      behaviour: {module: 'rocks'},
      weight: 0.7,
    },
    ...d.taps.map(({terminal}): FaultMode => ({
      id: `tap-${terminal}-dead`,
      name: `input of tap ${terminal} dead`,
      changes: [{element: `tap-${terminal}`, open: true}],
      weight: 0.4,
    })),
  ],
});
