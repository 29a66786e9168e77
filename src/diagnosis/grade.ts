import type {HintLevel} from '../bench/actions.ts';
import {hintPoints} from './hint-points.ts';

/** What a grade is made of. */
export interface Graded {
  /** Namings in order: whether each was right (or equivalent), and how well the log proved it. */
  readonly namings: readonly {
    readonly right: boolean;
    readonly proved: boolean;
    /** The log itself spoke against it. */
    readonly contradicted: boolean;
    /** Share of the odds on the named fault and its look-alikes when it was named, 0 … 1. */
    readonly share: number;
    readonly dollars: number;
  }[];
  /** For each reading, bits it was expected to gain and the most that any reading could have gained then. */
  readonly readings: readonly {readonly expectedBits: number; readonly bestBits: number}[];
  readonly minutes: number;
  /** Minutes that the planner takes for the same fault. */
  readonly routeMinutes: number;
  readonly findings: readonly {readonly severity: 'danger' | 'caution'}[];
  /** Hints asked for, by how much each gave away. */
  readonly hints?: readonly HintLevel[];
}

/** Points out of 100, and where they come from. */
export interface Grade {
  readonly points: number;
  /** Was the fault found, and proved? 0 … 40. */
  readonly outcome: number;
  /** How much of what could be asked did each reading ask? Less what hints cost. 0 … 30. */
  readonly method: number;
  /** Points that hints took off the method. */
  readonly hints: number;
  /** Minutes and parts against the planner's. 0 … 20. */
  readonly work: number;
  /** 0 … 10. */
  readonly safety: number;
}

// The weights are our own choice: a proved answer counts most, then how it was reached.
const outcomePoints = 40;
const methodPoints = 30;
const workPoints = 20;
const safetyPoints = 10;
const wrongNamingCosts = 10;
const dangerCosts = 5;
const cautionCosts = 2;
/** A minute of a technician is worth about two dollars of parts (common practice, no source). */
const dollarsPerMinute = 2;
/** Leads put down anywhere ask for about a quarter of what could be asked: that is where method begins. */
const askedAtRandom = 0.25;
/** Good questions are half the method; minding the answers is the other half. */
const againstOwnLog = 0.5;
/** When less than this can still be gained, there is nothing left to ask and no reading is judged. */
const nothingToGain = 0.05;

/** Grades an attempt by how it was reasoned. Every number comes from replaying the attempt. */
export function gradeOf(graded: Graded): Grade {
  const {namings} = graded;
  const last = namings[namings.length - 1];
  const wrong = namings.filter(({right}) => !right).length;
  const found = last?.right ?? false;
  const certain = found ? (last.proved ? 1 : last.share) : 0;
  const outcome = Math.max(0, outcomePoints * certain - wrongNamingCosts * (found ? wrong : 0));
  const asked = Math.max(0, questionsAsked(graded.readings) - askedAtRandom) / (1 - askedAtRandom);
  const earned = methodPoints * asked * (last?.contradicted ? againstOwnLog : 1);
  const told = (graded.hints ?? []).reduce((sum, level) => sum + hintPoints[level], 0);
  const method = Math.max(0, earned - told);
  const dollars = namings
    .filter(({right, proved}) => !right || !proved)
    .reduce((sum, naming) => sum + naming.dollars, 0);
  const spent = graded.minutes + dollars / dollarsPerMinute;
  const work = found ? workPoints * Math.min(1, spent > 0 ? graded.routeMinutes / spent : 1) : 0;
  const lost = graded.findings.reduce(
    (sum, {severity}) => sum + (severity === 'danger' ? dangerCosts : cautionCosts),
    0,
  );
  const safety = Math.max(0, safetyPoints - lost);
  const rounded = {
    outcome: Math.round(outcome),
    method: Math.round(method),
    hints: Math.round(earned) - Math.round(method),
    work: Math.round(work),
    safety: Math.round(safety),
  };
  return {
    points: rounded.outcome + rounded.method + rounded.work + rounded.safety,
    ...rounded,
  };
}

/** Bits asked for against the most that could have been asked for, over all readings that had something to ask. */
function questionsAsked(readings: Graded['readings']): number {
  const judged = readings.filter(({bestBits}) => bestBits > nothingToGain);
  const best = judged.reduce((sum, {bestBits}) => sum + bestBits, 0);
  const asked = judged.reduce(
    (sum, {expectedBits, bestBits}) => sum + Math.min(expectedBits, bestBits),
    0,
  );
  return best === 0 ? 0 : asked / best;
}
