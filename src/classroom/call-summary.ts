import type {Bench} from '../bench/bench.ts';
import type {BenchView, LogEntry} from '../bench/bench-view.ts';
import {functionNames} from '../meter/function-names.ts';

/** What the live view tells of a call without opening it. */
export interface CallSummary {
  readonly stage: 'working' | 'named' | 'cleared' | 'given-up';
  /** Where the leads are and what the meter shows, or what was done last. */
  readonly doing: string;
  readonly readings: number;
  /** Minutes of work, by the cost of each action. */
  readonly minutes: number;
  readonly danger: number;
  readonly caution: number;
}

/** @param view the bench's view as it stands */
export function callSummary(bench: Bench, view: BenchView): CallSummary {
  const last = view.log[view.log.length - 1];
  return {
    stage: stageOf(bench, view),
    doing: last ? doingText(last) : '',
    readings: view.log.filter(({kind}) => kind === 'reading').length,
    minutes: view.minutes,
    danger: view.safety.filter(({severity}) => severity === 'danger').length,
    caution: view.safety.filter(({severity}) => severity === 'caution').length,
  };
}

function stageOf(bench: Bench, view: BenchView): CallSummary['stage'] {
  // one of two is found: whoever looks on need not know more than that the search goes on
  if (view.more) return 'working';
  return bench.hasGivenUp && view.stage === 'named' ? 'given-up' : view.stage;
}

/** One line of the log in short. */
export function doingText(entry: LogEntry): string {
  if (entry.kind !== 'reading') return entry.text ?? '';
  const place = entry.wire ? `around ${entry.wire}` : `${entry.red} to ${entry.black}`;
  const shown = entry.display ? `: ${entry.display.text} ${entry.display.unit}` : '';
  return `${place}, ${functionNames[entry.function!].short}${shown}`;
}
