import {readCondition, StatementError, type Condition} from './condition.ts';

/** A statement of a task: how a load must stand in every combination of the switches. */
export interface Rule {
  /** As written. */
  readonly statement: string;
  /** Placed element or winding (`K1.coil`, `CMP.main`). */
  readonly load: string;
  /** Share of rated volts that it must have; a coil is asked for 85 %, at which UL 508 wants it to pull in. */
  readonly least: number;
  readonly when: Condition;
}

/** A load that must be off has less than this share of its rated volts: strays and series relays leave some. */
export const offFraction = 0.2;

/**
 * Reads a rule: `K1.coil at least 85 % of rated exactly when Y and FS1 and HPS are closed`.
 * `≥` stands for "at least"; "of rated" may be left out. Throws StatementError.
 */
export function readRule(statement: string): Rule {
  const found =
    /^\s*(\S+)\s+(?:at least|≥|>=)\s*(\d+(?:\.\d+)?)\s*%(?:\s+of\s+rated)?\s+exactly\s+when\s+(.+)$/s.exec(
      statement,
    );
  if (!found)
    throw new StatementError(
      'this is no rule that can be checked',
      'write it like "K1.coil at least 85 % of rated exactly when Y and HPS are closed"',
    );
  const least = Number(found[2]) / 100;
  if (least <= offFraction || least > 1)
    throw new StatementError(
      `${found[2]} % cannot be told from off`,
      `ask for more than ${offFraction * 100} % and at most 100 %`,
    );
  return {statement, load: found[1], least, when: readCondition(found[3])};
}
