import type {Control} from '../parts/part-kind.ts';

/**
 * The refrigerant-and-air side of a unit: pressures, temperatures, levels. Every value is a known function of
 * time until something that drives it changes, so the clock can jump straight to the next crossing of a set
 * point. A plant is immutable: each change gives a new one, so copies cost nothing.
 */
export interface Plant {
  readonly names: readonly string[];
  /** Value at a time not before the last change; undefined where the plant has no such value. */
  value(name: string, atMs: number): number | undefined;
  /** A person (or a fault) sets a value at a time; the plant goes on from there. */
  set(name: string, value: number, atMs: number): Plant;
  /** A fault keeps these values where they are put, whatever runs or is set. */
  hold(values: Readonly<Record<string, number>>, atMs: number): Plant;
  /** The fault is repaired: these values go on from here, free again. */
  release(values: Readonly<Record<string, number>>, atMs: number): Plant;
  /** What the electrical side does to the plant from now on. The same plant when nothing changed. */
  drive(drive: PlantDrive, atMs: number): Plant;
  /** First whole millisecond after `afterMs` at which the value is at or beyond the set point, on its present course. */
  reachesAtMs(
    name: string,
    setPoint: number,
    on: 'rise' | 'fall',
    afterMs: number,
  ): number | undefined;
  /** When the plant next wants to look at its own course again, if it does. */
  dueAtMs(): number | undefined;
  /** That time has come. */
  arrive(atMs: number): Plant;
}

/** What runs, as the plant feels it. Turning is a share of synchronous speed, 0 at rest. */
export interface PlantDrive {
  readonly compressor: number;
  readonly outdoorFan: number;
  readonly indoorBlower: number;
  /** Reversing valve energised: cooling. */
  readonly valveShifted: boolean;
  /** Electric heat given to the indoor air, watts. */
  readonly airHeatWatts: number;
  /** Crankcase heat, watts. */
  readonly crankcaseWatts: number;
  readonly inducer: number;
  readonly igniterWatts: number;
  /** Gas valve open, its knob too: gas passes if there is any. */
  readonly gasOpen: boolean;
  /** The second compressor in the unit, where there are two; `compressor` is then the first alone. */
  readonly secondCompressor: number;
  /** Share of its stroke that an outdoor-air damper makes for. */
  readonly damper: number;
}

export const atRest: PlantDrive = {
  compressor: 0,
  outdoorFan: 0,
  indoorBlower: 0,
  valveShifted: false,
  airHeatWatts: 0,
  crankcaseWatts: 0,
  inducer: 0,
  igniterWatts: 0,
  gasOpen: false,
  secondCompressor: 0,
  damper: 0,
};

export function sameDrive(a: PlantDrive, b: PlantDrive): boolean {
  return (
    a.compressor === b.compressor &&
    a.outdoorFan === b.outdoorFan &&
    a.indoorBlower === b.indoorBlower &&
    a.valveShifted === b.valveShifted &&
    a.airHeatWatts === b.airHeatWatts &&
    a.crankcaseWatts === b.crankcaseWatts &&
    a.inducer === b.inducer &&
    a.igniterWatts === b.igniterWatts &&
    a.gasOpen === b.gasOpen &&
    a.secondCompressor === b.secondCompressor &&
    a.damper === b.damper
  );
}

/** A plant value that a person may set, and who may: the weather and the room, or what an instructor spoils. */
export interface PlantControl extends Control {
  readonly setBy: 'anyone' | 'instructor';
}
