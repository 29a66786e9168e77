import {
  createActor,
  initialTransition,
  type AnyActorScope,
  type AnyMachineSnapshot,
  type EventObject,
} from 'xstate';
import type {Part} from '../content/unit.ts';
import type {ElementState, ElementStates} from '../parts/element.ts';
import {behaviours} from './behaviours.ts';
import type {AnyBehaviour, MachineEvent, MachineState, PlantWatch} from './part-behaviour.ts';

/** A part with a memory, at one moment. Immutable: an event gives a new one. */
export interface OperatedPart {
  readonly part: Part;
  readonly behaviour: AnyBehaviour;
  readonly state: MachineState;
  /** States of its elements, its due time and what it waits for: all follow from `state`. */
  readonly states: ElementStates;
  readonly dueAtMs: number | undefined;
  readonly watches: readonly PlantWatch[];
}

/** Parts at rest, by part: a unit is put into operation hundreds of times, once for each suspect. */
const atRest = new WeakMap<Part, OperatedPart>();

/** A part at rest, as it is before power has ever been on; undefined for a part that only conducts. */
export function startPart(part: Part): OperatedPart | undefined {
  const behaviour = behaviours.get(part.kind);
  if (!behaviour) return undefined;
  let resting = atRest.get(part);
  if (!resting) {
    const [snapshot] = initialTransition(behaviour.machine, behaviour.input(part));
    resting = inState(part, behaviour, snapshot as unknown as MachineState);
    atRest.set(part, resting);
  }
  return resting;
}

/**
 * The part after an event. Machines are stepped purely: nothing runs between events. This is what XState's own
 * `transition` does, save that it makes an actor anew at each step; here one idle actor serves all of a kind.
 */
export function after(operated: OperatedPart, event: MachineEvent): OperatedPart {
  const {part, behaviour, state} = operated;
  const snapshot = behaviour.machine.transition(
    state as unknown as AnyMachineSnapshot,
    event as EventObject,
    idleScope(behaviour, part),
  );
  return inState(part, behaviour, snapshot as unknown as MachineState);
}

const idleScopes = new WeakMap<AnyBehaviour, AnyActorScope>();

/** A scope whose actor is never started: the machines here only assign, so nothing is ever asked of it. */
function idleScope(behaviour: AnyBehaviour, part: Part): AnyActorScope {
  let scope = idleScopes.get(behaviour);
  if (!scope) {
    const self = createActor(behaviour.machine, {input: behaviour.input(part)});
    const nothing = (): void => undefined;
    scope = {
      self,
      id: '',
      sessionId: '',
      system: self.system,
      logger: nothing,
      defer: nothing,
      emit: nothing,
      stopChild: nothing,
      actionExecutor: nothing,
    };
    idleScopes.set(behaviour, scope);
  }
  return scope;
}

/** Name of the machine's present state: a string, or nested in an object for nested states. */
export function stateValue(operated: OperatedPart): AnyMachineSnapshot['value'] {
  return (operated.state as unknown as AnyMachineSnapshot).value;
}

function inState(part: Part, behaviour: AnyBehaviour, state: MachineState): OperatedPart {
  return {
    part,
    behaviour,
    state,
    states: behaviour.states?.(state, part) ?? {},
    dueAtMs: behaviour.dueAtMs?.(state),
    watches: behaviour.watches?.(state) ?? [],
  };
}

/** Whether two sets of element states are the same to the network. */
export function sameStates(a: ElementStates, b: ElementStates): boolean {
  const ids = Object.keys(a);
  if (ids.length !== Object.keys(b).length) return false;
  return ids.every((id) => sameState(a[id], b[id]));
}

function sameState(a: ElementState | undefined, b: ElementState | undefined): boolean {
  return (
    a?.closed === b?.closed &&
    a?.sealed === b?.sealed &&
    a?.speed === b?.speed &&
    a?.ohms === b?.ohms &&
    a?.on === b?.on &&
    a?.open === b?.open
  );
}
