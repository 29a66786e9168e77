import {atRest, sameDrive, type Plant, type PlantDrive} from './plant.ts';
import {reachesAtMs, still, valueAt, type Course} from './first-order.ts';

/** Where a value is heading and how fast. */
export interface Heading {
  readonly target: number;
  readonly seconds: number;
}

/** What a kind of plant is: what it rests at, where its values head, when it looks again. */
export interface PlantLaw {
  readonly resting: Readonly<Record<string, number>>;
  /** Values not named stay where they are. */
  headings(
    drive: PlantDrive,
    now: (name: string) => number,
  ): Readonly<Record<string, Heading | undefined>>;
  /** How long the headings hold while nothing else changes; the values that they depend on drift. */
  lookAgainMs(drive: PlantDrive, now: (name: string) => number): number;
}

/** A plant of first-order responses: each value heads for a target that its law gives for what runs now. */
export class DrivenPlant implements Plant {
  readonly names: readonly string[];
  private readonly law: PlantLaw;
  private readonly courses: Readonly<Record<string, Course>>;
  private readonly driven: PlantDrive;
  private readonly held: ReadonlySet<string>;
  private readonly lookAtMs: number;

  private constructor(
    law: PlantLaw,
    courses: Readonly<Record<string, Course>>,
    driven: PlantDrive,
    held: ReadonlySet<string>,
    lookAtMs: number,
  ) {
    this.law = law;
    this.courses = courses;
    this.names = Object.keys(courses);
    this.driven = driven;
    this.held = held;
    this.lookAtMs = lookAtMs;
  }

  static start(law: PlantLaw, start: Readonly<Record<string, number>>): DrivenPlant {
    const courses: Record<string, Course> = {};
    for (const [name, value] of Object.entries({...law.resting, ...start}))
      courses[name] = still(value, 0);
    return new DrivenPlant(law, courses, atRest, new Set(), 0).course(atRest, 0);
  }

  value(name: string, atMs: number): number | undefined {
    return Object.hasOwn(this.courses, name) ? valueAt(this.courses[name]!, atMs) : undefined;
  }

  // a person cannot mend by hand what a fault holds
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
  ): DrivenPlant {
    const courses = {...this.courses};
    for (const [name, value] of Object.entries(values)) courses[name] = still(value, atMs);
    return new DrivenPlant(this.law, courses, this.driven, held, this.lookAtMs).course(
      this.driven,
      atMs,
    );
  }

  /** New courses from where everything is now. */
  private course(drive: PlantDrive, atMs: number): DrivenPlant {
    const now = (name: string): number => valueAt(this.courses[name]!, atMs);
    const courses: Record<string, Course> = {...this.courses};
    for (const [name, heading] of Object.entries(this.law.headings(drive, now))) {
      if (!heading || this.held.has(name)) continue;
      const tauMs = heading.seconds * 1000;
      courses[name] = {startMs: atMs, start: now(name), target: heading.target, tauMs};
    }
    // at whole multiples of the clock, so that the answer does not depend on how waiting is cut up
    const everyMs = this.law.lookAgainMs(drive, now);
    const lookAtMs = (Math.floor(atMs / everyMs) + 1) * everyMs;
    return new DrivenPlant(this.law, courses, drive, this.held, lookAtMs);
  }
}
