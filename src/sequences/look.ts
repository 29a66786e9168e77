import type {Complex} from '../parts/element.ts';

/** What the machines may look at: the solved network, the plant, the clock and the faults of a part. */
export interface Look {
  readonly atMs: number;
  /** Phasor of the volts across two placed terminals: what tells the order of three phases. */
  phasor(a: string, b: string): Complex;
  /** RMS volts across two placed terminals. */
  volts(a: string, b: string): number;
  /**
   * RMS volts that act in a placed element: 0 where the element itself is broken or its turns are shorted,
   * since an open coil has its full voltage at the terminals and pulls nothing.
   */
  voltsIn(element: string): number;
  /** RMS amps through a placed element, winding or wire. */
  amps(element: string): number;
  /** DC volts of a against b: board logic and sensors. */
  dcVolts(a: string, b: string): number;
  /** Plant value now; undefined when the unit's plant has no such value. */
  plant(name: string): number | undefined;
  /** Changed behaviour of a part by its faults; empty when healthy. */
  behaviour(part: string): Readonly<Record<string, string | number | boolean>>;
}
