import type {LanePlan} from './lane-plan.ts';
import {BOX_GAP, BOX_TOP, LANE_GAP, LEAST_CHANNEL, PART_GAP, TRACK_PITCH} from './lane-spacing.ts';

const CROSSING = 1;
/** Two wires of one colour that cross cannot be told apart. */
const SAME_COLOUR = 4;
/** A wire that runs straight through a box it has no business in. */
const THROUGH_BOX = 6;
/** Two wire ends on one side of a channel: the wire turns back. */
const TURN_BACK = 0.6;
const HAIRPIN = 0.5;
const LANE = 0.12;
/** Each unit that a wire goes up or down. */
const RISE = 1 / 900;
/** Growth by the size of the sheet, 1280 × 800. */
export const SIZE = 130;
/** A drawing is never shown at more than 1.6 times its size: smaller than this gains nothing. */
export const SMALL_ENOUGH = 0.64;
/** One change makes the sheet and its wires this much cheaper at most, or is missed. */
const MOST_GAIN = 3;
/** Channels come out about this much of the widest they could be: tracks are shared. */
const TRACKS_TAKEN = 0.45;

/**
 * What a plan costs: crossings first, then an estimate of the size and of the length of wire it will take
 * once it has coordinates. Crossings are kept by channel, so that only changed channels are counted again.
 */
export class LaneCost {
  readonly #plan: LanePlan;
  readonly #channels: Float64Array;
  readonly #kept: Float64Array;
  #shapeCost = 0;
  #keptShape = 0;
  readonly #tops: Float64Array;
  // room for the chords of one channel
  readonly #chordA: Float64Array;
  readonly #chordB: Float64Array;
  readonly #chordWire: Int32Array;

  constructor(plan: LanePlan) {
    this.#plan = plan;
    this.#chordA = new Float64Array(plan.low.length);
    this.#chordB = new Float64Array(plan.low.length);
    this.#chordWire = new Int32Array(plan.low.length);
    this.#channels = new Float64Array(plan.columnCount + 1).map((_, k) => this.#channel(k));
    this.#kept = this.#channels.slice();
    this.#tops = new Float64Array(plan.rank.length);
  }

