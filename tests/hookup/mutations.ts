import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {seededRandom} from '../../src/parts/seeded-random.ts';

export interface Mutant {
  readonly how: string;
  readonly wires: readonly HookupWire[];
}

/** Ends of the contact of an input. */
export function endsOf(task: HookupTask, contact: string): [string, string] {
  for (const {elements} of task.parts)
    for (const element of elements)
      if (element.id === contact && element.is === 'contact') return [element.a, element.b];
  throw new Error(contact);
}

const named = (from: string, to: string, id: string): HookupWire => ({
  id,
  from,
  to,
  gauge: 14,
  colour: 'grey',
});

/** A wire dropped, an end moved, two ends crossed, a switch bypassed, a wire laid in parallel to two switches. */
export function mutants(task: HookupTask, seed: number, count: number): Mutant[] {
  const random = seededRandom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const {answer} = task;
  const terminals = [...new Set(answer.flatMap(({from, to}) => [from, to]))];
  const makers: (() => Mutant | undefined)[] = [
    () => {
      const dropped = pick(answer);
      return {how: `drop ${dropped.id}`, wires: answer.filter((wire) => wire !== dropped)};
    },
    () => {
      const moved = pick(answer);
      const to = pick(terminals);
      if (to === moved.from || to === moved.to) return undefined;
      return {
        how: `move ${moved.id} to ${to}`,
        wires: answer.map((wire) => (wire === moved ? {...wire, to} : wire)),
      };
    },
    () => {
      const [p, q] = [pick(answer), pick(answer)];
      if (p === q || p.from === q.to || q.from === p.to || p.to === q.to) return undefined;
      return {
        how: `cross ${p.id} and ${q.id}`,
        wires: answer.map((wire) =>
          wire === p ? {...p, to: q.to} : wire === q ? {...q, to: p.to} : wire,
        ),
      };
    },
    () => {
      const {id, contact} = pick(task.inputs);
      const [a, b] = endsOf(task, contact);
      return {how: `bypass ${id}`, wires: [...answer, named(a, b, 'X1')]};
    },
    () => {
      const [p, q] = [pick(task.inputs), pick(task.inputs)];
      if (p === q) return undefined;
      const [[a, b], [c, d]] = [endsOf(task, p.contact), endsOf(task, q.contact)];
      return {
        how: `${p.id} in parallel with ${q.id}`,
        wires: [
          ...answer,
          ...[named(a, c, 'X1'), named(b, d, 'X2')].filter(({from, to}) => from !== to),
        ],
      };
    },
    () => {
      const [a, b] = [pick(terminals), pick(terminals)];
      return a === b
        ? undefined
        : {how: `join ${a} and ${b}`, wires: [...answer, named(a, b, 'X1')]};
    },
  ];
  const made = new Map<string, Mutant>();
  for (let i = 0; made.size < count && i < 40 * count; i++) {
    const mutant = makers[i % makers.length]();
    if (mutant) made.set(mutant.how, mutant);
  }
  return [...made.values()];
}
