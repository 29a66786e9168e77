import type {Plant} from './plant.ts';

const resting: Readonly<Record<string, number>> = {
  dischargePsig: 200,
  suctionPsig: 200,
  panInches: 0,
};

/** A plant whose values stay where a hand puts them: gauges and a pan on a practice panel. */
export class HandPlant implements Plant {
  readonly names: readonly string[];
  private readonly values: Readonly<Record<string, number>>;
  private readonly held: ReadonlySet<string>;

  constructor(start: Readonly<Record<string, number>>, held: ReadonlySet<string> = new Set()) {
    this.values = {...resting, ...start};
    this.names = Object.keys(this.values);
    this.held = held;
  }

  value(name: string): number | undefined {
    return Object.hasOwn(this.values, name) ? this.values[name] : undefined;
  }

  set(name: string, value: number): Plant {
    return this.held.has(name) ? this : new HandPlant({...this.values, [name]: value}, this.held);
  }

  hold(values: Readonly<Record<string, number>>): Plant {
    return new HandPlant(
      {...this.values, ...values},
      new Set([...this.held, ...Object.keys(values)]),
    );
  }

  release(values: Readonly<Record<string, number>>): Plant {
    const held = [...this.held].filter((name) => !Object.hasOwn(values, name));
    return new HandPlant({...this.values, ...values}, new Set(held));
  }

  drive(): Plant {
    return this;
  }

  reachesAtMs(): undefined {
    return undefined;
  }

  dueAtMs(): undefined {
    return undefined;
  }

  arrive(): Plant {
    return this;
  }
}
