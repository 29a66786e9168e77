import {hintMinutes} from '../bench/action-costs.ts';
import type {Action, HintLevel} from '../bench/actions.ts';
import {Bench, type BenchSetup} from '../bench/bench.ts';
import {complaintOf} from '../bench/complaint.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import {expectationHolds} from './expectation.ts';
import {gradeOf, type Grade} from './grade.ts';
import {hintPoints} from './hint-points.ts';
import {hypothesesOf} from './hypotheses.ts';
import {lookAlike} from './look-alike.ts';
import type {Occasion} from './mastery.ts';
import {occasionsOf} from './occasions.ts';
import {priceOf} from './part-prices.ts';
import {Planner} from './planner.ts';
import {practiceAdvice} from './practice-advice.ts';
import {proofOf, type Proof} from './proof.ts';
import {proposalText} from './proposal-text.ts';
import {restingUnit} from './replayed-unit.ts';
import {shortestRoute, type Route} from './shortest-route.ts';
import {Suspects} from './suspects.ts';

/** One thing done that told something, or could have. */
export interface ReasoningStep {
  /** Line of the field log. */
  readonly logIndex: number;
  readonly kind: 'reading' | 'look';
  readonly suspectsBefore: number;
  readonly suspectsAfter: number;
  /** Bits that it was expected to gain, before the answer was known. */
  readonly expectedBits: number;
  /** Entropy lost by the answer. */
  readonly bits: number;
  /** For a reading: the most that any reading could have gained as the unit stood, and which one. */
  readonly best?: {readonly bits: number; readonly text: string};
  /** For a reading that every suspect answers alike: it could not have come out otherwise. */
  readonly useless?: boolean;
}

/** How an attempt was reasoned, worked out by replaying it with every suspect. */
export interface Reasoning {
  readonly suspectsAtStart: number;
  readonly steps: readonly ReasoningStep[];
  readonly namings: readonly {
    readonly id: string;
    readonly name: string;
    readonly right: boolean;
    readonly proof: Proof;
    /** Parts that would have been changed for it, in dollars; 0 when it was proved. */
    readonly dollars: number;
  }[];
  /** Hints asked for before the fault was named, with what each cost. */
  readonly hints: readonly {
    readonly logIndex: number;
    readonly level: HintLevel;
    readonly text: string;
    readonly minutes: number;
    readonly points: number;
  }[];
  /** Expectations written before readings: how many, and how many of them came out. */
  readonly calibration: {readonly asked: number; readonly right: number};
  readonly minutes: number;
  readonly dollars: number;
  /** The planner's way to the same fault. */
  readonly route: {
    readonly readings: number;
    readonly minutes: number;
    readonly steps: readonly {
      readonly text: string;
      readonly shown: string;
      readonly suspectsLeft: number;
    }[];
  };
  readonly grade: Grade;
  /** Skills that the call asked for, and how each went. */
  readonly occasions: readonly Omit<Occasion, 'day'>[];
  readonly practise: string;
}

/**
 * Replays an attempt beside its suspects and judges every step of it.
 *
 * @param knownRoute the planner's way to the same faults, where it has been worked out before
 * @param tell hears what share of the work is done, 0 to 1, as it goes on
 * @throws Error where an action cannot be done again, or where nothing has been named and the search is still on
 */
