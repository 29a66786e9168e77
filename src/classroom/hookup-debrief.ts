import {findingTitles, isRemark, type FindingKind} from '../hookup/finding.ts';
import type {HookupReport} from '../hookup/check-hookup.ts';
import {counted} from './counted.ts';
import type {HookupClassDebrief} from './protocol/rest.ts';

/** What one student handed in of a wiring task, each check in order. */
export interface DebriefedWiring {
  readonly name: string;
  readonly stage: string;
  readonly points?: number;
  readonly checks: readonly Pick<HookupReport, 'verdict' | 'findings'>[];
}

/** What can hurt somebody or burn: a short, a path without its fuse, a safety that no longer stops anything. */
const dangerous: ReadonlySet<FindingKind> = new Set<FindingKind>([
  'dead-short',
  'unfused-path',
  'safety-bypassed',
  'common-side',
  'on-without-call',
  'wire-too-small',
  'not-bonded',
]);

/** What a class that wired the same task has to talk about: what was wrong, by how many, and how each came through. */
export function hookupDebrief(
  wirings: readonly DebriefedWiring[],
): Pick<HookupClassDebrief, 'findings' | 'ways'> {
  // one student who hands the same mistake in five times is one student who made it
  const kinds = wirings.flatMap(({checks}) => [
    ...new Set(
      checks.flatMap(({findings}) =>
        findings.filter((each) => !isRemark(each)).map(({kind}) => kind),
      ),
    ),
  ]);
  const causes = wirings.flatMap(({checks}) => checks.flatMap(({findings}) => findings));
  return {
    findings: counted(kinds)
      .map(([kind, students]) => ({
        text: findingTitles[kind],
        cause: counted(causes.filter((each) => each.kind === kind).map(({cause}) => cause))[0][0],
        dangerous: dangerous.has(kind),
        students,
      }))
      .sort((a, b) => Number(b.dangerous) - Number(a.dangerous) || b.students - a.students),
    ways: wirings
      .map(({name, stage, points, checks}) => ({
        name,
        stage,
        handIns: checks.length,
        firstRight: checks[0]?.verdict === 'right',
        ...(points === undefined ? {} : {points}),
        wrong: checks.map(({findings}) => [
          ...new Set(
            findings.filter((each) => !isRemark(each)).map(({kind}) => findingTitles[kind]),
          ),
        ]),
      }))
      .sort((a, b) => (b.points ?? -1) - (a.points ?? -1) || a.name.localeCompare(b.name)),
  };
}
