import type {BenchView} from '../../bench/bench-view.ts';

/** Something is still to be named. */
export const isOn = (view: BenchView): boolean => view.stage === 'working' || view.more === true;
