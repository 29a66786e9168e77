import type {LanePlan} from './lane-plan.ts';
import type {PartDecision} from './part-geometry.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';

/** Wires on terminals of one part, by terminal. */
function endsOn(plan: LanePlan, part: number): Map<string, number[]> {
  const ends = new Map<string, number[]>();
  for (const wire of plan.wiresOf[part]!)
    for (const end of [2 * wire, 2 * wire + 1]) {
      if (plan.endPart[end] !== part) continue;
      const terminal = plan.terminalOf(end);
      const known = ends.get(terminal);
      if (known) known.push(end);
      else ends.set(terminal, [end]);
    }
  return ends;
}

/**
 * Orders the terminals of a part by the heights of what their wires meet next. A wire that turns back goes over
 * or under everything on its side.
 */
export function sortGroups(plan: LanePlan, index: number): void {
  const part = plan.parts[index]!;
  const decision = plan.decisions[index]!;
  if (decision.order.length < 2) return;
  const ends = endsOn(plan, index);
  const groups = isStrip(part)
    ? part.terminals.map((name) => [`${part.id}.${name}`])
    : groupsOf(part).map(({terminals}) => terminals);
  const heightOf = (group: number): number => {
    const heights = groups[group]!.flatMap((terminal) =>
      (ends.get(terminal) ?? []).map((end) => plan.shareOf(plan.nextPin(end), plan.channelOf(end))),
    );
    return heights.length > 0 ? heights.reduce((a, b) => a + b, 0) / heights.length : -1;
  };
  const heights = groups.map((_, group) => heightOf(group));
  // what has no wire stays beside what it stood beside
  let last = 0;
  for (const group of decision.order) {
    if (heights[group]! < 0) heights[group] = last;
    last = heights[group]!;
  }
  const order = [...decision.order].sort((a, b) => heights[a]! - heights[b]!);
  plan.decide(index, {...decision, order});
}

/** Orders the wires on each terminal of a part so that none cross between it and what they meet next. */
export function sortLugs(plan: LanePlan, index: number): void {
  const decision = plan.decisions[index]!;
  const lugs: Record<string, readonly string[]> = {...decision.lugs};
  let changed = false;
  for (const [key, wires] of Object.entries(decision.lugs)) {
    if (wires.length < 2) continue;
    const terminal = key.replace(/:(left|right)$/, '');
    const turnOf = (id: string): number => {
      const wire = plan.indexOfWire(id);
      const end = plan.terminalOf(2 * wire) === terminal ? 2 * wire : 2 * wire + 1;
      return plan.turnOf(end);
    };
    lugs[key] = [...wires].sort((a, b) => turnOf(a) - turnOf(b));
    changed ||= lugs[key].some((wire, i) => wire !== wires[i]);
  }
  if (changed) plan.decide(index, {...decision, lugs} satisfies PartDecision);
}

/** Lays the wires of a part anew and orders its terminals, and the wires on its neighbours' terminals, to suit. */
export function settlePart(plan: LanePlan, index: number): void {
  plan.relay(...plan.wiresOf[index]!);
  sortGroups(plan, index);
  sortLugs(plan, index);
  const neighbours = new Set(
    plan.wiresOf[index]!.flatMap((wire) => [plan.endPart[2 * wire]!, plan.endPart[2 * wire + 1]!]),
  );
  neighbours.delete(index);
  for (const other of neighbours) sortLugs(plan, other);
}
