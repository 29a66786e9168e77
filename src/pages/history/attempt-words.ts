import type {AttemptHead} from '../../store/attempts.ts';

/** Whether there is something left to do in it: a call not yet named. */
export function isUnfinished(head: AttemptHead): boolean {
  return head.stage === 'working';
}

/** The attempt's result in a word or two. */
export function resultWords(head: AttemptHead): string {
  if (head.purpose === 'free-run') return 'Free run';
  if (head.purpose === 'first-reading') return 'First reading';
  if (head.stage === 'working') return 'Not finished';
  switch (head.verdict) {
    case 'right':
      return head.stage === 'cleared' ? 'Found and cleared' : 'Found';
    case 'equivalent':
      return 'Found (equivalent)';
    case 'wrong':
      return 'Wrong part named';
    case 'given-up':
      return 'Given up';
    default:
      return 'Named';
  }
}

/** `25 Nov 2026, 14:05` in the way this person writes dates. */
export function whenWords(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime())
    ? iso
    : date.toLocaleString(undefined, {dateStyle: 'medium', timeStyle: 'short'});
}

/** `12 min`; below one, `less than 1 min`. */
export function minuteWords(minutes: number): string {
  return minutes > 0 && minutes < 1 ? 'less than 1 min' : `${Math.round(minutes)} min`;
}
