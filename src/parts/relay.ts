import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';
import {coilModes, magnetCoil, magnetCoilData} from './magnet-coil.ts';

const data = z.strictObject({
  coil: magnetCoilData,
  coilTerminals: z.tuple([terminalName, terminalName]).default(['1', '3']),
  contacts: z
    .array(
      z.strictObject({
        id: terminalName,
        terminals: z.tuple([terminalName, terminalName]),
        form: z.enum(['NO', 'NC']),
      }),
    )
    .min(1)
    .max(6),
  /** A time-delay relay holds its contacts this long after its coil lets go, or makes them this late. */
  offDelaySeconds: z.number().min(0).max(3600).default(0),
  onDelaySeconds: z.number().min(0).max(3600).default(0),
});

/** Plug-in, general-purpose or time-delay relay. Elements: `coil` and one contact per id. */
export const relay = definePart({
  kind: 'relay',
  title: 'Relay',
  data,
  terminals: (d) => [...new Set([...d.coilTerminals, ...d.contacts.flatMap((c) => c.terminals)])],
  elements: (d) => [
    magnetCoil('coil', d.coilTerminals[0], d.coilTerminals[1], d.coil),
    ...d.contacts.map((c) => ({
      is: 'contact' as const,
      id: c.id,
      a: c.terminals[0],
      b: c.terminals[1],
      normally: c.form === 'NO' ? ('open' as const) : ('closed' as const),
      closedOhms: 0.015,
    })),
  ],
  modes: (d) => [
    ...coilModes('coil', d.coil, 'coil'),
    ...d.contacts.flatMap((c) => [
      {
        id: `${c.id}-welded`,
        name: `contact ${c.terminals.join('–')} welded closed`,
        changes: [{element: c.id, held: 'closed' as const}],
        weight: 1,
      },
      {
        id: `${c.id}-open`,
        name: `contact ${c.terminals.join('–')} does not close`,
        changes: [{element: c.id, held: 'open' as const}],
        weight: 1.5,
      },
      {
        id: `${c.id}-pitted`,
        name: `contact ${c.terminals.join('–')} pitted (high resistance)`,
        changes: [{element: c.id, seriesOhms: 8}],
        weight: 1,
      },
    ]),
  ],
});
