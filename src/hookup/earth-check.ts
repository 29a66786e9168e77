import type {Finding} from './finding.ts';
import {ampsThrough, type HookupRun} from './hookup-run.ts';

/** A bonding path has next to no ohms (common practice, no source). */
const bondOhms = 1;
/** Two circuits that must stay apart have only insulation between them. */
const apartOhms = 1e5;

/** Lugs that have no path of their own to the service's ground: a path over the neutral does not count. */
export function bondFindings(run: HookupRun): Finding[] {
  const supply = run.task.parts.find(({kind}) => kind === 'supply');
  if (!supply || run.task.bonded.length === 0) return [];
  // the neutral is bonded at the service; apart from it only the equipment's own path is left
  const dead = run.circuit.dead(run.positions(0), {open: [`${supply.id}.main-bond`]});
  const ground = `${supply.id}.G`;
  return run.task.bonded.flatMap((lug): Finding[] => {
    const {re} = dead.thevenin(lug, ground).ohms;
    if (re <= bondOhms) return [];
    const part = lug.split('.')[0];
    return [
      {
        kind: 'not-bonded',
        cause: `${lug} has no path of its own to the service ground: the metal stays live if a wire touches it.`,
        wires: run.wires
          .filter(({from, to}) => [from, to].some((end) => end.startsWith(`${part}.`)))
          .map(({id}) => id),
        closed: [],
        reading: {
          meter: 'ohms',
          red: lug,
          black: ground,
          shows: re,
          should: 'below 1 Ω (power off)',
        },
      },
    ];
  });
}

/** Circuits that the task wants apart and that are joined, with every switch closed or every switch open. */
export function joinedFindings(run: HookupRun): Finding[] {
  const findings: Finding[] = [];
  for (const entry of run.task.forbidden) {
    if (entry.is !== 'joined') continue;
    const [a, b] = entry.between;
    for (const mask of [run.every, 0]) {
      const dead = run.circuit.dead(run.positions(mask));
      const {re} = dead.thevenin(a, b).ohms;
      if (re > apartOhms) continue;
      findings.push({
        kind: 'joined',
        cause: `${a} and ${b} must stay apart and are joined: two sources on one wire feed each other's faults.`,
        wires: run.wires
          .filter(
            ({id}) =>
              run.circuit.dead(run.positions(mask), {open: [id]}).thevenin(a, b).ohms.re >
              10 * Math.max(re, 1),
          )
          .map(({id}) => id),
        closed: run.closedIn(mask),
        reading: {meter: 'ohms', red: a, black: b, shows: re, should: 'open (power off)'},
      });
      break;
    }
  }
  return findings;
}

/** Wires that no combination needs: a second path between two joined terminals, or one that carries nothing. */
export function idleWireFindings(run: HookupRun): Finding[] {
  const {wires, task} = run;
  const most = new Map(wires.map(({id}) => [id, 0]));
  for (const mask of run.samples()) {
    const settled = run.settle(mask);
    for (const {id} of wires) most.set(id, Math.max(most.get(id)!, ampsThrough(settled, id)));
  }
  const grounds = groundNet(run);
  const findings: Finding[] = [];
  const idle = new Set<string>();
  for (const wire of wires) {
    const others = [...task.given, ...wires.filter(({id}) => id !== wire.id && !idle.has(id))];
    const twin = reaches(others, wire.from, wire.to);
    if (!twin && (most.get(wire.id)! > 1e-3 || grounds.has(wire.from) || grounds.has(wire.to)))
      continue;
    idle.add(wire.id);
    findings.push({
      kind: twin ? 'spare-wire' : 'dangling-wire',
      cause: twin
        ? `Wire ${wire.id} runs between ${wire.from} and ${wire.to}, which are joined without it.`
        : `Wire ${wire.id} from ${wire.from} to ${wire.to} carries nothing in any combination.`,
      wires: [wire.id],
      closed: [],
      reading: {
        meter: 'clamp-amps',
        red: wire.id,
        shows: most.get(wire.id)!,
        should: 'amps in some combination, or no wire',
      },
    });
  }
  return findings;
}

/** Terminals joined by wires to the service's ground or a lug. */
function groundNet(run: HookupRun): Set<string> {
  const net = new Set<string>();
  for (const {id, kind} of run.task.parts) {
    if (kind === 'ground-lug') net.add(`${id}.E`);
    if (kind === 'supply') net.add(`${id}.G`);
  }
  return net;
}

/** Whether wires alone lead from one terminal to another. */
function reaches(wires: readonly {from: string; to: string}[], from: string, to: string): boolean {
  const seen = new Set([from]);
  const queue = [from];
  for (let at = queue.pop(); at !== undefined; at = queue.pop())
    for (const wire of wires) {
      const next = wire.from === at ? wire.to : wire.to === at ? wire.from : undefined;
      if (next !== undefined && !seen.has(next)) {
        seen.add(next);
        queue.push(next);
      }
    }
  return seen.has(to);
}