  /**
   * Counts what has changed since the plan's last commit, and gives the whole; or Infinity as soon as it is
   * certain to be more than `limit`.
   */
  total(limit = Infinity): number {
    const {dirty, columnCount} = this.#plan;
    let sum = 0;
    for (let k = 0; k <= columnCount; k++) {
      if (dirty & (1 << k) || (k > 0 && dirty & (1 << (k - 1))))
        this.#channels[k] = this.#channel(k);
      sum += this.#channels[k]!;
    }
    if (sum + this.#keptShape - MOST_GAIN > limit) return Infinity;
    this.#shapeCost = this.#shape();
    return sum + this.#shapeCost;
  }

  commit(): void {
    this.#kept.set(this.#channels);
    this.#keptShape = this.#shapeCost;
  }

  rollback(): void {
    this.#channels.set(this.#kept);
  }

  /** Crossings in a channel: chords of a circle cross where their ends alternate. */
  #channel(channel: number): number {
    const plan = this.#plan;
    const {low, high, colours} = plan;
    const [as, bs, wires] = [this.#chordA, this.#chordB, this.#chordWire];
    let count = 0;
    let sum = 0;
    for (let wire = 0; wire < low.length; wire++) {
      if (channel < low[wire]! || channel > high[wire]!) continue;
      const first = plan.firstPin(wire, channel);
      const last = plan.lastPin(wire, channel);
      const a = plan.circular(first, channel);
      const b = plan.circular(last, channel);
      as[count] = Math.min(a, b);
      bs[count] = Math.max(a, b);
      wires[count++] = wire;
      if (plan.fromLeft(first, channel) === plan.fromLeft(last, channel)) sum += TURN_BACK;
    }
    for (let i = 0; i < count; i++) {
      const [a, b] = [as[i]!, bs[i]!];
      const colour = colours[wires[i]!];
      for (let j = i + 1; j < count; j++) {
        const [c, d] = [as[j]!, bs[j]!];
        if (c < a ? d > a && d < b : c < b && d > b)
          sum += colours[wires[j]!] === colour ? CROSSING + SAME_COLOUR : CROSSING;
      }
    }
    for (let e = 0; e < plan.ranges.length; e++) {
      if (!plan.stands(e, channel - 1) || !plan.stands(e, channel)) continue;
      const [left, right] = [plan.layers[channel - 1]!, plan.layers[channel]!];
      const leftTop = left.indexOf(plan.topOf(e));
      const rightTop = right.indexOf(plan.topOf(e));
      const leftBottom = left.indexOf(plan.bottomOf(e));
      const rightBottom = right.indexOf(plan.bottomOf(e));
      const beside = (pin: number): number => {
        const place = plan.rank[plan.itemOf(pin)]!;
        if (plan.fromLeft(pin, channel)) return place < leftTop ? -1 : place > leftBottom ? 1 : 0;
        return place < rightTop ? -1 : place > rightBottom ? 1 : 0;
      };
      for (let i = 0; i < count; i++) {
        const first = beside(plan.firstPin(wires[i]!, channel));
        if (first !== 0 && first * beside(plan.lastPin(wires[i]!, channel)) < 0) sum += THROUGH_BOX;
      }
    }
    return sum;
  }

  /** Size and length, from columns packed downward. */
  #shape(): number {
    const plan = this.#plan;
    let height = 0;
    let sum = 0;
    const cursors = new Float64Array(plan.columnCount);
    const at = new Int32Array(plan.columnCount);
    const tops = this.#tops;
    // each enclosure once all that stands above it is placed
    const waiting = plan.ranges.flatMap((range, e) => (range ? [e] : []));
    while (waiting.length > 0) {
      const index = waiting.findIndex((e) => this.#isNext(e, at));
      // two enclosures each above the other: there is no such drawing
      if (index < 0) return Infinity;
      const [e] = waiting.splice(index, 1) as [number];
      const {low, high} = plan.ranges[e]!;
      let top = 0;
      for (let c = low; c <= high; c++) {
        const items = plan.layers[c]!;
        let cursor = cursors[c]!;
        for (; items[at[c]!] !== plan.topOf(e); at[c]!++) {
          tops[items[at[c]!]!] = cursor;
          cursor += LANE_GAP;
        }
        top = Math.max(top, cursor);
      }
      let bottom = top + 60;
      for (let c = low; c <= high; c++) {
        const items = plan.layers[c]!;
        let cursor = top + BOX_TOP;
        at[c]!++;
        for (let inner = items[at[c]!]!; inner !== plan.bottomOf(e); inner = items[at[c]!]!) {
          tops[inner] = cursor;
          cursor += plan.isPart(inner) ? plan.shapes[inner]!.height + PART_GAP : LANE_GAP;
          at[c]!++;
        }
        at[c]!++;
        bottom = Math.max(bottom, cursor);
      }
      for (let c = low; c <= high; c++) cursors[c] = bottom + BOX_GAP;
      sum += (bottom - top) * 0.004;
    }
    for (let c = 0; c < plan.columnCount; c++) {
      const items = plan.layers[c]!;
      for (; at[c]! < items.length; at[c]!++) {
        tops[items[at[c]!]!] = cursors[c]!;
        cursors[c]! += LANE_GAP;
      }
      height = Math.max(height, cursors[c]! + BOX_GAP);
    }
    let width = 24;
    for (let c = 0; c < plan.columnCount; c++) {
      let widest = 0;
      for (const item of plan.layers[c]!)
        if (plan.isPart(item)) {
          const {width: own, hairpins} = plan.shapes[item]!;
          widest = Math.max(widest, own);
          sum += hairpins * HAIRPIN;
        }
      width += widest;
    }
    for (let k = 0; k <= plan.columnCount; k++) {
      let bent = 0;
      for (let wire = 0; wire < plan.low.length; wire++) {
        if (k < plan.low[wire]! || k > plan.high[wire]!) continue;
        const rise = Math.abs(this.#y(plan.firstPin(wire, k)) - this.#y(plan.lastPin(wire, k)));
        sum += rise * RISE;
        if (rise > 12) bent++;
      }
      if (k > 0 && k < plan.columnCount)
        width += Math.max(LEAST_CHANNEL, 18 + bent * TRACK_PITCH * TRACKS_TAKEN);
    }
    for (let wire = 0; wire < plan.low.length; wire++)
      sum += (plan.high[wire]! - plan.low[wire]!) * LANE;
    // aligning wires stretches the sheet by about a tenth
    return sum + SIZE * Math.max(SMALL_ENOUGH, width / 1280, (height * 1.1) / 800);
  }

  /** Whether only lanes stand between what is placed and an enclosure's top, in all its columns. */
  #isNext(enclosure: number, at: Int32Array): boolean {
    const plan = this.#plan;
    const {low, high} = plan.ranges[enclosure]!;
    const top = plan.topOf(enclosure);
    for (let c = low; c <= high; c++) {
      const items = plan.layers[c]!;
      let i = at[c]!;
      while (plan.isLane(items[i]!)) i++;
      if (items[i] !== top) return false;
    }
    return true;
  }

  #y(pin: number): number {
    return pin < 0
      ? this.#tops[-1 - pin]!
      : this.#tops[this.#plan.endPart[pin]!]! + this.#plan.endY[pin]!;
  }
}
