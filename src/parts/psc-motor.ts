import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import {motorDrives, motorOverload} from './motor-overload.ts';
import {terminalName} from './terminal-name.ts';
import type {Element} from './element.ts';

const model = z.strictObject({
  ratedVolts: z.number().positive().max(1000),
  poles: z.number().int().min(2).max(16),
  mainOhms: z.number().positive(),
  mainReactanceOhms: z.number().positive(),
  startOhms: z.number().positive(),
  startReactanceOhms: z.number().positive(),
  turnsRatio: z.number().min(0.3).max(4),
  rotorOhms: z.number().positive(),
  rotorReactanceOhms: z.number().positive(),
  magnetisingOhms: z.number().positive(),
  loadNewtonMetres: z.number().min(0),
  loadExponent: z.number().min(0).max(3),
  breakawayNewtonMetres: z.number().min(0),
});

const data = z.strictObject({
  drives: motorDrives,
  /** Terminal or lead names. Some motors bring out a second lead of the run end for the capacitor. */
  leads: z.strictObject({
    common: terminalName,
    run: terminalName,
    start: terminalName,
    capacitor: terminalName.optional(),
  }),
  model,
  /** Internal overload in the common. */
  overload: motorOverload,
});
export type PscMotorData = z.infer<typeof data>;

/** Permanent-split-capacitor motor. Elements: `motor` (windings `main`, `start`) and `overload`. */
export const pscMotor = definePart({
  kind: 'psc-motor',
  title: 'Motor',
  data,
  terminals: (d) => [
    d.leads.common,
    d.leads.run,
    d.leads.start,
    ...(d.leads.capacitor ? [d.leads.capacitor] : []),
  ],
  elements: (d) => {
    const elements: Element[] = [
      {
        is: 'contact',
        id: 'overload',
        a: d.leads.common,
        b: '~windings',
        normally: 'closed',
        closedOhms: 0.01,
      },
      {
        is: 'motor',
        id: 'motor',
        main: {a: d.leads.run, b: '~windings'},
        start: {a: d.leads.start, b: '~windings'},
        model: d.model,
      },
    ];
    if (d.leads.capacitor)
      elements.push({
        is: 'conductor',
        id: 'capacitor-lead',
        a: d.leads.run,
        b: d.leads.capacitor,
        ohms: 0.01,
      });
    return elements;
  },
  modes: (d) => {
    const list: FaultMode[] = [
      {
        id: 'run-open',
        name: 'run winding open',
        changes: [{element: 'main', open: true}],
        weight: 1,
      },
      {
        id: 'start-open',
        name: 'start winding open',
        changes: [{element: 'start', open: true}],
        weight: 1,
      },
      {
        id: 'run-shorted',
        name: 'run winding shorted',
        changes: [{element: 'main', besideOhms: d.model.mainOhms * 0.2}],
        weight: 0.7,
      },
      {
        id: 'grounded',
        name: 'winding grounded to the case',
        toCabinet: {terminal: d.leads.run, ohms: 1},
        weight: 1,
      },
      {
        id: 'overload-open',
        name: 'internal overload failed open',
        changes: [{element: 'overload', held: 'open'}],
        weight: 0.7,
      },
      {id: 'seized', name: 'rotor seized', behaviour: {rotor: 'seized'}, weight: 1},
    ];
    return list;
  },
});
