import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';

const data = z.strictObject({
  heaterTerminals: z.tuple([terminalName, terminalName]).default(['H1', 'H2']),
  volts: z.number().positive().max(240).default(24),
  watts: z.number().positive().max(50).default(4),
  /** Rise of the bimetal over the air around it when the heater has long been on at rated volts. */
  riseDegF: z.number().positive().max(400).default(160),
  timeConstantSeconds: z.number().positive().max(600).default(60),
  contacts: z
    .array(
      z
        .strictObject({
          id: terminalName,
          terminals: z.tuple([terminalName, terminalName]),
          /** Rise at which its disc snaps closed, and at which it snaps open again. */
          closesAtRiseDegF: z.number().positive().max(400),
          opensAtRiseDegF: z.number().positive().max(400),
        })
        .refine((contact) => contact.opensAtRiseDegF < contact.closesAtRiseDegF, {
          error:
            'opensAtRiseDegF is not below closesAtRiseDegF — a disc snaps open cooler than it snaps closed',
          path: ['opensAtRiseDegF'],
        }),
    )
    .min(1)
    .max(4),
});
export type SequencerData = z.infer<typeof data>;

/**
 * Heat sequencer: a thermal time-delay relay. A small heater warms bimetal discs that close one after another, so that
 * the elements of a furnace do not all come on at once. Elements: `heater` and one contact per id.
 */
export const sequencer = definePart({
  kind: 'sequencer',
  title: 'Sequencer',
  data,
  terminals: (d) => [...new Set([...d.heaterTerminals, ...d.contacts.flatMap((c) => c.terminals)])],
  elements: (d) => {
    const ohms = d.volts ** 2 / d.watts;
    return [
      {
        is: 'impedance',
        id: 'heater',
        a: d.heaterTerminals[0],
        b: d.heaterTerminals[1],
        acOhms: {re: ohms, im: 0},
        dcOhms: ohms,
      },
      ...d.contacts.map((c) => ({
        is: 'contact' as const,
        id: c.id,
        a: c.terminals[0],
        b: c.terminals[1],
        normally: 'open' as const,
        closedOhms: 0.003,
      })),
    ];
  },
  modes: (d) => [
    {
      id: 'heater-open',
      name: 'heater open',
      changes: [{element: 'heater', open: true}],
      weight: 2,
    },
    ...d.contacts.flatMap((c): FaultMode[] => [
      {
        id: `${c.id}-open`,
        name: `contact ${c.terminals.join('–')} does not close`,
        changes: [{element: c.id, held: 'open'}],
        weight: 2,
      },
      {
        id: `${c.id}-welded`,
        name: `contact ${c.terminals.join('–')} welded closed`,
        changes: [{element: c.id, held: 'closed'}],
        weight: 1,
      },
      {
        id: `${c.id}-pitted`,
        name: `contact ${c.terminals.join('–')} pitted (high resistance)`,
        changes: [{element: c.id, seriesOhms: 1.5}],
        weight: 1,
      },
    ]),
  ],
});
