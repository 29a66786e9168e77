import type {Unit} from '../content/unit.ts';
import {areAlike} from './look-alike-classes.ts';
import type {Hypothesis} from './hypotheses.ts';
import type {Suspect} from './suspects.ts';

/** What the log says of a named fault. */
export interface Proof {
  /**
   * `proved`: the log leaves the named fault and at most what no reading tells from it. `guessed`: other suspects
   * were still open. `contradicted`: something in the log would have come out otherwise with this fault.
   */
  readonly is: 'proved' | 'guessed' | 'contradicted';
  /** Suspects that were still open beside the named one and its look-alikes, the likeliest first. */
  readonly open: readonly {readonly id: string; readonly name: string; readonly share: number}[];
  /** Share of the odds that stood on the named fault and its look-alikes. */
  readonly share: number;
}

/** No class of look-alikes is as large, so with more suspects a naming is a guess whatever they are. */
const mostAlike = 24;

/** Judges a naming by the suspects that were open at that moment. */
export function proofOf(unit: Unit, named: string, suspects: readonly Suspect[]): Proof {
  const own = suspects.find(({hypothesis}) => hypothesis.id === named);
  const told = ({hypothesis, share}: Suspect): Proof['open'][number] => ({
    id: hypothesis.id,
    name: hypothesis.name,
    share,
  });
  if (!own) return {is: 'contradicted', open: suspects.map(told), share: 0};
  const alike = (other: Hypothesis): boolean =>
    suspects.length <= mostAlike
      ? areAlike(unit, own.hypothesis, other)
      : other.id === own.hypothesis.id;
  const others = suspects.filter(({hypothesis}) => !alike(hypothesis));
  const left = others.reduce((sum, {share}) => sum + share, 0);
  return {is: others.length === 0 ? 'proved' : 'guessed', open: others.map(told), share: 1 - left};
}
