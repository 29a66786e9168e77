import {complaintOf} from '../bench/complaint.ts';
import type {Unit} from '../content/unit.ts';
import type {Difficulty} from '../faults/difficulty.ts';
import {sectionOf, type Section} from './fault-section.ts';
import {hypothesesOf} from './hypotheses.ts';
import {searchCosts, searchGround} from './search-tree.ts';

/** How hard a fault is to find, from the customer's words alone. */
export interface FaultDifficulty {
  readonly fault: string;
  readonly section: Section;
  readonly complaint: string;
  /** No customer would notice it, so there is no call to find it from. */
  readonly silent: boolean;
  /** Readings and minutes that the planner takes; 0 where it is silent. */
  readonly readings: number;
  readonly minutes: number;
  /** Other faults with the same complaint. */
  readonly lookAlikes: number;
  readonly difficulty: Difficulty;
}

// Where a class of beginners finds its feet, and where practised hands need a plan: our own choice.
const easyUpToReadings = 3;
const easyUpToMinutes = 8;
const mediumUpToReadings = 5;
const mediumUpToMinutes = 15;

/** Easy, medium or hard, by what the planner needs. */
export function levelOf(readings: number, minutes: number): Difficulty {
  if (readings <= easyUpToReadings && minutes <= easyUpToMinutes) return 'easy';
  return readings <= mediumUpToReadings && minutes <= mediumUpToMinutes ? 'medium' : 'hard';
}

/**
 * Difficulty of every fault of a unit's catalogue, in catalogue order: what the planner needs who knows the complaint
 * and nothing else. Runs every fault in every mode, so it takes a while for a large unit.
 */
export function difficultiesOf(unit: Unit): FaultDifficulty[] {
  const hypotheses = hypothesesOf(unit).filter(({faults}) => faults.length === 1);
  const complaints = hypotheses.map(({faults}) => complaintOf(unit, faults));
  const told = new Map<string, string[]>();
  complaints.forEach(({text, silent}, index) => {
    if (silent) return;
    const same = told.get(text);
    if (same) same.push(hypotheses[index].id);
    else told.set(text, [hypotheses[index].id]);
  });
  const ground = searchGround(unit, hypotheses);
  const costs = new Map(
    [...told].flatMap(([text, ids]) => {
      const mode = complaints.find((each) => each.text === text)?.sequence;
      return [...searchCosts(ground, ids, mode ?? '')];
    }),
  );
  return hypotheses.map(({id, faults}, index): FaultDifficulty => {
    const {text, silent} = complaints[index];
    const {readings = 0, minutes = 0} = costs.get(id) ?? {};
    return {
      fault: id,
      section: sectionOf(unit, faults[0]),
      complaint: text,
      silent,
      readings,
      minutes: Math.round(minutes * 10) / 10,
      lookAlikes: silent ? 0 : told.get(text)!.length - 1,
      difficulty: silent ? 'hard' : levelOf(readings, minutes),
    };
  });
}
