import {atRest, sameDrive, type Plant, type PlantDrive} from './plant.ts';
import {reachesAtMs, still, valueAt, type Course} from './first-order.ts';
import {heatPumpTargets, type DrivenValue} from './split-heat-pump-targets.ts';

const resting: Readonly<Record<string, number>> = {
  roomDegF: 75,
  outdoorDegF: 80,
  outdoorCoilDegF: 80,
  supplyAirDegF: 75,
  heaterDegF: 75,
  dischargePsig: 220,
  suctionPsig: 220,
  panInches: 0,
  chargeFraction: 1,
  indoorAirflowFraction: 1,
  outdoorAirflowFraction: 1,
  compressorShellDegF: 85,
  frostFraction: 0,
};

/** How often targets are looked at again while the values they depend on drift. */
const lookAgainMs = 5 * 60_000;

/**
 * Simple first-order plant of a split heat pump: each value heads for a target that depends on what runs
 * ({@link heatPumpTargets}). Targets are taken anew when something changes, and otherwise five minutes later.
 */
export class SplitHeatPumpPlant implements Plant {
  readonly names: readonly string[];
  private readonly courses: Readonly<Record<string, Course>>;
  private readonly driven: PlantDrive;
  private readonly held: ReadonlySet<string>;
  private readonly lookAtMs: number;

  private constructor(
    courses: Readonly<Record<string, Course>>,
    driven: PlantDrive,
    held: ReadonlySet<string>,
    lookAtMs: number,
  ) {
    this.courses = courses;
    this.names = Object.keys(courses);
    this.driven = driven;
    this.held = held;
    this.lookAtMs = lookAtMs;
  }

  static start(start: Readonly<Record<string, number>>): SplitHeatPumpPlant {
    const courses: Record<string, Course> = {};
    for (const [name, value] of Object.entries({...resting, ...start}))
      courses[name] = still(value, 0);
    return new SplitHeatPumpPlant(courses, atRest, new Set(), 0).course(atRest, 0);
  }

  value(name: string, atMs: number): number | undefined {
    return Object.hasOwn(this.courses, name) ? valueAt(this.courses[name]!, atMs) : undefined;
  }

  // a person cannot mend by hand what a fault holds: pouring out the pan does not clear its drain
  set(name: string, value: number, atMs: number): Plant {
    return this.held.has(name) ? this : this.put({[name]: value}, this.held, atMs);
  }

  hold(values: Readonly<Record<string, number>>, atMs: number): Plant {
    return this.put(values, new Set([...this.held, ...Object.keys(values)]), atMs);
  }

  release(values: Readonly<Record<string, number>>, atMs: number): Plant {
    const held = [...this.held].filter((name) => !Object.hasOwn(values, name));
    return this.put(values, new Set(held), atMs);
  }

  drive(drive: PlantDrive, atMs: number): Plant {
    return sameDrive(drive, this.driven) ? this : this.course(drive, atMs);
  }

  reachesAtMs(
    name: string,
    setPoint: number,
    on: 'rise' | 'fall',
    afterMs: number,
  ): number | undefined {
    const course = Object.hasOwn(this.courses, name) ? this.courses[name] : undefined;
    return course && reachesAtMs(course, setPoint, on, afterMs);
  }

  dueAtMs(): number {
    return this.lookAtMs;
  }

  arrive(atMs: number): Plant {
    return this.course(this.driven, atMs);
  }

  private put(
    values: Readonly<Record<string, number>>,
    held: ReadonlySet<string>,
    atMs: number,
  ): SplitHeatPumpPlant {
    const courses = {...this.courses};
    for (const [name, value] of Object.entries(values)) courses[name] = still(value, atMs);
    return new SplitHeatPumpPlant(courses, this.driven, held, this.lookAtMs).course(
      this.driven,
      atMs,
    );
  }

  /** New courses from where everything is now. */
  private course(drive: PlantDrive, atMs: number): SplitHeatPumpPlant {
    const now = (name: string): number => valueAt(this.courses[name]!, atMs);
    const targets = heatPumpTargets({
      ...drive,
      roomDegF: now('roomDegF'),
      outdoorDegF: now('outdoorDegF'),
      chargeFraction: now('chargeFraction'),
      indoorAirflowFraction: now('indoorAirflowFraction'),
      outdoorAirflowFraction: now('outdoorAirflowFraction'),
      frostFraction: now('frostFraction'),
    });
    const courses: Record<string, Course> = {...this.courses};
    for (const name of Object.keys(targets) as DrivenValue[]) {
      const {target, minutes} = targets[name];
      if (this.held.has(name)) continue;
      courses[name] = {startMs: atMs, start: now(name), target, tauMs: minutes * 60_000};
    }
    return new SplitHeatPumpPlant(courses, drive, this.held, atMs + lookAgainMs);
  }
}
