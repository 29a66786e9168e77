import {z} from 'zod';
import {definePart} from './part-kind.ts';
import {terminalName} from './terminal-name.ts';

const names = z.array(terminalName).min(1).max(24);

/** Terminal strip or line block: every terminal is a separate joint for as many wires as land on it. */
export const terminalStrip = definePart({
  kind: 'terminal-strip',
  title: 'Terminal strip',
  data: z.strictObject({terminals: names}),
  terminals: (d) => d.terminals,
  elements: () => [],
  modes: () => [],
});

/** Equipment-ground lug on the metal of an enclosure; its terminal is the cabinet itself. */
export const groundLug = definePart({
  kind: 'ground-lug',
  title: 'Ground lug',
  data: z.strictObject({}),
  terminals: () => ['E'],
  elements: () => [],
  modes: () => [],
});

/** Wires joined under one wire connector. */
export const splice = definePart({
  kind: 'splice',
  title: 'Splice',
  data: z.strictObject({}),
  terminals: () => ['S'],
  elements: () => [],
  modes: () => [],
});
