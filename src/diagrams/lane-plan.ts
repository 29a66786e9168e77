import type {Part, Unit} from '../content/unit.ts';
import type {ColumnRange} from './connection-columns.ts';
import type {Decisions} from './connection-graph.ts';
import {partGeometry} from './connection-part.ts';
import type {PartDecision} from './part-geometry.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';

/** A wire's end as it leaves its part. Ends are numbered: 2w is wire w's `from`, 2w + 1 its `to`. */
interface ShapeLug {
  readonly end: number;
  readonly right: boolean;
  readonly y: number;
}

/** What a plan needs of a part's geometry. */
export interface PartShape {
  readonly width: number;
  readonly height: number;
  readonly lugs: readonly ShapeLug[];
  /** Contacts and coils that are entered and left on one side. */
  readonly hairpins: number;
}

export interface LaneSnapshot {
  readonly column: readonly number[];
  readonly decisions: readonly PartDecision[];
  readonly layers: readonly (readonly number[])[];
}

const SHAPES_KEPT = 300;

/** Heights within one item stay below this. */
const LEAST_SHARE = 4096;

/**
 * A connection drawing without coordinates: the column of each part, and what stands in each column from
 * top to bottom. Between columns lie channels, in which wires go up and down; a wire that passes a column
 * has a lane of its own there. How often wires cross follows from the orders alone, so that a change is
 * judged in microseconds.
 *
 * Channel k lies left of column k. Items of a column are numbers: parts, the top and the bottom of each
 * enclosure that stands there, and lanes.
 */
export class LanePlan {
  readonly unit: Unit;
  readonly parts: readonly Part[];
  readonly columnCount: number;
  /** Columns that an enclosure stands in; undefined where it is empty. */
  readonly ranges: readonly (ColumnRange | undefined)[];
  /** Enclosure of each part. */
  readonly home: readonly number[];
  readonly endPart: readonly number[];
  readonly colours: readonly number[];
  readonly partIndex: ReadonlyMap<string, number>;
  /** Wires on each part. */
  readonly wiresOf: readonly (readonly number[])[];

  readonly column: number[] = [];
  readonly decisions: PartDecision[] = [];
  readonly shapes: PartShape[] = [];
  readonly layers: number[][];
  /** Side and height of each end on its part. */
  readonly endRight: Uint8Array;
  readonly endY: Float64Array;
  /** First and last channel of each wire, and the end that is in the first. */
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly lowEnd: Int32Array;
  /** Place of every item in its column. */
  readonly rank: Int32Array;
  /** Columns changed since it was last cleared, a bit each. */
  dirty = 0;

  readonly #markers: number;
  readonly #lanes: number;
  readonly #cache: Map<string, PartShape>[];
  readonly #wireIndex: ReadonlyMap<string, number>;
  #undo: (() => void)[] = [];

