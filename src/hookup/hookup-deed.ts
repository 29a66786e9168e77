import type {Action} from '../bench/actions.ts';
import type {HookupWire} from './hookup-task.ts';

/** One thing that a student does at a wiring task. */
export type Deed =
  | {readonly do: 'put'; readonly wire: Omit<HookupWire, 'id'>}
  | {readonly do: 'take'; readonly wire: string}
  /** Moves an end to another terminal, or changes colour or gauge. */
  | {
      readonly do: 'alter';
      readonly wire: string;
      readonly change: Partial<Omit<HookupWire, 'id'>>;
    }
  | {readonly do: 'undo'}
  | {readonly do: 'redo'}
  /** Asks for the verdict. */
  | {readonly do: 'check'}
  /** Puts the board as it is wired on the bench, with its breakers open. A deed on a wire takes it off again. */
  | {readonly do: 'bench'}
  /** An action at the bench: meter, controls, field log. */
  | {readonly do: 'act'; readonly action: Action};

/** A deed with the minutes of work after which it was done. Work at a task is these in order: replayed, they give it back. */
export type TimedDeed = Deed & {readonly atMinutes: number};
