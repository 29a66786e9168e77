import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z.strictObject({
  /** Compressor run time between looks at the coil. */
  intervalMinutes: z.number().min(1).max(240),
  initiateDegF: z.number().min(-20).max(60),
  terminateDegF: z.number().min(30).max(120),
  maximumMinutes: z.number().min(1).max(60),
  /** Above this outdoor temperature there is no frost and no defrost. */
  ambientLimitDegF: z.number().min(0).max(80).default(45),
  blankBelowVolts: z.number().positive().max(24).default(16),
});

/**
 * Heat-pump defrost board. Terminals: R C power; Y compressor call (counts run time); O from the thermostat,
 * RV to the reversing valve, W2 out to auxiliary heat; S1 S2 coil sensor, A1 A2 ambient sensor; F1 F2 outdoor fan.
 * Contacts: `cooling` O–RV, `defrost` R–RV, `auxiliary` R–W2, `fan` F1–F2 (opens in defrost).
 * Sensors are read as volts behind a pull-up: 5 V through 10 kΩ, S2 and A2 are the board's zero (C).
 */
export const defrostBoard = definePart({
  kind: 'defrost-board',
  title: 'Defrost board',
  data,
  terminals: () => ['R', 'C', 'Y', 'O', 'RV', 'W2', 'S1', 'S2', 'A1', 'A2', 'F1', 'F2'],
  elements: () => [
    // about 2 VA at 24 V (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'R', b: 'C', acOhms: {re: 288, im: 0}, dcOhms: 15000},
    {is: 'impedance', id: 'y-input', a: 'Y', b: 'C', acOhms: {re: 2200, im: 0}, dcOhms: 2200},
    {is: 'contact', id: 'cooling', a: 'O', b: 'RV', normally: 'closed', closedOhms: 0.03},
    {is: 'contact', id: 'defrost', a: 'R', b: 'RV', normally: 'open', closedOhms: 0.03},
    {is: 'contact', id: 'auxiliary', a: 'R', b: 'W2', normally: 'open', closedOhms: 0.03},
    {is: 'contact', id: 'fan', a: 'F1', b: 'F2', normally: 'closed', closedOhms: 0.01},
    {is: 'dcSource', id: 'coil-pull-up', a: 'S1', b: 'S2', volts: 5, ohms: 10000},
    {is: 'dcSource', id: 'ambient-pull-up', a: 'A1', b: 'A2', volts: 5, ohms: 10000},
    {is: 'conductor', id: 'coil-zero', a: 'S2', b: 'C', ohms: 0.1},
    {is: 'conductor', id: 'ambient-zero', a: 'A2', b: 'C', ohms: 0.1},
  ],
  modes: () => [
    {
      id: 'dead',
      name: 'board dead',
      changes: [{element: 'supply', open: true}],
      behaviour: {logic: 'dead'},
      weight: 0.7,
    },
    {
      id: 'fan-open',
      name: 'fan relay does not close',
      changes: [{element: 'fan', held: 'open'}],
      weight: 1,
    },
    {
      id: 'fan-welded',
      name: 'fan relay welded closed',
      changes: [{element: 'fan', held: 'closed'}],
      weight: 0.4,
    },
    {
      id: 'valve-output-dead',
      name: 'reversing-valve output dead',
      changes: [
        {element: 'cooling', held: 'open'},
        {element: 'defrost', held: 'open'},
      ],
      weight: 0.7,
    },
    {
      id: 'auxiliary-dead',
      name: 'auxiliary-heat output dead',
      changes: [{element: 'auxiliary', held: 'open'}],
      weight: 0.5,
    },
    {
      id: 'stuck-in-defrost',
      name: 'stuck in defrost',
      behaviour: {logic: 'stuck-in-defrost'},
      weight: 0.5,
    },
    {
      id: 'never-defrosts',
      name: 'never goes into defrost',
      behaviour: {logic: 'never-defrosts'},
      weight: 0.7,
    },
  ],
});
