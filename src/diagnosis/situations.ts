import type {Action} from '../bench/actions.ts';
import {actionCost} from '../bench/action-costs.ts';
import {controlsOf, isolating, type PlacedControl} from '../bench/bench-controls.ts';
import type {OperatingSequence, Unit} from '../content/unit.ts';
import type {Conditions} from './conditions.ts';

/** A state to bring the unit into before reading, and what it takes to get there. */
export interface Situation {
  readonly id: string;
  /** "as the unit stands", "with cooling called for", "locked out and proved dead". */
  readonly title: string;
  readonly actions: readonly Action[];
  readonly minutes: number;
  /** Line voltage is off, so ohms may be read. */
  readonly isolated: boolean;
}

/** Known live source, the circuit, known live source again (live–dead–live). */
const readingsToProveDead = 3;

/** The unit as it stands. */
export function presentSituation(conditions: Conditions): Situation {
  return {
    id: 'present',
    title: 'as the unit stands',
    actions: [],
    minutes: 0,
    isolated: conditions.isolated,
  };
}

/** Other states worth reading in: every mode of the unit, and locked out. Nothing that is so already. */
export function otherSituations(conditions: Conditions): Situation[] {
  const {unit} = conditions;
  const situations: Situation[] = [];
  for (const sequence of unit.sequences) {
    const situation = callFor(conditions, sequence);
    if (situation) situations.push(situation);
  }
  if (!conditions.isolated) situations.push(lockedOut(unit));
  return situations;
}

function callFor(conditions: Conditions, sequence: OperatingSequence): Situation | undefined {
  const power = restoring(conditions);
  const sets = sequence.set.filter(({target, value}) => conditions.set.get(target) !== value);
  if (sets.length === 0 && power.length === 0) return undefined;
  const actions: Action[] = [
    ...power,
    ...sets.map(({target, value}): Action => ({do: 'set', target, value})),
    {do: 'wait', seconds: sequence.waitSeconds},
  ];
  return {
    id: sequence.id,
    title: `with ${sequence.title.toLowerCase()} called for`,
    actions,
    minutes: cost(actions),
    isolated: false,
  };
}

/** Takes off the locks and closes what stands open. */
function restoring(conditions: Conditions): Action[] {
  return isolators(conditions.unit).flatMap(({target, part, control}): Action[] => {
    if (!isolating(conditions.set.get(target) ?? '')) return [];
    return [
      ...(conditions.locked.has(part) ? [{do: 'unlock', part} as const] : []),
      {do: 'set', target, value: control.initial},
    ];
  });
}

function lockedOut(unit: Unit): Situation {
  const actions = nearestIsolators(unit).flatMap(({target, part, control}): Action[] => {
    const open = control.choices?.find((choice) => isolating(choice.value));
    return open
      ? [
          {do: 'set', target, value: open.value},
          {do: 'lock', part},
        ]
      : [];
  });
  return {
    id: 'locked-out',
    title: 'locked out and proved dead',
    actions,
    minutes: cost(actions) + readingsToProveDead * actionCost({do: 'read', red: '', black: ''}),
    isolated: true,
  };
}

/** Disconnects stand beside the equipment; where there is none the breakers do. */
function nearestIsolators(unit: Unit): PlacedControl[] {
  const all = isolators(unit);
  const kindOf = new Map(unit.parts.map(({id, kind}) => [id, kind]));
  const disconnects = all.filter(({part}) => kindOf.get(part) === 'disconnect');
  return disconnects.length ? disconnects : all;
}

const isolators = (unit: Unit): PlacedControl[] =>
  controlsOf(unit).filter(({control}) => control.isolates);

const cost = (actions: readonly Action[]): number =>
  actions.reduce((sum, action) => sum + actionCost(action), 0);
