/**
 * Arithmetic of information, in bits. Weights need not add up to one. After C. E. Shannon, A Mathematical Theory of
 * Communication (1948); its use for choosing the next measurement after J. de Kleer and B. C. Williams, Diagnosing
 * Multiple Faults (1987).
 */

/** Bits still missing when the odds are these: −Σ p·log₂ p. Zero when one is left, or none. */
export function entropyBits(weights: Iterable<number>): number {
  let total = 0;
  let sum = 0;
  for (const weight of weights) {
    if (weight <= 0) continue;
    total += weight;
    sum += weight * Math.log2(weight);
  }
  // −Σ w/W·log₂(w/W) = log₂ W − Σ w·log₂ w / W
  return total === 0 ? 0 : Math.max(0, Math.log2(total) - sum / total);
}

/** Bits expected to be missing after a test that puts the suspects into these groups, one for each outcome. */
export function expectedBits(groups: readonly (readonly number[])[]): number {
  const sums = groups.map((group) => group.reduce((sum, weight) => sum + weight, 0));
  const total = sums.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return 0;
  return groups.reduce((bits, group, i) => bits + (sums[i] / total) * entropyBits(group), 0);
}

/** Bits that the test is expected to gain. As outcomes are certain for each suspect, the entropy of the outcomes. */
export function gainBits(groups: readonly (readonly number[])[]): number {
  return entropyBits(groups.map((group) => group.reduce((sum, weight) => sum + weight, 0)));
}

/**
 * Bayes' rule for a test whose outcome is only likely: weight × probability of what was seen.
 *
 * @param likelihoods probability of the outcome under each suspect, 0 … 1
 */
export function posterior(weights: readonly number[], likelihoods: readonly number[]): number[] {
  const joint = weights.map((weight, i) => weight * likelihoods[i]);
  const total = joint.reduce((sum, each) => sum + each, 0);
  return total === 0 ? joint : joint.map((each) => each / total);
}
