import type {Part} from '../content/unit.ts';
import {edgesOf, isHidden, type Edge} from './wiring.ts';

/** Terminals of a part that belong together: the two ends of a contact or coil, or one on its own. */
export interface TerminalGroup {
  readonly terminals: readonly string[];
  /** Drawn between the two, where the group is a pair. */
  readonly edge?: Edge;
}

/** Parts that show as a row of tags with wires on both sides. */
export const isStrip = (part: Part): boolean =>
  part.kind === 'terminal-strip' || part.kind === 'splice';

/** Parts that show their terminals only: what is inside is not drawn, as on the maker's own print. */
const boards = new Set([
  'thermostat',
  'defrost-board',
  'ignition-board',
  'flame-rod',
  'supply',
  'psc-motor',
  'three-phase-motor',
  'phase-monitor',
  'ecm-blower',
  'economiser',
  'damper-actuator',
  'dual-capacitor',
  'ground-lug',
]);

/** The groups of a part's terminals in their natural order. */
export function groupsOf(part: Part): TerminalGroup[] {
  const all = part.terminals.map((name) => `${part.id}.${name}`);
  if (isStrip(part) || boards.has(part.kind))
    return all.map((terminal) => ({terminals: [terminal]}));
  const groups: TerminalGroup[] = [];
  const taken = new Set<string>();
  const take = (terminals: readonly string[], edge?: Edge): void => {
    for (const terminal of terminals) taken.add(terminal);
    groups.push(edge ? {terminals, edge} : {terminals});
  };
  const edges = edgesOf({parts: [part]});
  if (part.kind === 'transformer') {
    const secondary = edges.find(({winding}) => winding.startsWith('secondary'))!;
    take(
      all.filter((terminal) => terminal !== secondary.a && terminal !== secondary.b),
      edges[0],
    );
    take([secondary.a, secondary.b], secondary);
    return groups;
  }
  // a contact says more about its part than what feeds the part's electronics
  const contactsFirst = [...edges].sort(
    (a, b) => Number(b.element.is === 'contact') - Number(a.element.is === 'contact'),
  );
  for (const edge of contactsFirst)
    if (
      !taken.has(edge.a) &&
      !taken.has(edge.b) &&
      !isHidden(edge.a) &&
      !isHidden(edge.b) &&
      edge.a !== edge.b
    )
      take([edge.a, edge.b], edge);
  for (const terminal of all) if (!taken.has(terminal)) take([terminal]);
  const place = (group: TerminalGroup): number =>
    Math.min(...group.terminals.map((terminal) => all.indexOf(terminal)));
  return groups.sort((a, b) => place(a) - place(b));
}
