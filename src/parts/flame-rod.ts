import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {plantValueNames} from './plant-value.ts';

const data = z.strictObject({
  /** Plant value that tells how much of the flame burns. */
  senses: z.enum(plantValueNames).default('flameFraction'),
  /** Direct volts that the flame makes of the alternating volts on the rod, and the ohms behind them. */
  flameVolts: z.number().positive().max(100).default(20),
  flameOhms: z.number().positive().max(1e8).default(5e6),
});

/**
 * Flame rod in the burners' flame. The flame passes more current from the large grounded burner to the small rod than
 * back, so of the alternating volts on the rod a small direct current is left, some microamps, rod negative. Element
 * `flame` is that source; without a flame it is open. BNR is the burner's metal. Volts and ohms are chosen for about
 * 3 µA into the board (common practice, no source).
 */
export const flameRod = definePart({
  kind: 'flame-rod',
  title: 'Flame rod',
  data,
  terminals: () => ['ROD', 'BNR'],
  elements: (d) => [
    {is: 'dcSource', id: 'flame', a: 'BNR', b: 'ROD', volts: d.flameVolts, ohms: d.flameOhms},
  ],
  modes: () => [
    {
      id: 'fouled',
      name: 'fouled with oxide (weak flame current)',
      // leaves a quarter of a microamp or so
      changes: [{element: 'flame', seriesOhms: 7e7}],
      weight: 3,
    },
    {
      id: 'cracked',
      name: 'insulator cracked, rod grounded',
      joins: {a: 'ROD', b: 'BNR', ohms: 500},
      weight: 1,
    },
    {id: 'open', name: 'rod broken off', changes: [{element: 'flame', open: true}], weight: 0.5},
  ],
});
