import {z} from 'zod';
import {definePart} from './part-kind.ts';

const data = z
  .strictObject({
    /** Line to line. */
    ratedVolts: z.number().min(100).max(600).default(208),
    /** Greatest deviation of one pair from the mean of the three, per cent of the mean, as NEMA MG-1 reckons it. */
    imbalancePercent: z.number().min(1).max(20).default(4),
    lowPercent: z.number().min(60).max(98).default(88),
    highPercent: z.number().min(102).max(130).default(112),
    /** How long something must be wrong before it lets go; a lost or turned phase it does not wait for so long. */
    tripDelaySeconds: z.number().min(0.1).max(60).default(5),
    fastTripSeconds: z.number().min(0.05).max(10).default(0.5),
    /** How long all must be right before it pulls in. */
    restartDelaySeconds: z.number().min(0).max(600).default(5),
  })
  .refine((monitor) => monitor.fastTripSeconds <= monitor.tripDelaySeconds, {
    error:
      'fastTripSeconds is above tripDelaySeconds — a lost phase is what must be acted on soonest',
    path: ['fastTripSeconds'],
  });
export type PhaseMonitorData = z.infer<typeof data>;

/**
 * Phase monitor: watches three lines and holds a relay in while they are all there, in order, in balance and within
 * limits. L1 L2 L3 sensing, which also feeds it; contact COM–NO closes when all is right, COM–NC opens.
 * Elements: `sense12`, `sense23`, `sense31`; contacts `ok` and `tripped`.
 */
export const phaseMonitor = definePart({
  kind: 'phase-monitor',
  title: 'Phase monitor',
  data,
  terminals: () => ['L1', 'L2', 'L3', 'COM', 'NO', 'NC'],
  elements: () => [
    // about 1 VA a pair at 208 V (common practice, no source)
    ...(
      [
        ['sense12', 'L1', 'L2'],
        ['sense23', 'L2', 'L3'],
        ['sense31', 'L3', 'L1'],
      ] as const
    ).map(([id, a, b]) => ({
      is: 'impedance' as const,
      id,
      a,
      b,
      acOhms: {re: 43_000, im: 0},
      dcOhms: 43_000,
    })),
    {is: 'contact', id: 'ok', a: 'COM', b: 'NO', normally: 'open', closedOhms: 0.03},
    {is: 'contact', id: 'tripped', a: 'COM', b: 'NC', normally: 'closed', closedOhms: 0.03},
  ],
  modes: () => [
    {
      id: 'dead',
      name: 'dead, never pulls in',
      behaviour: {logic: 'dead'},
      weight: 0.7,
    },
    {
      id: 'relay-stuck-open',
      name: 'relay contact COM–NO does not close',
      changes: [{element: 'ok', held: 'open'}],
      weight: 0.7,
    },
    {
      id: 'relay-welded',
      name: 'relay contact COM–NO welded closed',
      changes: [{element: 'ok', held: 'closed'}],
      weight: 0.4,
    },
    {
      id: 'imbalance-set-too-fine',
      name: 'imbalance set too fine, trips on a sound supply',
      behaviour: {logic: 'too-fine'},
      weight: 0.5,
    },
  ],
});
