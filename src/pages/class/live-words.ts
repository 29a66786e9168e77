import type {LiveRow} from '../../classroom/protocol/instructor-messages.ts';

/** `3 min`, `under a minute`. */
export function stuckText(ms: number): string {
  const minutes = Math.floor(ms / 60_000);
  return minutes < 1 ? 'under 1 min' : `${minutes} min`;
}

/** How far a student is, in a word or two. */
export function stageText({stage, verdict, online, assignment}: LiveRow): string {
  if (verdict)
    return {right: 'Right', equivalent: 'Right', wrong: 'Wrong', 'given-up': 'Gave up'}[verdict];
  if (!assignment) return online ? 'Nothing in hand' : 'Not here';
  if (!online && (stage === 'new' || stage === 'waiting')) return 'Not here';
  switch (stage) {
    case 'waiting':
      return 'Waiting';
    case 'new':
      return 'Not begun';
    case 'named':
      return 'Named';
    case 'cleared':
      return 'Cleared';
    case 'given-up':
      return 'Gave up';
    case 'done':
      return 'Done';
    default:
      return online ? 'Working' : 'Away';
  }
}
