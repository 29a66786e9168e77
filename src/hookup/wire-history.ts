import type {HookupTask, HookupWire} from './hookup-task.ts';

/** A student's wires with the way back and the way on again. */
export interface WireHistory {
  readonly wires: readonly HookupWire[];
  /** Former states of the wires, oldest first, and those that were undone, last undone first. */
  readonly past: readonly (readonly HookupWire[])[];
  readonly future: readonly (readonly HookupWire[])[];
  /** Number of the next wire: ids are never used again. */
  readonly next: number;
}

export const beginWiring = (task: HookupTask): WireHistory => ({
  wires: task.begin,
  past: [],
  future: [],
  next: task.begin.length + 1,
});

const changed = (history: WireHistory, wires: readonly HookupWire[]): WireHistory => ({
  ...history,
  wires,
  past: [...history.past, history.wires],
  future: [],
});

/** Puts a wire in. Refused (the same history) where it would join a terminal to itself or double a wire. */
export function putWire(history: WireHistory, wire: Omit<HookupWire, 'id'>): WireHistory {
  if (wire.from === wire.to || isThere(history.wires, wire)) return history;
  const id = freeId(history);
  return {...changed(history, [...history.wires, {...wire, id}]), next: Number(id.slice(1)) + 1};
}

/** Takes a wire off; the same history where there is no such wire. */
export const takeWire = (history: WireHistory, id: string): WireHistory =>
  history.wires.some((wire) => wire.id === id)
    ? changed(
        history,
        history.wires.filter((wire) => wire.id !== id),
      )
    : history;

/**
 * Moves an end, or changes colour or gauge. Refused (the same history) where nothing would change, where the wire would
 * join a terminal to itself, or where there is another wire between the two.
 */
export function alterWire(
  history: WireHistory,
  id: string,
  change: Partial<Omit<HookupWire, 'id'>>,
): WireHistory {
  const before = history.wires.find((wire) => wire.id === id);
  if (!before) return history;
  const after = {...before, ...change};
  const others = history.wires.filter((wire) => wire !== before);
  const same = (Object.keys(change) as (keyof typeof change)[]).every(
    (key) => before[key] === after[key],
  );
  if (same || after.from === after.to || isThere(others, after)) return history;
  return changed(
    history,
    history.wires.map((wire) => (wire === before ? after : wire)),
  );
}

export function undo(history: WireHistory): WireHistory {
  const before = history.past.at(-1);
  if (!before) return history;
  return {
    ...history,
    wires: before,
    past: history.past.slice(0, -1),
    future: [history.wires, ...history.future],
  };
}

export function redo(history: WireHistory): WireHistory {
  const [after, ...rest] = history.future;
  if (!after) return history;
  return {...history, wires: after, past: [...history.past, history.wires], future: rest};
}

const isThere = (
  wires: readonly HookupWire[],
  {from, to}: Pick<HookupWire, 'from' | 'to'>,
): boolean =>
  wires.some(
    (each) => (each.from === from && each.to === to) || (each.from === to && each.to === from),
  );

/** Somebody else's wires may have names of their own: the next number that none of them has. */
function freeId({wires, past, next}: WireHistory): string {
  const taken = new Set([...(past[0] ?? wires), ...wires].map(({id}) => id));
  let number = next;
  while (taken.has(`H${number}`)) number++;
  return `H${number}`;
}
