import {CapacitorCharge, capacitorsOf, type Across} from '../circuits/capacitor-charge.ts';
import type {Network} from '../circuits/network.ts';
import type {Solution} from '../circuits/solution.ts';
import type {Capacitor, Complex} from '../parts/element.ts';

/** Less alternating volts than this across a capacitor, and it counts as switched off (common practice, no source). */
const liveVolts = 10;
/** Less charge than this is none: no meter shows it. */
const nothingVolts = 1e-3;
/** Nobody throws a switch and has leads on in less (common practice, no source). */
export const handSeconds = 1;

/** Whatever a discharge is worked out from: the unit's network with its sources dead. */
export interface Discharging {
  readonly network: Network;
  readonly dc: () => Solution;
}

/**
 * Charge left on capacitors when the power goes. While alternating volts stand across a capacitor it has no direct
 * ones; when they go it keeps what it had at that moment. That moment is chosen at the crest of the fullest one, the
 * worst that can happen: √2 times the RMS volts. From then on it runs off by whatever resistance is left between its
 * terminals: at once through a motor's windings, in many minutes where a winding or a wire is open.
 *
 * Never changed; every step gives the next one.
 */
export class StoredCharge {
  static readonly none = new StoredCharge(new Map(), new Map());
  /** Direct volts by capacitor id, those that hold any. */
  private readonly volts: ReadonlyMap<string, number>;
  /** Alternating volts by capacitor id, those that are live. */
  private readonly live: ReadonlyMap<string, Complex>;

  private constructor(volts: ReadonlyMap<string, number>, live: ReadonlyMap<string, Complex>) {
    this.volts = volts;
    this.live = live;
  }

  get isNone(): boolean {
    return this.volts.size === 0;
  }

  /** After the network has changed: who has lost its alternating volts, who has got some. */
  switched(network: Network, ac: Solution): StoredCharge {
    const capacitors = capacitorsIn(network);
    if (capacitors.length === 0) return StoredCharge.none;
    const live = new Map<string, Complex>();
    for (const {id, a, b} of capacitors) {
      const across = ac.voltsBetween(a, b);
      if (Math.hypot(across.re, across.im) >= liveVolts) live.set(id, across);
    }
    const lost = capacitors.flatMap(({id, microfarads}) => {
      const had = live.has(id) ? undefined : this.live.get(id);
      return had ? [{id, had, joules: microfarads * (had.re ** 2 + had.im ** 2)}] : [];
    });
    const volts = new Map([...this.volts].filter(([id]) => !live.has(id)));
    const fullest = lost.reduce((most, each) => (each.joules > most.joules ? each : most), {
      id: '',
      had: {re: 1, im: 0},
      joules: -1,
    });
    const angle = Math.atan2(fullest.had.im, fullest.had.re);
    for (const {id, had} of lost)
      volts.set(id, Math.SQRT2 * (had.re * Math.cos(angle) + had.im * Math.sin(angle)));
    return new StoredCharge(volts, live);
  }

  /** After so many seconds of running off. */
  after(seconds: number, from: Discharging, across?: Across): StoredCharge {
    if (this.isNone || seconds <= 0) return this;
    const charge = chargeOf(from);
    const left = charge.after(this.on(charge.capacitors), seconds, across);
    const volts = new Map<string, number>();
    charge.capacitors.forEach(({id}, i) => {
      if (!this.live.has(id) && Math.abs(left[i]) >= nothingVolts) volts.set(id, left[i]);
    });
    return new StoredCharge(volts, this.live);
  }

  /** Direct volts of `a` against `b` that the charge makes, an input of so many ohms laid on for a second. */
  voltsBetween(a: string, b: string, inputOhms: number, from: Discharging): number {
    if (this.isNone || a === b) return 0;
    const charge = chargeOf(from);
    const across = Number.isFinite(inputOhms) ? {a, b, ohms: inputOhms} : undefined;
    const volts = charge.after(this.on(charge.capacitors), handSeconds, across);
    return charge.voltsBetween(volts, a, b);
  }

  private on(capacitors: readonly Capacitor[]): number[] {
    return capacitors.map(({id}) => this.volts.get(id) ?? 0);
  }
}

/** The capacitors of a unit as resistances between them see each other. */
export function chargeOf({network, dc}: Discharging): CapacitorCharge {
  return new CapacitorCharge(dc(), capacitorsIn(network));
}

const known = new WeakMap<Network, Capacitor[]>();

function capacitorsIn(network: Network): Capacitor[] {
  let found = known.get(network);
  if (!found) known.set(network, (found = capacitorsOf(network.elements)));
  return found;
}
