import type {Finding} from './finding.ts';
import {fractionOf, voltsAcross, works, type HookupRun, type RuleToRun} from './hookup-run.ts';
import {loadsOf} from './loads.ts';
import {nameOf, reachable} from './rule-check.ts';
import {offFraction} from './rule.ts';
import {atRest, type Memory} from './wired-circuit.ts';

/** Runs each trial from rest, every step from where the last one ended, and tells the first step that goes wrong. */
export function trialFindings(run: HookupRun): Finding[] {
  const loads = loadsOf(run.task.parts);
  const findings: Finding[] = [];
  for (const {title, steps} of run.task.trials) {
    let memory: Memory = atRest;
    for (const [i, step] of steps.entries()) {
      const settled = run.settle(run.maskOf(step.closed), memory);
      memory = settled.memory;
      const wrong = [...step.on, ...step.off].find((id) => {
        const load = loads.get(id)!;
        const rule = run.rules.find((each) => each.load.id === id) ?? asked(load);
        return step.on.includes(id)
          ? !works(settled, rule)
          : fractionOf(settled, load) > offFraction;
      });
      if (wrong === undefined) continue;
      const load = loads.get(wrong)!;
      const volts = voltsAcross(settled, load.a, load.b);
      findings.push({
        kind: 'sequence',
        cause: `${title}: at step ${i + 1} ${nameOf(load)} is ${step.on.includes(wrong) ? 'off and must be on' : 'on and must be off'}.`,
        wires: run.wires
          .filter(({from, to}) => [from, to].some((end) => end.startsWith(`${load.part.id}.`)))
          .map(({id}) => id),
        closed: step.closed,
        load: wrong,
        volts,
        reading: {
          meter: 'ac-volts',
          red: reachable(load, 'a'),
          black: reachable(load, 'b'),
          shows: volts,
          should: step.on.includes(wrong) ? `${Math.round(load.ratedVolts)} V` : '0 V',
        },
      });
      break;
    }
  }
  return findings;
}

/** A load that no rule names is asked for the usual 85 %. */
const asked = (load: RuleToRun['load']): RuleToRun => ({
  rule: {statement: '', load: load.id, least: 0.85, when: {is: 'and', terms: []}},
  load,
  isOn: () => true,
  isOnIn: () => true,
  inputs: [],
  rails: ['', ''],
});
