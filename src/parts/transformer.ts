import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';

const data = z.strictObject({
  va: z.number().positive().max(5000),
  /** Primary taps from the common end `H1`, lowest first: terminal name and its volts. */
  taps: z
    .array(z.strictObject({terminal: terminalName, volts: z.number().positive().max(1000)}))
    .min(1)
    .max(3)
    .refine((taps) => taps.every((tap, i) => i === 0 || tap.volts > taps[i - 1]!.volts), {
      error: 'the taps do not rise — put the tap of the lowest volts first',
    }),
  secondaryVolts: z.number().positive().max(600),
  /** Rise of the secondary from full load to no load. Small control transformers: 8–15 %. */
  regulationPercent: z.number().min(1).max(40).default(10),
  /** No-load loss and magnetising volt-amperes, share of rated VA (common practice, no source). */
  coreLossFraction: z.number().min(0).max(0.5).default(0.08),
  magnetisingFraction: z.number().min(0).max(1).default(0.2),
});

/**
 * Control transformer. Copper is split evenly between the sides, so each drops half the regulation at
 * full load; leakage reactance is a third of the resistance, as in small shell-type transformers
 * (common practice, no source). Windings are `primary` (or `primary-<tap>` for each section) and `secondary`.
 */
export const transformer = definePart({
  kind: 'transformer',
  title: 'Control transformer',
  data,
  terminals: (d) => ['H1', ...d.taps.map((tap) => tap.terminal), 'X1', 'X2'],
  elements: (d) => {
    const fullLoadAmps = d.va / d.secondaryVolts;
    const secondaryOhms = ((d.regulationPercent / 200) * d.secondaryVolts) / fullLoadAmps;
    const noLoadVolts = d.secondaryVolts * (1 + d.regulationPercent / 100);
    const top = d.taps[d.taps.length - 1]!.volts;
    const primaryOhms = secondaryOhms * (top / noLoadVolts) ** 2;
    const sections = d.taps.map((tap, i) => {
      const below = d.taps[i - 1];
      const volts = tap.volts - (below?.volts ?? 0);
      const share = (volts / top) * primaryOhms;
      return {
        id: d.taps.length === 1 ? 'primary' : `primary-${tap.terminal}`,
        a: below?.terminal ?? 'H1',
        b: tap.terminal,
        turnsVolts: volts,
        ohms: share,
        reactanceOhms: share / 3,
      };
    });
    return [
      {
        is: 'transformer',
        id: 'core',
        windings: [
          ...sections,
          {
            id: 'secondary',
            a: 'X1',
            b: 'X2',
            turnsVolts: noLoadVolts,
            ohms: secondaryOhms,
            reactanceOhms: secondaryOhms / 3,
          },
        ],
        magnetisingVa: {re: d.va * d.coreLossFraction, im: d.va * d.magnetisingFraction},
      },
    ];
  },
  modes: (d) => [
    {
      id: 'primary-open',
      name: 'primary winding open',
      changes: [
        {element: d.taps.length === 1 ? 'primary' : `primary-${d.taps[0]!.terminal}`, open: true},
      ],
      weight: 1.5,
    },
    {
      id: 'secondary-open',
      name: 'secondary winding open',
      changes: [{element: 'secondary', open: true}],
      weight: 1.5,
    },
  ],
});
