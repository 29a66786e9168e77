import {complaintOf} from '../bench/complaint.ts';
import type {Unit} from '../content/unit.ts';
import {levelOf, type FaultDifficulty} from './difficulty-level.ts';
import {sectionOf} from './fault-section.ts';
import {hypothesesOf} from './hypotheses.ts';
import {searchCosts, searchGround} from './search-tree.ts';

/** About half of the work is running every fault for its complaint, as measured. */
const complaintsShare = 0.5;

/**
 * Difficulty of every fault of a unit's catalogue, in catalogue order: what the planner needs who knows the complaint
 * and nothing else. Runs every fault in every mode, so it takes a while for a large unit.
 *
 * @param tell called on the way with the share of the work that is done, 0 … 1
 */
export function difficultiesOf(
  unit: Unit,
  tell: (share: number) => void = () => undefined,
): FaultDifficulty[] {
  const hypotheses = hypothesesOf(unit).filter(({faults}) => faults.length === 1);
  const complaints = hypotheses.map(({faults}, index) => {
    tell((index / hypotheses.length) * complaintsShare);
    return complaintOf(unit, faults);
  });
  const told = new Map<string, string[]>();
  complaints.forEach(({text, silent}, index) => {
    if (silent) return;
    const same = told.get(text);
    if (same) same.push(hypotheses[index].id);
    else told.set(text, [hypotheses[index].id]);
  });
  const ground = searchGround(unit, hypotheses, (share) =>
    tell(complaintsShare + share * (1 - complaintsShare)),
  );
  const costs = new Map(
    [...told].flatMap(([text, ids]) => {
      const mode = complaints.find((each) => each.text === text)?.sequence;
      return [...searchCosts(ground, ids, mode ?? '')];
    }),
  );
  return hypotheses.map(({id, faults}, index): FaultDifficulty => {
    const {text, silent, afterSeconds = 0} = complaints[index];
    const {readings = 0, minutes = 0} = costs.get(id) ?? {};
    return {
      fault: id,
      section: sectionOf(unit, faults[0]),
      complaint: text,
      silent,
      readings,
      minutes: Math.round((minutes + afterSeconds / 60) * 10) / 10,
      lookAlikes: silent ? 0 : told.get(text)!.length - 1,
      difficulty: silent ? 'hard' : levelOf(readings, minutes + afterSeconds / 60),
    };
  });
}
