import type {Action} from '../bench/actions.ts';
import {readingsInWords} from './spoken-actions.ts';
import type {XapiStatement} from './xapi-schema.ts';

/** An attempt as it goes to a record store. Times are milliseconds since 1970. */
export interface RecordedAttempt {
  readonly assignment: string;
  readonly student: {readonly id: string; readonly name: string};
  readonly className: string;
  readonly set: {readonly id: string; readonly title: string};
  readonly kind: string;
  readonly unit: string;
  readonly openedAt: number | null;
  readonly finishedAt: number | null;
  readonly verdict: string | null;
  readonly points: number | null;
  readonly minutes: number;
  readonly hints: number;
  readonly findings: number;
  readonly actions: readonly {
    readonly number: number;
    readonly action: Action;
    readonly at: number;
  }[];
  /** Of a wiring task: what was handed in, in order. */
  readonly handIns?: readonly {
    readonly at: number;
    readonly verdict: string;
    readonly findings: number;
    readonly wires: unknown;
  }[];
  /** Of hiding for another: what was hidden. */
  readonly hid?: readonly string[];
}

export interface XapiOptions {
  /** Root of our own identifiers, ending in a slash: the school's address, or a name that resolves nowhere. */
  readonly home: string;
  /** A UUID that is always the same for the same text, so that sending twice enters once. */
  readonly uuidOf: (text: string) => string;
  /** ISO 8601 with a time zone. */
  readonly isoTime: (ms: number) => string;
}

// verbs and types of the vocabulary that Advanced Distributed Learning publishes
const verbs = 'http://adlnet.gov/expapi/verbs/';
const simulation = 'http://adlnet.gov/expapi/activities/simulation';
const interaction = 'http://adlnet.gov/expapi/activities/interaction';
const course = 'http://adlnet.gov/expapi/activities/course';

/** An attempt as xAPI 1.0.3 statements: begun, every action, and how it ended. */
export function xapiStatements(
  attempt: RecordedAttempt,
  {home, uuidOf, isoTime}: XapiOptions,
): XapiStatement[] {
  const {assignment, student, set, openedAt, finishedAt} = attempt;
  if (openedAt === null && finishedAt === null) return [];
  const setActivity = {
    id: `${home}xapi/set/${set.id}`,
    definition: {name: {en: set.title}, type: simulation},
  };
  const make = (
    what: string,
    verb: string,
    at: number,
    rest: Pick<XapiStatement, 'result'> & {object?: XapiStatement['object']} = {},
  ): XapiStatement => ({
    id: uuidOf(`${assignment} ${what}`),
    actor: {objectType: 'Agent', name: student.name, account: {homePage: home, name: student.id}},
    verb: {id: `${verbs}${verb}`, display: {en: verb}},
    object: rest.object ?? setActivity,
    ...(rest.result ? {result: rest.result} : {}),
    context: {
      registration: uuidOf(assignment),
      platform: 'Rungbench',
      contextActivities: {
        ...(rest.object ? {parent: [setActivity]} : {}),
        grouping: [
          {id: `${home}xapi/unit/${attempt.unit}`, definition: {type: simulation}},
          {id: `${home}xapi/class`, definition: {name: {en: attempt.className}, type: course}},
        ],
      },
    },
    timestamp: isoTime(at),
    version: '1.0.3',
  });
  const statements = openedAt === null ? [] : [make('begun', 'initialized', openedAt)];
  const words = readingsInWords(attempt.actions.map(({action}) => action));
  for (const {number, action, at} of attempt.actions) {
    const isReading = action.do === 'read' || action.do === 'clamp';
    const response = isReading ? words.shift()! : said(action);
    statements.push(
      make(`action ${number}`, action.do === 'name' ? 'answered' : 'interacted', at, {
        object: {
          id: `${home}xapi/action/${action.do}`,
          definition: {name: {en: action.do}, type: interaction},
        },
        result: {
          ...(response === '' ? {} : {response}),
          extensions: {[`${home}xapi/ext/number`]: number},
        },
      }),
    );
  }
  for (const [i, {at, verdict}] of (attempt.handIns ?? []).entries()) {
    statements.push(
      make(`hand-in ${i + 1}`, 'answered', at, {
        object: {
          id: `${home}xapi/action/hand-in`,
          definition: {name: {en: 'hand-in'}, type: interaction},
        },
        result: {
          success: verdict === 'right',
          response: verdict,
          extensions: {[`${home}xapi/ext/number`]: i + 1},
        },
      }),
    );
  }
  if (finishedAt !== null)
    statements.push(
      make('ended', endVerb(attempt), finishedAt, {result: endResult(attempt, home)}),
    );
  return statements;
}

const success = ({verdict}: RecordedAttempt): boolean =>
  ['right', 'equivalent', 'found'].includes(verdict ?? '');

/** `hide` ends when something is hidden; whether it was found comes later. */
const endVerb = (attempt: RecordedAttempt): string =>
  attempt.verdict === null ? 'completed' : success(attempt) ? 'passed' : 'failed';

function endResult(attempt: RecordedAttempt, home: string): XapiStatement['result'] {
  const {points, verdict, minutes, hints, findings} = attempt;
  return {
    completion: true,
    ...(verdict === null ? {} : {success: success(attempt), response: verdict}),
    ...(points === null
      ? {}
      : {score: {scaled: clamp(points) / 100, raw: clamp(points), min: 0, max: 100}}),
    duration: isoDuration(minutes),
    extensions: {
      [`${home}xapi/ext/hints`]: hints,
      [`${home}xapi/ext/safety-findings`]: findings,
    },
  };
}

const clamp = (points: number): number => Math.min(100, Math.max(0, points));

/** Minutes of simulated work, as ISO 8601: `PT12M30S`. */
export function isoDuration(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return `PT${Math.floor(seconds / 60)}M${seconds % 60}S`;
}

/** What was done, for people who read the store. A note may hold anything, so it stays with the school. */
function said(action: Action): string {
  switch (action.do) {
    case 'set':
      return `${action.target} ${action.value}`;
    case 'meter':
      return action.function;
    case 'name':
      return action.fault;
    case 'wait':
      return `${action.seconds} s`;
    default:
      return '';
  }
}
