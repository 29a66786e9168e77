import type {MeterView} from './bench-view.ts';

export type Lead = 'red' | 'black';

/** Where the leads and the jaw are held just now, on the student's side of the glass. Only a reading is an action. */
export interface Probing {
  /** The lead that the next picked terminal takes. */
  readonly next: Lead;
  readonly red?: string;
  readonly black?: string;
  readonly clamp?: string;
}

/** Leads as the bench last saw them: where an attempt is picked up again. */
export function probingFrom(meter: MeterView): Probing {
  const {red, black, clamp} = meter;
  return {next: red !== undefined && black === undefined ? 'black' : 'red', red, black, clamp};
}

/**
 * Put the lead in hand on a terminal. The first pair goes red, black; once both are down the same lead stays
 * in hand, so that hopping along a circuit is one pick per reading.
 */
export function placeLead(probing: Probing, terminal: string): Probing {
  const bothWereDown = probing.red !== undefined && probing.black !== undefined;
  const placed = {...probing, [probing.next]: terminal};
  if (bothWereDown) return placed;
  const complete = placed.red !== undefined && placed.black !== undefined;
  // the pair is complete: red hops, black stays as the reference
  if (complete) return {...placed, next: 'red'};
  return {...placed, next: probing.next === 'red' ? 'black' : 'red'};
}

/** Take a lead in hand. */
export function takeLead(probing: Probing, lead: Lead): Probing {
  return {...probing, next: lead};
}
