import type {Finding} from './finding.ts';
import {ampsThrough, fractionOf, voltsAcross, works, type HookupRun} from './hookup-run.ts';
import {nameOf, reachable} from './rule-check.ts';
import {offFraction} from './rule.ts';
import {atRest, type Settled} from './wired-circuit.ts';

/**
 * Whether each protective device takes its loads off: with it open, a load that worked must be dead, and both its
 * ends too. A fuse in the common leaves them live, and a wire around it leaves the load on.
 */
export function protectionFindings(
  run: HookupRun,
  workedIn: ReadonlyMap<string, readonly number[]>,
): Finding[] {
  const findings: Finding[] = [];
  for (const {device, loads} of run.task.protection) {
    const name = device[0].split('.')[0];
    for (const id of loads) {
      const rule = run.rules.find(({load}) => load.id === id);
      const worked = workedIn.get(id) ?? [];
      if (!rule || worked.length === 0) continue;
      const {load, rails} = rule;
      // with as little and with as much closed as there may be, from rest and while it runs
      const tries = [...new Set([worked[0], Math.max(...worked)])].flatMap((mask) => [
        {mask, memory: atRest},
        {mask, memory: run.settle(mask).memory},
      ]);
      for (const {mask, memory} of tries) {
        const settled = run.settle(mask, memory, {open: device});
        const across = fractionOf(settled, load);
        const ends = Math.max(
          ...[load.a, load.b].map((end) => voltsAcross(settled, end, rails[1])),
        );
        const isLive = ends > offFraction * load.ratedVolts && deviceIsFor(rails[1], device, run);
        if (across <= offFraction && !isLive) continue;
        const volts = Math.max(across * load.ratedVolts, ends);
        const amps = ampsThrough(settled, load.id);
        const around = run.wires.filter(
          ({id: wire}) => ampsThrough(settled, wire) > 0.4 * amps && amps > 1e-3,
        );
        findings.push({
          kind: 'unfused-path',
          cause:
            across > offFraction
              ? `${nameOf(load)} is still on with ${name} open: its path goes around it.`
              : `${name} opens the common, not the line: with it open ${nameOf(load)} still stands at ${Math.round(ends)} V.`,
          wires: (around.length > 0
            ? around
            : run.wires.filter(({from, to}) => [from, to].some((end) => end.startsWith(`${name}.`)))
          ).map(({id: wire}) => wire),
          closed: run.closedIn(mask),
          load: id,
          volts,
          reading: {
            meter: 'ac-volts',
            red: reachable(load, 'a'),
            black: across > offFraction ? reachable(load, 'b') : rails[1],
            shows: volts,
            should: `0 V with ${name} out`,
          },
        });
        break;
      }
    }
  }
  return findings;
}

/** Live ends are judged against the common; where both rails are lines the device's own part tells nothing. */
const deviceIsFor = (common: string, device: readonly string[], run: HookupRun): boolean =>
  device.length === 1 && run.task.circuits.some(({rails}) => rails[1] === common);

/**
 * Largest amps that a copper wire of a gauge may carry here. 14, 12, 10: 15, 20, 30 A; 18 and 16: 7 and 10 A
 * (NFPA 70, 240.4(D)); from 8 on the 60 °C column of table 310.16. From memory; the code in force decides.
 */
const ampacities: Readonly<Record<number, number>> = {
  22: 3,
  20: 5,
  18: 7,
  16: 10,
  14: 15,
  12: 20,
  10: 30,
  8: 40,
  6: 55,
  4: 70,
  2: 95,
};

/** Wires thinner than the task allows for a load, or than the amps that they were seen to carry ask for. */
export function wireSizeFindings(run: HookupRun): Finding[] {
  const found = new Map<string, Finding>();
  const tell = (
    wire: {id: string; gauge: number; from: string},
    mask: number,
    amps: number,
    why: string,
  ): void => {
    if (found.has(wire.id)) return;
    found.set(wire.id, {
      kind: 'wire-too-small',
      cause: `Wire ${wire.id} (${wire.gauge} AWG) is too thin: ${why}.`,
      wires: [wire.id],
      closed: run.closedIn(mask),
      reading: {
        meter: 'clamp-amps',
        red: wire.id,
        shows: amps,
        should: `at most ${ampacities[wire.gauge]} A in ${wire.gauge} AWG`,
      },
    });
  };
  for (const mask of run.samples()) {
    const settled = run.settle(mask);
    for (const wire of run.wires) {
      const amps = ampsThrough(settled, wire.id);
      if (amps > ampacities[wire.gauge]) tell(wire, mask, amps, `it carries ${amps.toFixed(1)} A`);
    }
    for (const {loads, thinnest} of run.task.protection) {
      if (thinnest === undefined) continue;
      for (const id of loads) {
        const rule = run.rules.find(({load}) => load.id === id);
        if (!rule || !works(settled, rule)) continue;
        const amps = ampsThrough(settled, id);
        for (const wire of run.wires)
          if (
            wire.gauge > thinnest &&
            ampsThrough(settled, wire.id) > 0.5 * amps &&
            feeds(run, settled, wire.id, id)
          )
            tell(
              wire,
              mask,
              ampsThrough(settled, wire.id),
              `the circuit of ${nameOf(rule.load)} asks for ${thinnest} AWG`,
            );
      }
    }
  }
  return [...found.values()];
}

/** Whether a wire lies in a load's own path: off, it takes the load's amps away at once, armatures as they stand. */
function feeds(run: HookupRun, settled: Settled, wire: string, load: string): boolean {
  const {re, im} = run.circuit.frozen(settled.states, wire).amps(load);
  return Math.hypot(re, im) < 0.5 * ampsThrough(settled, load);
}
