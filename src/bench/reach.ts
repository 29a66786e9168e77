import {inSentence} from '../content/in-sentence.ts';
import {nearestName} from '../content/nearest-name.ts';
import type {Enclosure, Unit, Wire} from '../content/unit.ts';
import {partOf} from '../faults/nets.ts';

/** What hands and leads can get at: a closed cover hides terminals, wire ends and what is seen behind it. */
export class Reach {
  private readonly unit: Unit;
  private readonly enclosureOfPart: ReadonlyMap<string, Enclosure | undefined>;
  private readonly terminals: ReadonlySet<string>;

  constructor(unit: Unit) {
    this.unit = unit;
    this.enclosureOfPart = new Map(
      unit.parts.map((part) => [
        part.id,
        unit.enclosures.find((each) => each.id === part.enclosure),
      ]),
    );
    this.terminals = new Set(
      unit.parts.flatMap((part) => part.terminals.map((terminal) => `${part.id}.${terminal}`)),
    );
  }

  /** The enclosure that a part stands in. */
  enclosureOf(part: string): Enclosure | undefined {
    return this.enclosureOfPart.get(part);
  }

  /** Wire of an end such as `W12.from`, and the terminal that the end belongs on. */
  end(end: string): {wire: Wire; terminal: string} | undefined {
    const [id, side] = end.split('.');
    const wire = this.unit.wires.find((each) => each.id === id);
    if (!wire || (side !== 'from' && side !== 'to')) return undefined;
    return {wire, terminal: wire[side]};
  }

  /** Why a lead or a jumper cannot go on this point now, in a sentence; undefined when it can. */
  refusePoint(
    point: string,
    open: ReadonlySet<string>,
    lifted: readonly string[],
  ): string | undefined {
    const end = this.end(point);
    if (end && !this.terminals.has(point)) {
      if (!lifted.includes(point)) {
        return `Wire end ${point} is not lifted; put the lead on its terminal ${end.terminal}.`;
      }
      return this.refuseCover(partOf(end.terminal), point, open);
    }
    if (!this.terminals.has(point)) return unknown('terminal', point, this.terminals);
    // the metal of a box is touched from outside
    if (this.unit.enclosures.some(({cabinet}) => cabinet === point)) return undefined;
    return this.refuseCover(partOf(point), point, open);
  }

  /** Why this wire end cannot be lifted or landed now; undefined when hands can get at it. */
  refuseEnd(end: string, open: ReadonlySet<string>): string | undefined {
    const found = this.end(end);
    if (!found) {
      const ends = this.unit.wires.flatMap((wire) => [`${wire.id}.from`, `${wire.id}.to`]);
      return unknown('wire end', end, ends);
    }
    return this.refuseCover(partOf(found.terminal), end, open);
  }

  /** Why the clamp cannot go round this wire now. One open end is enough to get at it. */
  refuseWire(id: string, open: ReadonlySet<string>): string | undefined {
    const wire = this.unit.wires.find((each) => each.id === id);
    if (!wire)
      return unknown(
        'wire',
        id,
        this.unit.wires.map((each) => each.id),
      );
    const refusals = [wire.from, wire.to].map((terminal) =>
      this.refuseCover(partOf(terminal), id, open),
    );
    return refusals.every((refusal) => refusal !== undefined) ? refusals[0] : undefined;
  }

  /** Whether what is inside a part's enclosure can be seen and touched. */
  isOpen(part: string, open: ReadonlySet<string>): boolean {
    const enclosure = this.enclosureOf(part);
    return !enclosure?.cover || open.has(enclosure.id);
  }

  /** As {@link isOpen}, as a sentence about `what`. */
  refuseCover(part: string, what: string, open: ReadonlySet<string>): string | undefined {
    if (this.isOpen(part, open)) return undefined;
    const title = inSentence(this.enclosureOf(part)!.title);
    return `${what} is behind the cover of the ${title}; open that cover first.`;
  }
}

/** "There is no terminal "K1.A3"; the nearest is "K1.A1"." */
export function unknown(what: string, name: string, names: Iterable<string>): string {
  const near = nearestName(name, [...names]);
  return `There is no ${what} "${name}" on this unit${near ? `; the nearest is "${near}"` : ''}.`;
}
