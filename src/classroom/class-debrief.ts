import type {Action} from '../bench/actions.ts';
import type {Debrief} from '../bench/debrief.ts';
import type {Reasoning} from '../diagnosis/reasoning.ts';
import {counted} from './counted.ts';
import type {ClassDebrief} from './protocol/rest.ts';
import {readingsInWords} from './spoken-actions.ts';

/** One student's call as the class debrief takes it. */
export interface DebriefedCall {
  readonly name: string;
  readonly faults: readonly string[];
  /** Names of the faults, in the order of their ids. */
  readonly faultNames: readonly string[];
  readonly complaint: string;
  readonly readings: number;
  readonly minutes: number;
  readonly stage: string;
  readonly actions: readonly Action[];
  readonly judged?: {readonly debrief: Debrief; readonly reasoning: Reasoning};
  /** What was found up to now against safe practice, of a call that is not judged. */
  readonly safety?: Debrief['safety'];
}

type Call = ClassDebrief['calls'][number];

/** What a class has to talk about: per hidden fault who found it and how, most guessed first; and safety findings, most frequent first. */
export function classDebrief(calls: readonly DebriefedCall[]): Omit<ClassDebrief, 'set'> {
  const byFaults = new Map<string, DebriefedCall[]>();
  for (const call of calls) {
    const key = [...call.faults].sort().join('\n');
    const same = byFaults.get(key);
    if (same) same.push(call);
    else byFaults.set(key, [call]);
  }
  return {
    calls: [...byFaults.values()]
      .map(oneFault)
      .sort((a, b) => b.guesses - a.guesses || b.students - a.students),
    safety: safetyOf(calls),
  };
}

function oneFault(calls: readonly DebriefedCall[]): Call {
  const judged = calls.flatMap(({judged}) => judged ?? []);
  const namings = judged.flatMap(({reasoning}) => reasoning.namings);
  const route = judged[0]?.reasoning.route;
  return {
    faults: calls[0].faultNames,
    complaint: calls[0].complaint,
    students: calls.length,
    right: judged.filter(({debrief}) => isFound(debrief.verdict)).length,
    guesses: namings.filter(({proof}) => proof.is !== 'proved').length,
    wrong: counted(namings.filter(({right}) => !right).map(({name}) => name)).map(
      ([name, count]) => ({name, count}),
    ),
    ...(route
      ? {
          bestRoute: {
            readings: route.readings,
            minutes: route.minutes,
            steps: route.steps.map(({text, shown}) => `${text}: ${shown}`),
          },
        }
      : {}),
    routes: calls
      .map((call) => ({
        name: call.name,
        readings: call.readings,
        minutes: call.judged?.debrief.minutes ?? call.minutes,
        verdict: call.judged?.debrief.verdict ?? call.stage,
        ...(call.judged ? {points: call.judged.reasoning.grade.points} : {}),
        steps: readingsInWords(call.actions),
      }))
      .sort((a, b) => (b.points ?? -1) - (a.points ?? -1)),
  };
}

export const isFound = (verdict: string | null | undefined): boolean =>
  verdict === 'right' || verdict === 'equivalent';

function safetyOf(calls: readonly DebriefedCall[]): ClassDebrief['safety'] {
  const findings = calls.flatMap(({judged, safety}) => judged?.debrief.safety ?? safety ?? []);
  const severity = new Map(findings.map((finding) => [finding.text, finding.severity]));
  return counted(findings.map(({text}) => text)).map(([text, count]) => ({
    text,
    severity: severity.get(text)!,
    count,
  }));
}
