import type {SpTree} from './series-parallel.ts';
import {isHidden, treeOver, type Joint, type NetTree, type Wiring} from './wiring.ts';
import {branchOrders, orderBranches} from './branch-order.ts';
import {crossingsOf, withCrossings} from './ladder-crossings.ts';
import type {CircuitRows, Item, Link, Row, Vertical} from './ladder-row.ts';
import type {CircuitPlan, NetEdge, Rung, RungEnd} from './ladder-plan.ts';

interface Ending {
  readonly row: number;
  readonly terminal: string;
}

/** Items and links by turns. */
type Sequence = (Item | Link)[];

interface Block {
  readonly height: number;
  readonly left: readonly Ending[];
  readonly right: readonly Ending[];
}

/** Lays out the rows of a circuit from its plan. Where things stand along a row is settled later. */
export function layRows(plan: CircuitPlan, wiring: Wiring): CircuitRows {
  const build = (rungs: readonly Rung[]): CircuitRows => {
    const builder = new RowsBuilder(wiring, plan.circuit.rails);
    if (plan.header)
      builder.rung({tree: plan.header, left: railEnd(plan, 0), right: railEnd(plan, 1)}, 'header');
    for (const rung of rungs) builder.rung(rung, 'rung');
    return builder.finish(Boolean(plan.header));
  };
  // each rung by itself: of the orders of its branches, the first with fewest verticals over other rows
  const ordered = plan.rungs.map((rung) => {
    const alone = (tree: SpTree<NetEdge>): number => {
      const builder = new RowsBuilder(wiring, plan.circuit.rails);
      builder.rung({...rung, tree}, 'rung');
      return crossingsOf(builder.finish(false)).length;
    };
    let best = orderBranches(rung.tree, wiring, rung.left.to === 'rail' ? undefined : 'any');
    let fewest = alone(best);
    for (const tree of fewest > 0 ? branchOrders(best) : []) {
      const crossings = alone(tree);
      if (crossings < fewest) [best, fewest] = [tree, crossings];
      if (fewest === 0) break;
    }
    return {...rung, tree: best};
  });
  const rows = build(ordered);
  return withCrossings(rows);
}

const railEnd = (plan: CircuitPlan, i: 0 | 1): RungEnd => ({
  to: 'rail',
  terminal: plan.circuit.rails[i],
});

class RowsBuilder {
  readonly #wiring: Wiring;
  readonly #rails: readonly string[];
  readonly #rows: Sequence[] = [];
  readonly #verticals: Vertical[] = [];
  #columns = 2;

  constructor(wiring: Wiring, rails: readonly string[]) {
    this.#wiring = wiring;
    this.#rails = rails;
  }

  rung({tree, left, right}: Rung, as: 'rung' | 'header'): void {
    const block = this.#lay(tree, this.#rows.length);
    for (const {row, terminal} of block.left)
      this.#rows[row]!.unshift(...this.#toEnd(left, terminal, 'left', as));
    for (const {row, terminal} of block.right)
      this.#rows[row]!.push(...this.#toEnd(right, terminal, 'right', as).reverse());
  }

  finish(hasHeader: boolean): CircuitRows {
    return {
      rows: this.#rows.map(asRow),
      hasHeader,
      verticals: this.#verticals,
      columns: this.#columns,
      leftRail: 0,
      rightRail: 1,
    };
  }

