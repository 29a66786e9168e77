import {z} from 'zod';
import {signalLoadOhms} from './damper-signal.ts';
import {definePart, type FaultMode} from './part-kind.ts';

const data = z.strictObject({
  /** What decides whether outdoor air is worth having: its temperature, or its heat and moisture together. */
  changeover: z.enum(['temperature', 'enthalpy']).default('temperature'),
  /** Outdoor air below this cools for nothing. */
  setPointDegF: z.number().min(30).max(85).default(60),
  /** For enthalpy: Btu per pound of dry air, both at sea level. */
  setPointBtuPerPound: z.number().min(10).max(40).default(26),
  /** The changeover does not go back until the air is this much warmer. */
  differentialDegF: z.number().positive().max(10).default(2),
  /** Damper while people are in and there is nothing to cool: fresh air. */
  minimumPercent: z.number().min(0).max(60).default(20),
});
export type EconomiserData = z.infer<typeof data>;

/**
 * Economiser control: sends the first call for cooling to the outdoor-air damper while the air outside is cool enough,
 * and to the compressors when it is not. R C power; G fan, Y1 Y2 calls in; CC1 CC2 to the two compressor circuits;
 * S1 S2 outdoor sensor; SIG COM 2–10 V to the damper. With no power the calls pass straight through.
 * Contacts: `first` Y1–CC1 and `second` Y2–CC2 (normally closed), `bumped` Y2–CC1 (normally open: in free cooling the
 * second call starts the first compressor).
 */
export const economiser = definePart({
  kind: 'economiser',
  title: 'Economiser control',
  data,
  terminals: () => ['R', 'C', 'G', 'Y1', 'Y2', 'CC1', 'CC2', 'S1', 'S2', 'SIG', 'COM'],
  elements: () => [
    // about 3 VA at 24 V (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'R', b: 'C', acOhms: {re: 192, im: 0}, dcOhms: 12000},
    ...(['G', 'Y1', 'Y2'] as const).map((input) => ({
      is: 'impedance' as const,
      id: `${input}-input`,
      a: input,
      b: 'C',
      acOhms: {re: 2200, im: 0},
      dcOhms: 2200,
    })),
    {is: 'contact', id: 'first', a: 'Y1', b: 'CC1', normally: 'closed', closedOhms: 0.03},
    {is: 'contact', id: 'second', a: 'Y2', b: 'CC2', normally: 'closed', closedOhms: 0.03},
    {is: 'contact', id: 'bumped', a: 'Y2', b: 'CC1', normally: 'open', closedOhms: 0.03},
    {is: 'dcSource', id: 'sensor-pull-up', a: 'S1', b: 'S2', volts: 5, ohms: 10000},
    {is: 'conductor', id: 'sensor-zero', a: 'S2', b: 'C', ohms: 0.1},
    {is: 'dcSource', id: 'signal-source', a: '~signal', b: 'COM', volts: 10, ohms: 10},
    {is: 'variable', id: 'signal', a: '~signal', b: 'SIG', restOhms: 4000},
    {
      is: 'impedance',
      id: 'signal-load',
      a: 'SIG',
      b: 'COM',
      acOhms: {re: signalLoadOhms, im: 0},
      dcOhms: signalLoadOhms,
    },
    {is: 'conductor', id: 'signal-zero', a: 'COM', b: 'C', ohms: 0.1},
  ],
  modes: () => {
    const list: FaultMode[] = [
      {
        id: 'dead',
        name: 'control dead',
        changes: [{element: 'supply', open: true}],
        behaviour: {logic: 'dead'},
        weight: 0.7,
      },
      {
        id: 'never-changes-over',
        name: 'changeover stuck, outdoor air never used',
        behaviour: {logic: 'never'},
        weight: 1,
      },
      {
        id: 'always-free',
        name: 'changeover stuck, outdoor air always used',
        behaviour: {logic: 'always'},
        weight: 0.7,
      },
      {
        id: 'first-output-dead',
        name: 'output CC1 dead',
        changes: [
          {element: 'first', held: 'open'},
          {element: 'bumped', held: 'open'},
        ],
        weight: 0.7,
      },
      {
        id: 'second-output-dead',
        name: 'output CC2 dead',
        changes: [{element: 'second', held: 'open'}],
        weight: 0.5,
      },
      {
        id: 'signal-dead',
        name: 'damper signal dead',
        changes: [{element: 'signal', open: true}],
        weight: 0.5,
      },
    ];
    return list;
  },
});
