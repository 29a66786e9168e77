import {findingTitles, isRemark, type Finding} from './finding.ts';
import {parMinutes} from './hookup-grade.ts';
import type {HookupResult} from './hookup-result.ts';

/** One paragraph of what to practise next: danger first. Every sentence follows from a number of the work. */
export function hookupAdvice(
  {counts, rightFirstTime, wiresNeeded}: HookupResult,
  firstFindings: readonly Finding[] | undefined,
): string {
  const says: string[] = [];
  const times = (n: number): string => (n === 1 ? 'once' : `${n} times`);
  if (counts.unsafeEnergisings > 0)
    says.push(
      `Safety comes first: you closed the breaker ${times(counts.unsafeEnergisings)} on wires with a short, a path around the fuse or metal without its ground. An ohms reading across the source, with the power off, tells a short before it can burn anything.`,
    );
  else if (counts.unreadEnergisings > 0)
    says.push(
      `You gave it power ${times(counts.unreadEnergisings)} without an ohms or continuity reading on the dead circuit. Read across the source and along the chain first; it takes a minute and costs no fuse.`,
    );
  const [worst] = (firstFindings ?? []).filter((finding) => !isRemark(finding));
  if (worst)
    says.push(
      `Your first wiring had ${findingTitles[worst.kind].toLowerCase()}: ${worst.cause} Trace each wire with a finger along the ladder before you ask for the verdict.`,
    );
  if (!counts.solved && counts.checks > 0)
    says.push(
      'It is not right yet. Take the first finding, put the leads where it says, and mend that one alone.',
    );
  if (counts.solved && counts.wiresUsed > wiresNeeded)
    says.push(
      `You used ${counts.wiresUsed} wires where ${wiresNeeded} do. A terminal takes two wires: go on from there rather than back to the strip.`,
    );
  if (says.length > 0) return says.join(' ');
  if (!rightFirstTime) return 'Nothing has been checked yet.';
  return counts.minutes > 1.5 * parMinutes(wiresNeeded)
    ? 'Right the first time, and safely. What is left is speed: work from the source to the load and back, without leaving a chain half done.'
    : 'Right the first time, safely and quickly. Take a harder task next, or mend somebody else’s wiring.';
}
