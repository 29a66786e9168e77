import type {AnyStateMachine, EventFromLogic, InputFrom, SnapshotFrom} from 'xstate';
import type {Part} from '../content/unit.ts';
import type {ElementStates} from '../parts/element.ts';
import type {Look} from './look.ts';
import type {Observation} from './operating-unit.ts';

/** A plant value and set point whose crossing a part waits for. */
export interface PlantWatch {
  readonly value: string;
  readonly setPoint: number;
  readonly on: 'rise' | 'fall';
}

/**
 * How one kind of part behaves: its machine, and the few functions that join the machine to the network and the
 * plant. All are pure; a snapshot is never changed. `sense` answers only when something is crossed, so a part at
 * rest costs one comparison.
 */
export interface PartBehaviour<M extends AnyStateMachine> {
  readonly machine: M;
  input(part: Part): InputFrom<M>;
  /** Fast happenings, within a settling: armatures, supplies, instantaneous trips. */
  sense?(snapshot: SnapshotFrom<M>, look: Look, part: Part): EventFromLogic<M> | undefined;
  /** Slow happenings, told once the network has come to rest: currents that heat something. */
  feel?(snapshot: SnapshotFrom<M>, look: Look, part: Part): EventFromLogic<M> | undefined;
  /** A person moves a control of the part. */
  handle?(
    snapshot: SnapshotFrom<M>,
    control: string,
    value: string | number,
    look: Look,
    part: Part,
  ): EventFromLogic<M> | undefined;
  /** A due time has come. */
  onTime?(snapshot: SnapshotFrom<M>, look: Look, part: Part): EventFromLogic<M>;
  dueAtMs?(snapshot: SnapshotFrom<M>): number | undefined;
  watches?(snapshot: SnapshotFrom<M>): readonly PlantWatch[];
  /** States of the part's own elements. */
  states?(snapshot: SnapshotFrom<M>, part: Part): ElementStates;
  observe?(snapshot: SnapshotFrom<M>, look: Look, part: Part): readonly Observation[];
  /** Position of a control as it is seen, where the machine itself has moved it (a tripped breaker). */
  positionOf?(snapshot: SnapshotFrom<M>, control: string): string | number | undefined;
  /** Armatures can chatter: the event that says so. */
  readonly chattered?: EventFromLogic<M>;
  /** Whether the machine has burnt something that a repair renews. */
  burnt?(snapshot: SnapshotFrom<M>): boolean;
}

declare const opaque: unique symbol;
/** A machine's state, opaque outside its own behaviour. */
export interface MachineState {
  readonly [opaque]: true;
}
/** An event of some machine, opaque outside its own behaviour. */
export interface MachineEvent {
  readonly type: string;
}

/** A behaviour with its machine's types hidden, so that parts of every kind can stand in one list. */
export interface AnyBehaviour {
  readonly machine: AnyStateMachine;
  input(part: Part): unknown;
  sense?(state: MachineState, look: Look, part: Part): MachineEvent | undefined;
  feel?(state: MachineState, look: Look, part: Part): MachineEvent | undefined;
  handle?(
    state: MachineState,
    control: string,
    value: string | number,
    look: Look,
    part: Part,
  ): MachineEvent | undefined;
  onTime?(state: MachineState, look: Look, part: Part): MachineEvent;
  dueAtMs?(state: MachineState): number | undefined;
  watches?(state: MachineState): readonly PlantWatch[];
  states?(state: MachineState, part: Part): ElementStates;
  observe?(state: MachineState, look: Look, part: Part): readonly Observation[];
  positionOf?(state: MachineState, control: string): string | number | undefined;
  readonly chattered?: MachineEvent;
  burnt?(state: MachineState): boolean;
}

/** Checks a behaviour against its own machine, then hides the machine's types. */
export function defineBehaviour<M extends AnyStateMachine>(
  behaviour: PartBehaviour<M>,
): AnyBehaviour {
  return behaviour as unknown as AnyBehaviour;
}