  #column(): number {
    return this.#columns++;
  }

  /** From a rail or flag inward to an end of the rung; ends with the link to the rung's own symbol. */
  #toEnd(end: RungEnd, terminal: string, side: 'left' | 'right', as: 'rung' | 'header'): Sequence {
    const sequence: Sequence = [];
    const through = (node: NetTree): void => {
      for (const child of node.children) {
        sequence.push(linkOf(child.joint!), this.#glyph(child.terminal, child.children.length > 0));
        through(child);
      }
    };
    if (end.to === 'nothing') sequence.push(this.#glyph(terminal, false));
    else {
      const tree = treeOver(this.#wiring, end.terminal, [terminal]);
      sequence.push(
        end.to === 'rail'
          ? {is: 'rail', side, column: end.terminal === this.#rails[0] ? 0 : 1}
          : {is: 'flag', column: this.#column(), terminal: end.terminal, side},
      );
      if (tree.terminal === terminal && !(as === 'header' && end.to === 'rail'))
        sequence.push({by: 'terminal', terminal}, this.#glyph(terminal, false));
      through(tree);
    }
    sequence.push(this.#lead(terminal));
    return sequence;
  }

  #glyph(terminal: string, through: boolean): Item {
    const column = this.#column();
    return isHidden(terminal)
      ? {is: 'node', column, terminal}
      : {is: 'terminal', column, terminal, through};
  }

  #lead(terminal: string): Link {
    return {by: 'inside', part: this.#wiring.partOf(terminal).id};
  }

  #row(row: number): Sequence {
    while (this.#rows.length <= row) this.#rows.push([]);
    return this.#rows[row]!;
  }

  #lay(tree: SpTree<NetEdge>, top: number): Block {
    if (tree.kind === 'edge') {
      const {edge} = tree.edge;
      this.#row(top).push({is: 'symbol', column: this.#column(), edge, reversed: tree.reversed});
      const [from, to] = tree.reversed ? [edge.b, edge.a] : [edge.a, edge.b];
      return {height: 1, left: [{row: top, terminal: from}], right: [{row: top, terminal: to}]};
    }
    if (tree.kind === 'parallel') {
      let height = 0;
      const blocks = tree.parts.map((part) => {
        const block = this.#lay(part, top + height);
        height += block.height;
        return block;
      });
      return {
        height,
        left: blocks.flatMap(({left}) => left),
        right: blocks.flatMap(({right}) => right),
      };
    }
    let done: Block | undefined;
    for (const part of tree.parts) {
      if (!done) {
        done = this.#lay(part, top);
        continue;
      }
      // what stands to the right is laid apart, then joined row by row behind the fan between them
      const before = this.#rows.slice(top).map((sequence) => [...sequence]);
      for (let row = top; row < this.#rows.length; row++) this.#rows[row] = [];
      const next = this.#lay(part, top);
      const fan = this.#join(done.right, next.left, top);
      for (let row = top; row < this.#rows.length; row++)
        this.#rows[row] = [
          ...(before[row - top] ?? []),
          ...(fan.get(row) ?? []),
          ...this.#rows[row]!,
        ];
      done = {height: Math.max(done.height, next.height), left: done.left, right: next.right};
    }
    return done!;
  }

  /** The net between two blocks in series: a tree of terminals from a middle one out to both sides. */
  #join(from: readonly Ending[], to: readonly Ending[], top: number): Map<number, Sequence> {
    const middle = from.length === 1 || to.length > 1 ? from[0]!.terminal : to[0]!.terminal;
    const fanIn = treeOver(
      this.#wiring,
      middle,
      from.map(({terminal}) => terminal),
    );
    const fanOut = treeOver(
      this.#wiring,
      middle,
      to.map(({terminal}) => terminal),
    );
    const column = this.#column();
    const rows = new Map<number, Sequence>();
    const at = (row: number): Sequence => {
      const sequence = rows.get(row) ?? [];
      rows.set(row, sequence);
      return sequence;
    };
    const left = new Map<number, Sequence>();
    const right = new Map<number, Sequence>();
    const spans = new Set([top]);
    this.#spread(fanIn, from, top, column, left, spans);
    this.#spread(fanOut, to, top, column, right, spans);
    for (const [row, sequence] of left)
      at(row).push(...[...sequence, ...this.#leadAt(row, from)].reverse());
    const own = [...from, ...to].some(({terminal}) => terminal === middle);
    const glyph: Item = isHidden(middle)
      ? {is: 'node', column, terminal: middle}
      : {is: 'terminal', column, terminal: middle, through: !own};
    if (!left.has(top)) at(top).push(...this.#leadAt(top, from));
    at(top).push(glyph);
    if (!right.has(top)) at(top).push(...this.#leadAt(top, to));
    for (const [row, sequence] of right) at(row).push(...sequence, ...this.#leadAt(row, to));
    if (spans.size > 1)
      this.#verticals.push({column, terminal: middle, rows: [...spans].sort((a, b) => a - b)});
    return rows;
  }

  #leadAt(row: number, ends: readonly Ending[]): Link[] {
    const end = ends.find((it) => it.row === row);
    return end ? [this.#lead(end.terminal)] : [];
  }

  /**
   * Spreads a tree whose root stands at `main`, outward: every terminal stands on the first row of what
   * hangs on it, and is drawn out downward to the rows of its other branches.
   */
  #spread(
    node: NetTree,
    ends: readonly Ending[],
    main: number,
    column: number,
    out: Map<number, Sequence>,
    spans: Set<number>,
  ): void {
    const at = (row: number): Sequence => {
      const sequence = out.get(row) ?? [];
      out.set(row, sequence);
      return sequence;
    };
    const tap = (row: number): void => {
      spans.add(row);
      at(row).push({is: 'tap', column, terminal: node.terminal});
    };
    for (const {row, terminal} of ends) if (terminal === node.terminal && row !== main) tap(row);
    const children = node.children
      .map((child) => ({child, rows: rowsUnder(child, ends)}))
      .sort((a, b) => a.rows[0]! - b.rows[0]!);
    for (const {child, rows} of children) {
      const row = rows[0]!;
      if (row !== main) tap(row);
      const own = this.#column();
      const hangs = ends.some(({terminal}) => terminal === child.terminal);
      at(row).push(
        linkOf(child.joint!),
        isHidden(child.terminal)
          ? {is: 'node', column: own, terminal: child.terminal}
          : {is: 'terminal', column: own, terminal: child.terminal, through: !hangs},
      );
      const under = new Set([row]);
      this.#spread(child, ends, row, own, out, under);
      if (under.size > 1)
        this.#verticals.push({
          column: own,
          terminal: child.terminal,
          rows: [...under].sort((a, b) => a - b),
        });
    }
  }
}

function asRow(sequence: Sequence): Row {
  const items: Item[] = [];
  const links: (Link | undefined)[] = [];
  sequence.forEach((entry, i) => {
    if (!('is' in entry)) return;
    const before = sequence[i - 1];
    if (items.length > 0) links.push(before && 'by' in before ? before : undefined);
    items.push(entry);
  });
  return {items, links};
}

const linkOf = (joint: Joint): Link =>
  joint.wire ? {by: 'wire', wire: joint.wire} : {by: 'inside', part: joint.part!.id};

function rowsUnder(node: NetTree, ends: readonly Ending[]): number[] {
  const own = ends.filter(({terminal}) => terminal === node.terminal).map(({row}) => row);
  return [...own, ...node.children.flatMap((child) => rowsUnder(child, ends))].sort(
    (a, b) => a - b,
  );
}
