import {OutcomeScale} from './outcome-scale.ts';
import type {OutcomeTable} from './outcome-table.ts';

/**
 * How one place splits the suspects. Counts weights by outcome and joins outcomes that the meter cannot tell apart.
 * Works on scratch of its own: one instance serves any number of places of one table.
 */
export class OutcomeSplit {
  private readonly table: OutcomeTable;
  private readonly weightAt: Float64Array;
  private readonly countAt: Int32Array;
  private readonly met: Int32Array;
  private metCount = 0;
  /** Weight and number of suspects of each group found, in order of the reading. */
  readonly groupWeights: number[] = [];
  readonly groupCounts: number[] = [];
  /** Lowest outcome of each group. */
  readonly groupOutcomes: number[] = [];

  constructor(table: OutcomeTable) {
    this.table = table;
    this.weightAt = new Float64Array(table.scale.size);
    this.countAt = new Int32Array(table.scale.size);
    this.met = new Int32Array(table.scale.size);
  }

  /**
   * Bits that a reading at this place gains on the suspects given.
   *
   * @param among indices of suspects of the table
   * @param weights weight of each suspect of the table, by index
   */
  bits(place: number, among: Int32Array, weights: Float64Array): number {
    this.group(place, among, weights);
    let total = 0;
    let sum = 0;
    for (const weight of this.groupWeights) {
      total += weight;
      sum += weight * Math.log2(weight);
    }
    return this.groupWeights.length < 2 ? 0 : Math.log2(total) - sum / total;
  }

  /** Finds the groups of a place; they stand in {@link groupWeights} and its companions. */
  group(place: number, among: Int32Array, weights: Float64Array): void {
    const {outcomes, suspects} = this.table;
    const {weightAt, countAt, met} = this;
    const base = place * suspects;
    this.metCount = 0;
    for (let i = 0; i < among.length; i += 1) {
      const suspect = among[i];
      const outcome = outcomes[base + suspect];
      if (countAt[outcome] === 0) this.insert(outcome);
      countAt[outcome] += 1;
      weightAt[outcome] += weights[suspect];
    }
    this.groupWeights.length = 0;
    this.groupCounts.length = 0;
    this.groupOutcomes.length = 0;
    let last = -Infinity;
    for (let i = 0; i < this.metCount; i += 1) {
      const outcome = met[i];
      const top = this.groupWeights.length - 1;
      // two steps whose far ends are one band apart may still be told apart or not: they count as one
      if (outcome - last > OutcomeScale.apart) {
        this.groupWeights.push(weightAt[outcome]);
        this.groupCounts.push(countAt[outcome]);
        this.groupOutcomes.push(outcome);
      } else {
        this.groupWeights[top] += weightAt[outcome];
        this.groupCounts[top] += countAt[outcome];
      }
      last = outcome;
      weightAt[outcome] = 0;
      countAt[outcome] = 0;
    }
  }

  /** Keeps the outcomes met in ascending order; there are few of them, so insertion is quick. */
  private insert(outcome: number): void {
    const {met} = this;
    let at = this.metCount;
    while (at > 0 && met[at - 1] > outcome) {
      met[at] = met[at - 1];
      at -= 1;
    }
    met[at] = outcome;
    this.metCount += 1;
  }
}
