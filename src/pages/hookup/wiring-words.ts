import type {HookupResult} from '../../hookup/hookup-result.ts';

/** How work at a wiring task stands, in a few words. */
export function wiringWords({
  counts,
  rightFirstTime,
}: Pick<HookupResult, 'counts' | 'rightFirstTime'>): string {
  if (rightFirstTime) return 'Right the first time';
  const {corrections, solved, wiresUsed} = counts;
  if (solved) return `Right after ${corrections} correction${corrections === 1 ? '' : 's'}`;
  return corrections > 0 ? 'Not right yet' : `${wiresUsed} wires so far`;
}
