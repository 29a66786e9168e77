import type {Look} from './look.ts';
import {stateValue, type OperatedPart} from './operated-part.ts';
import type {MachineEvent} from './part-behaviour.ts';
import type {Settling} from './operating-unit.ts';

/** What settling works on: the parts in operation and how to change them. */
export interface Settleable {
  readonly look: Look;
  operated(): readonly OperatedPart[];
  /** Sends an event to the part of that index; the network is solved anew when its elements changed. */
  send(index: number, event: MachineEvent): void;
  /** Lets every motor find its speed; true when one changed. */
  balanceMotors(): boolean;
  /** How often something that the network depends on has changed. */
  readonly changes: number;
  /** Somebody who watches a meter: contacts have moved, motors still have the speed they had. */
  watcher?: (() => void) | undefined;
}

/** No unit needs as many rounds; past it everything still moving is left as it is. */
const mostRounds = 200;

/**
 * Solves and moves parts until nothing changes any more. Armatures and contacts move first, with motors at their
 * present speed, for they are a hundred times quicker; then motors find their speed; then what heats slowly learns
 * its current. Ends always: when the parts come round to a state they have been in, those that go round are
 * chattering, and stay so until something else changes.
 */
export function settle(unit: Settleable): Settling {
  const loose = new Set<number>();
  let rounds = 0;
  for (;;) {
    rounds = moveContacts(unit, loose, rounds);
    unit.watcher?.();
    if (rounds < mostRounds && unit.balanceMotors()) {
      rounds++;
      continue;
    }
    if (!tellCurrents(unit) || rounds++ >= mostRounds) break;
  }
  const parts = unit.operated();
  return {
    rounds,
    chattering: [...loose].sort((a, b) => a - b).map((index) => parts[index]!.part.id),
  };
}

/** Moves armatures, contacts and supplies until none wants to move. Parts found going round join `loose`. */
function moveContacts(unit: Settleable, loose: Set<number>, startRound: number): number {
  let round = startRound;
  // all together at first; one at a time after the first time round, as in a real race one part is first
  let together = true;
  let seen = new Map<string, number>();
  let moves: number[][] = [];
  for (; ; round++) {
    const wanted = wants(unit, loose);
    if (wanted.length === 0) return round;
    if (round >= startRound + mostRounds) {
      for (const [index] of wanted) loose.add(index);
      continue;
    }
    const now = together ? wanted : wanted.slice(0, 1);
    for (const [index, event] of now) unit.send(index, event);
    moves.push(now.map(([index]) => index));

    const signature = signatureOf(unit);
    const first = seen.get(signature);
    seen.set(signature, moves.length);
    if (first === undefined) continue;
    const going = new Set(moves.slice(first).flat());
    if (together) together = false;
    else letChatter(unit, going, loose);
    seen = new Map();
    moves = [];
  }
}

/** The states of all parts as one text, to know a state again. */
function signatureOf(unit: Settleable): string {
  let text = '';
  for (const part of unit.operated()) {
    const value = stateValue(part);
    text += typeof value === 'string' ? `${value}|` : `${JSON.stringify(value)}|`;
  }
  return text;
}

function wants(unit: Settleable, loose: ReadonlySet<number>): (readonly [number, MachineEvent])[] {
  const wanted: (readonly [number, MachineEvent])[] = [];
  unit.operated().forEach(({behaviour, state, part}, index) => {
    if (loose.has(index)) return;
    const event = behaviour.sense?.(state, unit.look, part);
    if (event) wanted.push([index, event]);
  });
  return wanted;
}

/** Armatures that go round are left chattering; where none is among the parts that go round, all are left as they are. */
function letChatter(unit: Settleable, going: ReadonlySet<number>, loose: Set<number>): void {
  const armatures = [...going].filter((index) => unit.operated()[index]!.behaviour.chattered);
  for (const index of armatures) {
    loose.add(index);
    unit.send(index, unit.operated()[index]!.behaviour.chattered!);
  }
  if (armatures.length === 0) for (const index of going) loose.add(index);
}

/** Tells fuses, breakers, windings and overloads their currents; true when an element changed by it. */
function tellCurrents(unit: Settleable): boolean {
  const before = unit.changes;
  unit.operated().forEach(({behaviour, state, part}, index) => {
    const event = behaviour.feel?.(state, unit.look, part);
    if (event) unit.send(index, event);
  });
  return unit.changes !== before;
}
