import {z} from 'zod';
import {flameInputOhms} from './flame-input.ts';
import {definePart, type FaultMode} from './part-kind.ts';

const seconds = z.number().min(1).max(3600);

const data = z.strictObject({
  /** Time with draft proved before the igniter is fed. */
  purgeSeconds: seconds.default(15),
  igniterWarmUpSeconds: seconds.default(20),
  /** The gas valve is open at most this long without a flame. */
  trialSeconds: z.number().min(2).max(30).default(5),
  /** Airing between two tries. */
  interPurgeSeconds: seconds.default(30),
  postPurgeSeconds: seconds.default(15),
  /** Tries for a flame in one call before the board locks out. */
  tries: z.number().int().min(1).max(9).default(3),
  lockoutMinutes: z.number().min(1).max(1440).default(60),
  /** An inducer that has not closed the pressure switch in this time is reported by the lamp. */
  draftWithinSeconds: seconds.default(30),
  blowerOnSeconds: seconds.default(30),
  blowerOffSeconds: seconds.default(90),
  /** Rectified flame current that proves a flame, and below which it is lost: direct-current microamps. */
  provedMicroamps: z.number().positive().max(20).default(0.5),
  lostMicroamps: z.number().positive().max(20).default(0.4),
  blankBelowVolts: z.number().positive().max(24).default(16),
});
export type IgnitionBoardData = z.infer<typeof data>;

const relay = (id: string, b: string) =>
  ({is: 'contact', id, a: 'L', b, normally: 'open', closedOhms: 0.01}) as const;

const input = (id: string, a: string) =>
  ({is: 'impedance', id, a, b: 'C', acOhms: {re: 2200, im: 0}, dcOhms: 2200}) as const;

/**
 * Ignition board of a gas furnace. 120 V: L N in; IND inducer, IGN igniter, BLO blower out, each a
 * relay from L. 24 V: R C power; W G calls, Y passed through; LI back from the limit string, PI back from the pressure
 * switch, MV to the gas valve. The valve's relay lies between PI and MV, so an open limit or pressure switch takes the
 * gas away whatever the board does. FS flame rod, GND burner ground.
 */
export const ignitionBoard = definePart({
  kind: 'ignition-board',
  title: 'Ignition board',
  data,
  terminals: () => [
    'L',
    'N',
    'IND',
    'IGN',
    'BLO',
    'R',
    'C',
    'W',
    'Y',
    'G',
    'LI',
    'PI',
    'MV',
    'FS',
    'GND',
  ],
  elements: () => [
    // about 2.5 VA at 24 V (common practice, no source)
    {is: 'impedance', id: 'supply', a: 'R', b: 'C', acOhms: {re: 230, im: 0}, dcOhms: 12000},
    relay('inducer', 'IND'),
    relay('igniter', 'IGN'),
    relay('blower', 'BLO'),
    input('w-input', 'W'),
    input('g-input', 'G'),
    input('limit-input', 'LI'),
    input('pressure-input', 'PI'),
    {is: 'contact', id: 'valve', a: 'PI', b: 'MV', normally: 'open', closedOhms: 0.03},
    // line volts through a small capacitor and resistors put some 65 V alternating on the rod; the flame rectifies it
    {
      is: 'impedance',
      id: 'flame-feed',
      a: 'L',
      b: 'FS',
      acOhms: {re: 470e3, im: -1e6},
      dcOhms: 1e11,
    },
    {
      is: 'impedance',
      id: 'flame-input',
      a: 'FS',
      b: 'GND',
      acOhms: {re: flameInputOhms, im: 0},
      dcOhms: flameInputOhms,
    },
  ],
  modes: () => [
    {
      id: 'dead',
      name: 'board dead',
      changes: [{element: 'supply', open: true}],
      behaviour: {logic: 'dead'},
      weight: 1,
    },
    ...(
      [
        ['inducer', 'inducer relay', 1],
        ['igniter', 'igniter relay', 1],
        ['blower', 'blower relay', 1.5],
        ['valve', 'gas-valve relay', 1],
      ] as const
    ).map(([element, name, weight]): FaultMode => ({
      id: `${element}-open`,
      name: `${name} does not close`,
      changes: [{element, held: 'open'}],
      weight,
    })),
    {
      id: 'blower-welded',
      name: 'blower relay welded closed',
      changes: [{element: 'blower', held: 'closed'}],
      weight: 0.5,
    },
    {
      id: 'inducer-welded',
      name: 'inducer relay welded closed',
      changes: [{element: 'inducer', held: 'closed'}],
      weight: 0.4,
    },
    {
      id: 'flame-circuit-dead',
      name: 'flame circuit does not see the flame current',
      changes: [{element: 'flame-input', besideOhms: 1000}],
      weight: 0.5,
    },
  ],
});