export function reasoningOf(
  setup: BenchSetup,
  actions: readonly Action[],
  knownRoute?: Route,
  tell: (share: number) => void = () => undefined,
): Reasoning {
  const bench = new Bench(setup);
  bringToRest(setup.unit, (share) => tell(restShare * share));
  const suspects = new Suspects(setup.unit);
  const planner = new Planner(suspects);
  const {unit, faults} = setup;
  const suspectsAtStart = suspects.count;
  const all = catalogue(unit);
  const steps: ReasoningStep[] = [];
  const namings: Reasoning['namings'][number][] = [];
  const hints: Reasoning['hints'][number][] = [];
  let asked = 0;
  let right = 0;
  let minutes = 0;
  for (const [i, action] of actions.entries()) {
    if (action.do === 'clear') break;
    tell(restShare + callShare * (i / actions.length));
    const best = action.do === 'read' || action.do === 'clamp' ? planner.bestNow() : undefined;
    const result = bench.act(action);
    if ('refused' in result)
      throw new Error(
        `Action ${i + 1} (${action.do}) of this attempt cannot be done again: ${result.refused}`,
      );
    const {entry} = result;
    if (action.do === 'name') namings.push(judge(setup, all, action.fault, suspects));
    if (action.do === 'name' || action.do === 'give-up') minutes = entry?.minutes ?? minutes;
    const told = suspects.step(action, entry, bench.operating.observations());
    if (!entry) continue;
    if (action.do === 'hint') {
      const {level, text} = action;
      hints.push({
        logIndex: entry.index,
        level,
        text,
        minutes: hintMinutes[level],
        points: hintPoints[level],
      });
    }
    if (entry.kind === 'reading') {
      if (entry.expected) {
        asked += 1;
        if (expectationHolds(entry.function!, entry.expected, entry.display!)) right += 1;
      }
      steps.push({
        logIndex: entry.index,
        kind: 'reading',
        ...counted(told),
        best: {
          // a reading at two points that no plan would take can still be the better question
          bits: Math.max(best?.bits ?? 0, told.expectedBits),
          text: best ? proposalText(unit, best) : 'nothing more to be told as the unit stands',
        },
        useless: told.expectedBits === 0 && told.ruledOut.length === 0,
      });
    } else if (told.ruledOut.length) {
      steps.push({logIndex: entry.index, kind: 'look', ...counted(told)});
    }
  }
  if (bench.view().stage === 'working')
    throw new Error('The search is still on; name the fault or give up before it is judged.');
  const route =
    knownRoute ??
    routeTo(setup, (left) => {
      // each reading halves what is left, more or less
      const found = 1 - Math.log2(Math.max(1, left)) / Math.log2(suspectsAtStart);
      tell(restShare + callShare + (1 - restShare - callShare) * Math.max(0, found));
    });
  const safety = bench.view().safety;
  const grade = gradeOf({
    namings: namings.map(({right: isRight, proof, dollars}) => ({
      right: isRight,
      proved: proof.is === 'proved',
      contradicted: proof.is === 'contradicted',
      share: proof.share,
      dollars,
    })),
    readings: steps.flatMap(({kind, expectedBits, best}) =>
      kind === 'reading' && best ? [{expectedBits, bestBits: best.bits}] : [],
    ),
    minutes,
    routeMinutes: route.minutes,
    findings: safety,
    hints: hints.map(({level}) => level),
  });
  const report = {
    suspectsAtStart,
    steps,
    namings,
    hints,
    calibration: {asked, right},
    minutes,
    dollars: namings.reduce((sum, each) => sum + each.dollars, 0),
    route: {
      readings: route.readings,
      minutes: route.minutes,
      steps: route.steps.map(({proposal, shown, suspectsLeft}) => ({
        text: proposalText(unit, proposal),
        shown,
        suspectsLeft,
      })),
    },
    grade,
  };
  const last = namings[namings.length - 1];
  const occasions = occasionsOf({
    unit,
    faults,
    proved:
      last !== undefined &&
      last.right &&
      last.proof.is === 'proved' &&
      !hints.some(({level}) => level === 3),
    log: bench.view().log,
    safety,
  });
  return {...report, occasions, practise: practiceAdvice({...report, safety})};
}

/** The planner's way, from what the customer would say of the hidden faults on. */
function routeTo({unit, faults}: BenchSetup, tell: (left: number) => void): Route {
  const {sequence, afterSeconds} = complaintOf(unit, faults);
  return shortestRoute(unit, faults, sequence, tell, afterSeconds);
}

/** Shares of the work, as measured on the heat pump: bringing every suspect's unit to rest takes the most. */
const restShare = 0.6;
const callShare = 0.2;

/** Brings every suspect's unit to rest, once for each unit; what stands at rest already costs nothing. */
function bringToRest(unit: BenchSetup['unit'], tell: (share: number) => void): void {
  const hypotheses = hypothesesOf(unit);
  for (const [i, {faults}] of hypotheses.entries()) {
    restingUnit(unit, faults);
    tell((i + 1) / hypotheses.length);
  }
}

const counted = (told: {
  suspectsBefore: number;
  suspectsAfter: number;
  expectedBits: number;
  bits: number;
}) => ({
  suspectsBefore: told.suspectsBefore,
  suspectsAfter: told.suspectsAfter,
  expectedBits: told.expectedBits,
  bits: told.bits,
});

function judge(
  {unit, faults}: BenchSetup,
  all: readonly Fault[],
  id: string,
  suspects: Suspects,
): Reasoning['namings'][number] {
  const named = all.find((fault) => fault.id === id)!;
  const proof = proofOf(unit, id, suspects.open);
  const isRight =
    faults.some((fault) => fault.id === id) ||
    (proof.is !== 'contradicted' && faults.some((fault) => lookAlike(unit, [fault], [named])));
  return {
    id,
    name: named.name,
    right: isRight,
    proof,
    dollars: proof.is === 'proved' ? 0 : priceOf(unit, named),
  };
}