  constructor(unit: Unit, ranges: ReadonlyMap<string, ColumnRange>, decisions: Decisions) {
    this.unit = unit;
    this.parts = unit.parts;
    this.partIndex = new Map(unit.parts.map(({id}, i) => [id, i]));
    this.#wireIndex = new Map(unit.wires.map(({id}, i) => [id, i]));
    this.columnCount = Math.max(...[...ranges.values()].map(({high}) => high)) + 1;
    const boxes = unit.enclosures.map(({id}) => id);
    this.home = unit.parts.map(({enclosure}) => boxes.indexOf(enclosure));
    this.ranges = boxes.map((id) => {
      const first = unit.parts.find(({enclosure}) => enclosure === id);
      return first && ranges.get(first.id);
    });
    const partOf = (terminal: string): number =>
      this.partIndex.get(terminal.slice(0, terminal.indexOf('.')))!;
    this.endPart = unit.wires.flatMap(({from, to}) => [partOf(from), partOf(to)]);
    const colours = [...new Set(unit.wires.map(({colour}) => colour))];
    this.colours = unit.wires.map(({colour}) => colours.indexOf(colour));
    this.wiresOf = unit.parts.map((_, part) =>
      unit.wires.flatMap((_wire, w) =>
        this.endPart[2 * w] === part || this.endPart[2 * w + 1] === part ? [w] : [],
      ),
    );
    this.#markers = unit.parts.length;
    this.#lanes = this.#markers + 2 * boxes.length;
    this.#cache = unit.parts.map(() => new Map());
    const wires = unit.wires.length;
    this.endRight = new Uint8Array(2 * wires);
    this.endY = new Float64Array(2 * wires);
    this.low = new Int32Array(wires);
    this.high = new Int32Array(wires);
    this.lowEnd = new Int32Array(wires);
    this.rank = new Int32Array(this.#lanes + wires * this.columnCount);
    unit.parts.forEach(({id}, part) => {
      this.column[part] = decisions.columns[id]!;
      this.#shape(part, decisions.parts[id]!);
    });
    for (let wire = 0; wire < wires; wire++) this.#span(wire);
    this.layers = Array.from({length: this.columnCount}, () => []);
  }

  isPart(item: number): boolean {
    return item < this.#markers;
  }

  isLane(item: number): boolean {
    return item >= this.#lanes;
  }

  isTop(item: number): boolean {
    return item >= this.#markers && item < this.#lanes && (item - this.#markers) % 2 === 0;
  }

  /** Enclosure of a top or bottom. */
  enclosureOf(marker: number): number {
    return (marker - this.#markers) >> 1;
  }

  topOf(enclosure: number): number {
    return this.#markers + 2 * enclosure;
  }

  bottomOf(enclosure: number): number {
    return this.topOf(enclosure) + 1;
  }

  lane(wire: number, column: number): number {
    return this.#lanes + wire * this.columnCount + column;
  }

  wireOfLane(lane: number): number {
    return Math.floor((lane - this.#lanes) / this.columnCount);
  }

  stands(enclosure: number, column: number): boolean {
    const range = this.ranges[enclosure];
    return range !== undefined && column >= range.low && column <= range.high;
  }

  /** Whether an enclosure may hold a lane: it holds an end of the wire. */
  mayHold(enclosure: number, wire: number): boolean {
    return (
      this.home[this.endPart[2 * wire]!] === enclosure ||
      this.home[this.endPart[2 * wire + 1]!] === enclosure
    );
  }

  /** Whether a wire never leaves an enclosure: both its ends are in it. */
  staysIn(enclosure: number, wire: number): boolean {
    return (
      this.home[this.endPart[2 * wire]!] === enclosure &&
      this.home[this.endPart[2 * wire + 1]!] === enclosure
    );
  }

  /**
   * Pin of a wire in a channel on the side of its first channel: a lug (the end's number) or a lane
   * (−1 − item).
   */
  firstPin(wire: number, channel: number): number {
    return channel === this.low[wire] ? this.lowEnd[wire]! : -1 - this.lane(wire, channel - 1);
  }

  /** Pin of a wire in a channel on the side of its last channel. */
  lastPin(wire: number, channel: number): number {
    return channel === this.high[wire] ? this.lowEnd[wire]! ^ 1 : -1 - this.lane(wire, channel);
  }

  pinsIn(wire: number, channel: number): readonly [number, number] {
    return [this.firstPin(wire, channel), this.lastPin(wire, channel)];
  }

  /** Place of a pin on the circle down the left side of a channel and up the right. */
  circular(pin: number, channel: number): number {
    return circular(this.heightKey(pin), this.fromLeft(pin, channel));
  }

  /** The item that a pin is on. */
  itemOf(pin: number): number {
    return pin < 0 ? -1 - pin : this.endPart[pin]!;
  }

  /** Whether a pin comes into its channel from the left. */
  fromLeft(pin: number, channel: number): boolean {
    return pin < 0
      ? (-1 - pin - this.#lanes) % this.columnCount === channel - 1
      : this.endRight[pin] === 1;
  }

  /** A number that grows from top to bottom along a channel's side. */
  heightKey(pin: number): number {
    return pin < 0
      ? this.rank[-1 - pin]! * LEAST_SHARE
      : this.rank[this.endPart[pin]!]! * LEAST_SHARE + 2 * this.endY[pin]!;
  }

  /** Puts an order in a column. */
  setLayer(column: number, items: number[]): void {
    const before = this.layers[column]!;
    this.layers[column] = items;
    this.#number(column);
    this.dirty |= 1 << column;
    this.#undo.push(() => {
      this.layers[column] = before;
      this.#number(column);
    });
  }

  /** Gives a part another decision, and the wires that leave it elsewhere their new lanes. */
  decide(part: number, decision: PartDecision): void {
    const before = this.decisions[part]!;
    const moved = this.#rerouted(part, () => this.#shape(part, decision));
    this.#undo.push(() => {
      this.#shape(part, before);
      for (const wire of this.wiresOf[part]!) this.#span(wire);
    });
    this.dirty |= 1 << this.column[part]!;
    for (const wire of moved) this.#layLanes(wire);
  }

  /** Takes a part to another place: `at` counts the items of the column without it. */
  movePart(part: number, column: number, at: number): void {
    const before = this.column[part]!;
    this.setLayer(
      before,
      this.layers[before]!.filter((item) => item !== part),
    );
    const items = [...this.layers[column]!];
    items.splice(at, 0, part);
    this.setLayer(column, items);
    if (column === before) return;
    const moved = this.#rerouted(part, () => (this.column[part] = column));
    this.#undo.push(() => {
      this.column[part] = before;
      for (const wire of this.wiresOf[part]!) this.#span(wire);
    });
    for (const wire of moved) this.#layLanes(wire);
  }

  /** Takes the lanes of wires up and lays them, one wire after the other, where they cross least. */
  relay(...wires: readonly number[]): void {
    for (const wire of wires) this.#liftLanes(wire, this.low[wire]!, this.high[wire]!);
    for (const wire of wires) this.#layLanes(wire);
  }

  /** Channel that an end goes into. */
  channelOf(end: number): number {
    return this.column[this.endPart[end]!]! + this.endRight[end]!;
  }

  /** Terminal that an end is on. */
  terminalOf(end: number): string {
    const {from, to} = this.unit.wires[end >> 1]!;
    return end % 2 === 0 ? from : to;
  }

  indexOfWire(id: string): number {
    return this.#wireIndex.get(id)!;
  }

  /** Height of a pin in a channel as a share of the column that it is in: 0 at the top, 1 at the bottom. */
  shareOf(pin: number, channel: number): number {
    const column = this.fromLeft(pin, channel) ? channel - 1 : channel;
    return this.heightKey(pin) / (this.layers[column]!.length * LEAST_SHARE);
  }

  /**
   * How far round the channel an end's wire goes, so that ends of one terminal in the order of this number, from top
   * to bottom, do not cross.
   */
  turnOf(end: number): number {
    const channel = this.channelOf(end);
    const own = this.circular(end, channel);
    const turn = (this.circular(this.nextPin(end), channel) - own + 2 * ROUND) % ROUND;
    return this.endRight[end] ? -turn : turn;
  }

  /** What an end's wire meets next: the pin at the other end of its stretch in the channel. */
  nextPin(end: number): number {
    const wire = end >> 1;
    const channel = this.channelOf(end);
    return end === this.lowEnd[wire] ? this.lastPin(wire, channel) : this.firstPin(wire, channel);
  }

  /**
   * Places in a column where a lane of a wire may go, as indices into the column's items: within the enclosures of its
   * ends, and between enclosures unless both its ends are in one.
   */
  gaps(wire: number, column: number, items: readonly number[]): number[] {
    const stays = this.ranges.some((_, e) => this.stands(e, column) && this.staysIn(e, wire));
    const gaps: number[] = [];
    let within = -1;
    for (let at = 0; at <= items.length; at++) {
      if (within < 0 ? !stays : this.mayHold(within, wire)) gaps.push(at);
      const item = items[at];
      if (item === undefined || this.isPart(item) || this.isLane(item)) continue;
      within = this.isTop(item) ? this.enclosureOf(item) : -1;
    }
    return gaps;
  }

  /** The plan as it now is, to come back to. */
  snapshot(): LaneSnapshot {
    return {column: [...this.column], decisions: [...this.decisions], layers: [...this.layers]};
  }

  restore({column, decisions, layers}: LaneSnapshot): void {
    this.commit();
    decisions.forEach((decision, part) => {
      this.column[part] = column[part]!;
      this.#shape(part, decision);
    });
    for (let wire = 0; wire < this.low.length; wire++) this.#span(wire);
    layers.forEach((items, i) => {
      this.layers[i] = [...items];
      this.#number(i);
    });
  }

  /** Forgets how to go back: the changes since the last call stay. */
  commit(): void {
    this.#undo = [];
    this.dirty = 0;
  }

  /** Takes back all changes since the last commit. */
  rollback(): void {
    for (let i = this.#undo.length - 1; i >= 0; i--) this.#undo[i]!();
    this.commit();
  }

  #rerouted(part: number, change: () => void): readonly number[] {
    const wires = this.wiresOf[part]!;
    const before = wires.map((wire) => [this.low[wire]!, this.high[wire]!, this.lowEnd[wire]!]);
    change();
    return wires.filter((wire, i) => {
      const [low, high, lowEnd] = before[i]!;
      this.#span(wire);
      if (this.low[wire] === low && this.high[wire] === high && this.lowEnd[wire] === lowEnd)
        return false;
      this.#liftLanes(wire, low!, high!);
      return true;
    });
  }

  #span(wire: number): void {
    const from = this.channelOf(2 * wire);
    const to = this.channelOf(2 * wire + 1);
    this.low[wire] = Math.min(from, to);
    this.high[wire] = Math.max(from, to);
    this.lowEnd[wire] = from <= to ? 2 * wire : 2 * wire + 1;
  }

  #number(column: number): void {
    const items = this.layers[column]!;
    for (let i = 0; i < items.length; i++) this.rank[items[i]!] = i;
  }

  #liftLanes(wire: number, low: number, high: number): void {
    for (let column = low; column < high; column++) {
      const lane = this.lane(wire, column);
      const items = this.layers[column]!;
      if (items.includes(lane))
        this.setLayer(
          column,
          items.filter((item) => item !== lane),
        );
    }
  }

  /** Column by column, each lane where the wire crosses least in the channel before it. */
  #layLanes(wire: number): void {
    const [low, high] = [this.low[wire]!, this.high[wire]!];
    this.dirty |= (1 << low) | (low > 0 ? 1 << (low - 1) : 0);
    for (let column = low; column < high; column++) {
      const items = this.layers[column]!;
      const lane = this.lane(wire, column);
      const places = this.gaps(wire, column, items);
      const before = chordsIn(this, column, wire);
      const last = column === high - 1;
      const after = last ? chordsIn(this, column + 1, wire) : [];
      const [start] = this.pinsIn(wire, column);
      const startAt = circular(this.heightKey(start), this.fromLeft(start, column));
      const end = this.lowEnd[wire]! ^ 1;
      const endAt = circular(this.heightKey(end), this.endRight[end] === 1);
      let best = places[0] ?? 0;
      let least = Infinity;
      for (const at of places) {
        const key = (at - 0.5) * LEAST_SHARE;
        let crossed = crossedBy(before, startAt, circular(key, false));
        if (last) crossed += crossedBy(after, circular(key, true), endAt);
        if (crossed < least) {
          least = crossed;
          best = at;
        }
      }
      const changed = [...items];
      changed.splice(best, 0, lane);
      this.setLayer(column, changed);
    }
  }

  #shape(part: number, decision: PartDecision): void {
    const {order, sides, lugs} = decision;
    const key = `${order.join()} ${sides.join()} ${Object.values(lugs).join(';')}`;
    let shape = this.#cache[part]!.get(key);
    if (!shape) {
      shape = this.#shapeOf(part, decision);
      if (this.#cache[part]!.size >= SHAPES_KEPT) this.#cache[part]!.clear();
      this.#cache[part]!.set(key, shape);
    }
    this.decisions[part] = decision;
    this.shapes[part] = shape;
    for (const {end, right, y} of shape.lugs) {
      this.endRight[end] = right ? 1 : 0;
      this.endY[end] = y;
    }
  }

  #shapeOf(index: number, decision: PartDecision): PartShape {
    const part = this.parts[index]!;
    const geometry = partGeometry(part, decision);
    const sideOf = (terminal: string): string =>
      decision.sides[part.terminals.indexOf(terminal.slice(part.id.length + 1))]!;
    return {
      width: geometry.width,
      height: geometry.height,
      lugs: geometry.lugs.map(({wire, terminal, side, y}) => {
        const w = this.#wireIndex.get(wire)!;
        const end = this.unit.wires[w]!.from === terminal ? 2 * w : 2 * w + 1;
        return {end, right: side === 'right', y};
      }),
      hairpins: isStrip(part)
        ? 0
        : groupsOf(part).filter(
            ({edge, terminals}) =>
              edge && terminals.length === 2 && sideOf(terminals[0]!) === sideOf(terminals[1]!),
          ).length,
    };
  }
}

/** A wire in a channel as a chord of the circle down the left side and up the right. */
export interface Chord {
  readonly wire: number;
  readonly a: number;
  readonly b: number;
}

const ROUND = 1 << 22;

const circular = (key: number, left: boolean): number => (left ? key : ROUND - key);

/** Chords of a channel, without one wire's. */
export function chordsIn(plan: LanePlan, channel: number, without = -1): Chord[] {
  const chords: Chord[] = [];
  for (let wire = 0; wire < plan.low.length; wire++) {
    if (wire === without || channel < plan.low[wire]! || channel > plan.high[wire]!) continue;
    const [first, last] = plan.pinsIn(wire, channel);
    const a = circular(plan.heightKey(first), plan.fromLeft(first, channel));
    const b = circular(plan.heightKey(last), plan.fromLeft(last, channel));
    chords.push(a < b ? {wire, a, b} : {wire, a: b, b: a});
  }
  return chords;
}

function crossedBy(chords: readonly Chord[], p: number, q: number): number {
  const [a, b] = p < q ? [p, q] : [q, p];
  let crossed = 0;
  for (const chord of chords)
    if (chord.a < a ? chord.b > a && chord.b < b : chord.a < b && chord.b > b) crossed++;
  return crossed;
}
