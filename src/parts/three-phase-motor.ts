import {z} from 'zod';
import {definePart, type FaultMode} from './part-kind.ts';
import {motorDrives, motorOverload} from './motor-overload.ts';
import {terminalName} from './terminal-name.ts';
import type {Element} from './element.ts';

const model = z.strictObject({
  /** Between two lines. */
  ratedVolts: z.number().positive().max(1000),
  poles: z.number().int().min(2).max(16),
  /** One winding of the wye; an ohmmeter between two leads reads two of them. */
  windingOhms: z.number().positive(),
  windingReactanceOhms: z.number().positive(),
  rotorOhms: z.number().positive(),
  rotorReactanceOhms: z.number().positive(),
  magnetisingOhms: z.number().positive(),
  loadNewtonMetres: z.number().min(0),
  loadExponent: z.number().min(0).max(3),
  breakawayNewtonMetres: z.number().min(0),
  backwardLoadFraction: z.number().min(0).max(1).default(1),
});

const data = z.strictObject({
  drives: motorDrives,
  /** Leads in the order of the phases that turn it forward. */
  leads: z.tuple([terminalName, terminalName, terminalName]).default(['T1', 'T2', 'T3']),
  model,
  /** Internal overload at the star point: opens all three windings, and feels the lead that draws most. */
  overload: motorOverload,
});
export type ThreePhaseMotorData = z.infer<typeof data>;

const phases = [1, 2, 3] as const;

/**
 * Three-phase motor in wye, three leads brought out. Elements: `motor` (windings `winding1` … `winding3`, each from
 * its lead inwards) and the overload's contacts to the star point, `overload1` … `overload3`.
 */
export const threePhaseMotor = definePart({
  kind: 'three-phase-motor',
  title: 'Three-phase motor',
  data,
  terminals: (d) => [...d.leads],
  elements: (d) => {
    const winding = (phase: 1 | 2 | 3) => ({
      id: `winding${phase}`,
      a: d.leads[phase - 1]!,
      b: `~end${phase}`,
    });
    const elements: Element[] = [
      {
        is: 'threePhaseMotor',
        id: 'motor',
        windings: [winding(1), winding(2), winding(3)],
        model: d.model,
      },
      ...phases.map((phase) => ({
        is: 'contact' as const,
        id: `overload${phase}`,
        a: `~end${phase}`,
        b: '~star',
        normally: 'closed' as const,
        closedOhms: 0.005,
      })),
    ];
    return elements;
  },
  modes: (d) => [
    ...phases.flatMap((phase): FaultMode[] => [
      {
        id: `winding${phase}-open`,
        name: `winding of ${d.leads[phase - 1]} open`,
        changes: [{element: `winding${phase}`, open: true}],
        weight: 0.4,
      },
      {
        id: `winding${phase}-shorted`,
        name: `winding of ${d.leads[phase - 1]} shorted turn to turn`,
        changes: [{element: `winding${phase}`, besideOhms: d.model.windingOhms * 0.3}],
        weight: 0.2,
      },
    ]),
    {
      id: 'grounded',
      name: 'winding grounded to the case',
      toCabinet: {terminal: d.leads[0], ohms: 1},
      weight: 1,
    },
    {
      id: 'overload-open',
      name: 'internal overload failed open',
      changes: phases.map((phase) => ({element: `overload${phase}`, held: 'open' as const})),
      weight: 0.5,
    },
    {id: 'seized', name: 'rotor seized', behaviour: {rotor: 'seized'}, weight: 1},
  ],
});
