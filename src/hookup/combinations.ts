/** Up to this many switches every combination is run one by one: 4096 of them. */
export const combinationLimit = 12;

/**
 * Combinations of switches in which a board is known to do the same: those that agree with `mask` in every switch of
 * `care`. Bit i stands for input i, 1 while it is closed.
 */
export interface Cube {
  readonly mask: number;
  readonly care: number;
}

/** One settled board that speaks for a whole cube. */
export interface Run<S> extends Cube {
  readonly settled: S;
}

/** How a task was proved, for the report. */
export interface Proof {
  /** False where the runs allowed were not enough: some combinations were never looked at. */
  readonly complete: boolean;
  readonly runs: number;
  readonly sentence: string;
}

/** Every combination by itself. */
export function* eachCombination<S>(n: number, settle: (mask: number) => S): Generator<Run<S>> {
  const care = 2 ** n - 1;
  for (let mask = 0; mask <= care; mask++) yield {mask, care, settled: settle(mask)};
}

/**
 * Covers all combinations by cubes. Each run says which switches it depended on: flipping any of the others, in any
 * number at once, would have left every step of the settling as it was. So one run settles its whole cube, and what
 * is left is cut along the switches that it did depend on. A load's path sets come out as cubes with closed switches,
 * its cut sets as cubes with open ones; nothing is asked of the wiring or of the rule, so relay contacts that open,
 * seal-ins and rules with "not" are covered as well. Ends when everything is covered, or gives `undefined` when
 * `most` runs were not enough.
 *
 * @param run settles a combination and gives the switches that it depended on, as a bit set
 */
export function* coverCombinations<S>(
  n: number,
  run: (mask: number) => {settled: S; care: number},
  most: number,
): Generator<Run<S> | undefined> {
  const every = 2 ** n - 1;
  // what is left to cover, as cubes that share nothing
  const left: Cube[] = [{mask: 0, care: 0}];
  for (let runs = 0; left.length > 0; runs++) {
    if (runs === most) {
      yield undefined;
      return;
    }
    const space = left.pop()!;
    const mask = space.mask & every;
    const {settled, care} = run(mask);
    yield {mask, care: care | space.care, settled};
    let fixed = space.care;
    for (let bit = 1; bit <= every; bit <<= 1) {
      if ((care & ~fixed & bit) === 0) continue;
      fixed |= bit;
      left.push({mask: (mask & fixed) ^ bit, care: fixed});
    }
  }
}
