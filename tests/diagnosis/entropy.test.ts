import {describe, expect, test} from 'vitest';
import {entropyBits, expectedBits, gainBits, posterior} from '../../src/diagnosis/entropy.ts';

describe('bits', () => {
  test('n equally likely suspects leave log₂ n bits, one leaves none', () => {
    expect(entropyBits([1, 1, 1, 1, 1, 1, 1, 1])).toBeCloseTo(3, 12);
    expect(entropyBits([7])).toBe(0);
    expect(entropyBits([])).toBe(0);
  });

  test('weights need not add up to one', () => {
    expect(entropyBits([3, 1])).toBeCloseTo(entropyBits([0.75, 0.25]), 12);
  });

  test('what a test gains and what it leaves add up to what was missing', () => {
    const groups = [[3, 1, 2], [5], [0.5, 0.25]];
    expect(gainBits(groups) + expectedBits(groups)).toBeCloseTo(entropyBits(groups.flat()), 12);
  });

  // Half-split method, with the entropy of eight series sections of equal odds (own arithmetic on it).
  test('of eight series sections the middle gains one bit, after the first only 0.5436', () => {
    const after = (sections: number): number =>
      gainBits([Array<number>(sections).fill(1), Array<number>(8 - sections).fill(1)]);
    expect(after(4)).toBeCloseTo(1, 12);
    expect(after(1)).toBeCloseTo(0.5436, 4);
    expect([1, 2, 3, 5, 6, 7].every((sections) => after(sections) < after(4))).toBe(true);
  });
});

describe("Bayes' rule", () => {
  test('a fault of odds 0.02 after a test that is right 95 times in 100', () => {
    expect(posterior([0.02, 0.98], [0.95, 0.05])[0]).toBeCloseTo(0.2794, 4);
    expect(posterior([0.02, 0.98], [0.05, 0.95])[0]).toBeCloseTo(0.001073, 6);
  });

  test('capacitor, contactor, compressor after a test that reads bad', () => {
    const [capacitor, contactor, compressor] = posterior([0.5, 0.3, 0.2], [0.9, 0.1, 0.2]);
    expect(capacitor).toBeCloseTo(0.8654, 4);
    expect(contactor).toBeCloseTo(0.0577, 4);
    expect(compressor).toBeCloseTo(0.0769, 4);
  });
});

/**
 * The polybox of J. de Kleer and B. C. Williams, Diagnosing Multiple Faults (Artificial Intelligence 32, 1987):
 * M1 = 3×2, M2 = 2×3, M3 = 2×3; A1 = M1 + M2 seen as 10, A2 = M2 + M3 seen as 12. Circuit and candidates as read in
 * university slides on the paper; the entropies are computed here by its method.
 */
describe('the polybox', () => {
  const odds = 0.01;
  const seen = {a1: 10, a2: 12};

  /** What a probe must show when only these are broken, from the parts that are sound and the outputs seen. */
  function predict(broken: readonly string[]): {X?: number; Y?: number; Z?: number} | undefined {
    const sound = (part: string): boolean => !broken.includes(part);
    let [X, Y, Z] = [
      sound('M1') ? 6 : undefined,
      sound('M2') ? 6 : undefined,
      sound('M3') ? 6 : undefined,
    ];
    for (let round = 0; round < 3; round += 1) {
      if (sound('A1')) {
        if (X !== undefined && Y !== undefined && X + Y !== seen.a1) return undefined;
        if (X !== undefined) Y ??= seen.a1 - X;
        if (Y !== undefined) X ??= seen.a1 - Y;
      }
      if (sound('A2')) {
        if (Y !== undefined && Z !== undefined && Y + Z !== seen.a2) return undefined;
        if (Y !== undefined) Z ??= seen.a2 - Y;
        if (Z !== undefined) Y ??= seen.a2 - Z;
      }
    }
    return {X, Y, Z};
  }

  const parts = ['M1', 'M2', 'M3', 'A1', 'A2'];
  const subsets = Array.from({length: 32}, (_, mask) => parts.filter((_, i) => (mask >> i) & 1));
  const candidates = subsets.filter((broken) => predict(broken) !== undefined);
  const minimal = candidates.filter(
    (set) =>
      !candidates.some((other) => other !== set && other.every((part) => set.includes(part))),
  );
  const weights = minimal.map(
    (set) => odds ** set.length * (1 - odds) ** (parts.length - set.length),
  );

  test('has the minimal candidates A1, M1, A2+M2, M2+M3', () => {
    const names = minimal.map((set) => [...set].sort().join('+')).sort();
    expect(names).toEqual(['A1', 'A2+M2', 'M1', 'M2+M3']);
  });

  test('is missing 1.0808 bits, and probe X leaves the least', () => {
    const leaves = (probe: 'X' | 'Y' | 'Z'): number => {
      const groups = new Map<number, number[]>();
      minimal.forEach((set, i) => {
        const value = predict(set)![probe]!;
        groups.set(value, [...(groups.get(value) ?? []), weights[i]]);
      });
      return expectedBits([...groups.values()]);
    };
    expect(entropyBits(weights)).toBeCloseTo(1.0808, 3);
    expect(leaves('X')).toBeCloseTo(0.0809, 3);
    expect(leaves('Y')).toBeCloseTo(1, 3);
    expect(leaves('Z')).toBeCloseTo(1.0354, 3);
  });
});
