import {meterSpec} from '../meter/meter-spec.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** Steps to one width of the accuracy band. */
const stepsPerBand = 2;

/** One number seen as a 32-bit float and as its bits. Ten bits of its fraction are kept: steps of a tenth of a percent. */
const asFloat = new Float32Array(1);
const asBits = new Uint32Array(asFloat.buffer);
const droppedBits = 13;

/**
 * A ruler for one meter function on which equal distances are equally well told apart: one unit is twice the limit
 * of error, so two amounts further apart than one unit have accuracy bands that do not meet. In each range the limit
 * is p·v + c, and the distance ∫ dv / 2(p·v + c) a logarithm. Amounts become whole steps, so that the readings of
 * hundreds of suspects at thousands of pairs can be compared as small integers.
 */
export class OutcomeScale {
  readonly fn: MeterFunction;
  /** Outcome of a meter beyond its last range. */
  readonly overload: number;
  /** Outcome of a resistance function with voltage on the leads. */
  readonly hazard: number;
  /** Outcomes further apart than this many steps are told apart. */
  static readonly apart = stepsPerBand;
  private readonly starts: Float64Array;
  private readonly tops: Float64Array;
  private readonly lows: Float64Array;
  private readonly fixed: Float64Array;
  private readonly share: number;
  private readonly zero: number;
  private readonly steps: Uint16Array;

  constructor(fn: MeterFunction) {
    const {ranges, accuracy} = meterSpec[fn];
    this.fn = fn;
    this.share = accuracy.percent / 100;
    this.starts = new Float64Array(ranges.length + 1);
    this.tops = Float64Array.from(ranges, (range) => range.upTo);
    this.lows = Float64Array.from(ranges, (_, i) => (i === 0 ? 0 : ranges[i - 1].upTo));
    this.fixed = Float64Array.from(ranges, (range) => accuracy.counts * range.resolution);
    for (let i = 0; i < ranges.length; i += 1)
      this.starts[i + 1] = this.starts[i] + this.within(i, this.tops[i]);
    const top = Math.ceil(stepsPerBand * this.starts[ranges.length]) + 1;
    // amounts with a sign are mirrored about the middle of the ruler
    this.zero = fn === 'dc-volts' ? top : 0;
    this.overload = this.zero + top;
    this.hazard = this.overload + stepsPerBand + 2;
    this.steps = this.lookUp();
  }

  /** How many outcomes there are: every outcome is below it. */
  get size(): number {
    return this.hazard + 1;
  }

  /** The outcome of an amount in the base unit (volts, ohms, amps). */
  of(amount: number): number {
    const {zero, steps} = this;
    asFloat[0] = amount;
    const step = steps[(asBits[0] & 0x7fffffff) >>> droppedBits];
    return amount < 0 ? zero - step : zero + step;
  }

  /** Steps of an amount without its sign; the overload's number of steps beyond the last range. */
  private stepsOf(size: number): number {
    const {tops} = this;
    for (let i = 0; i < tops.length; i += 1)
      if (size <= tops[i])
        return Math.trunc(stepsPerBand * (this.starts[i] + this.within(i, size)));
    return this.overload - this.zero;
  }

  /** A logarithm for each of millions of readings is slow: here it is looked up by the leading bits of the amount. */
  private lookUp(): Uint16Array {
    const steps = new Uint16Array(0x80000000 >>> droppedBits);
    for (let i = 0; i < steps.length; i += 1) {
      // the middle of the amounts that share these bits
      asBits[0] = (i << droppedBits) | (1 << (droppedBits - 1));
      steps[i] = this.stepsOf(asFloat[0]);
    }
    return steps;
  }

  /** An amount that has this outcome, for telling people; undefined at overload and hazard. */
  amountOf(outcome: number): number | undefined {
    if (outcome >= this.overload) return undefined;
    const units = (Math.abs(outcome - this.zero) + 0.5) / stepsPerBand;
    let i = 0;
    while (i < this.tops.length - 1 && units > this.starts[i + 1]) i += 1;
    const {share} = this;
    const limit = share * this.lows[i] + this.fixed[i];
    const grown = limit * Math.exp(2 * share * (units - this.starts[i]));
    return Math.sign(outcome - this.zero) * ((grown - this.fixed[i]) / share);
  }

  /** Distance from the lower end of a range, in units. */
  private within(range: number, size: number): number {
    const {share, fixed, lows} = this;
    return (
      Math.log((share * size + fixed[range]) / (share * lows[range] + fixed[range])) / (2 * share)
    );
  }
}
