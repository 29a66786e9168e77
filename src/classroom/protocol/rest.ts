import {z} from 'zod';
import type {Difficulty} from '../../faults/difficulty.ts';
import {passphrase, rowId, shownName, unitId} from './fields.ts';
import type {Poll} from './poll.ts';
import type {WorkSet} from './work-set.ts';

/**
 * Routes of the class, all below `/api`, JSON in and out unless said otherwise. Errors come as `{error: sentence}` with
 * 400 (not understood), 401 (sign in), 403 (not yours, or no CSRF token), 404, 409 (does not fit how things stand),
 * 413 (too long), 429 (too fast; `retry-after` in seconds), 503 (data folder cannot be written).
 *
 * I = needs the instructor's cookie; where it is not GET also the header `x-csrf` with the token of `signed-in`.
 *
 * | route | body | answer |
 * | --- | --- | --- |
 * | GET  /api/hello | | {@link Hello} |
 * | POST /api/first-start | {@link firstStartBody} | {@link SignedIn}, sets the cookie; 409 once an account exists |
 * | POST /api/sign-in | {@link signInBody} | {@link SignedIn}, sets the cookie |
 * | GET  /api/signed-in (I) | | {@link SignedIn}; 401 where nobody is |
 * | POST /api/sign-out (I) | | `{}` |
 * | POST /api/passphrase (I) | {@link passphraseBody} | `{}`; signs out everywhere else |
 * | POST /api/instructors (I) | {@link newInstructorBody} | `{}` |
 * | GET  /api/classes (I) | | {@link ClassSummary}[] |
 * | POST /api/classes (I) | {@link classBody} | {@link ClassDetail} |
 * | GET  /api/classes/:class (I) | | {@link ClassDetail} |
 * | PATCH /api/classes/:class (I) | {@link classChange} | {@link ClassDetail} |
 * | DELETE /api/classes/:class (I) | | `{}`; the class and all its records |
 * | POST /api/classes/:class/students (I) | {@link rosterBody} | {@link ClassDetail}; a pasted list or CSV |
 * | PATCH /api/students/:student (I) | {@link studentChange} | {@link ClassDetail} |
 * | DELETE /api/students/:student (I) | | {@link ClassDetail}; erases the student and every record whole |
 * | GET  /api/students/:student/records (I) | | one JSON file with everything kept of the student |
 * | GET  /api/units/:unit/catalogue (I) | | {@link CatalogueEntry}[]: what can be hidden |
 * | GET  /api/classes/:class/sets (I) | | {@link WorkSet}[], newest first |
 * | POST /api/classes/:class/sets (I) | `workSetBody` | {@link WorkSet} |
 * | PATCH /api/sets/:set (I) | `workSetChange` | {@link WorkSet} |
 * | DELETE /api/sets/:set (I) | | `{}`; 409 once somebody has begun |
 * | POST /api/classes/:class/polls (I) | `pollBody` | {@link Poll}; open at once, the one before is over |
 * | PATCH /api/polls/:poll (I) | `pollChange` | {@link Poll} |
 * | POST /api/classes/:class/wall (I) | | {@link WallLink}; earlier wall links stop working |
 * | GET  /api/sets/:set/debrief (I) | | {@link ClassDebrief} |
 * | GET  /api/classes/:class/gradebook (I) | | {@link Gradebook} |
 * | GET  /api/classes/:class/gradebook.csv (I) | | CSV |
 * | GET  /api/classes/:class/actions.csv (I) | | CSV, every action of every attempt |
 * | GET  /api/classes/:class/xapi.json (I) | | array of xAPI 1.0.3 statements |
 * | POST /api/classes/:class/xapi (I) | {@link recordStoreBody} | {@link SentStatements} |
 * | GET  /api/join/:code | | {@link JoinInfo}; 404 where no open class has the code |
 * | POST /api/join | {@link joinBody} | {@link Joined} |
 *
 * Sockets (origin checked, one JSON text a frame): `/api/socket/student` (`StudentRequest`, first `join`),
 * `/api/socket/instructor` (cookie; first `watch`), `/api/socket/wall` (first `join`).
 *
 * The page's addresses that the server prints, and puts into QR codes: `/#/class/start?key=…` (first start),
 * `/#/class` (instructor), `/#/join/CODE` (student), `/#/wall?token=…` (wall).
 */
export const apiRoot = '/api';

export interface Hello {
  readonly rungbench: 'class server';
  /** No instructor yet: the first start is to be done, with the key that the terminal shows. */
  readonly firstStart: boolean;
  /** Addresses by which this server can be reached, loopback first. */
  readonly addresses: readonly string[];
}

export const firstStartBody = z.strictObject({
  /** Shown in the terminal, so that nobody else on the network can be first. */
  key: z.string().max(100),
  name: shownName,
  passphrase,
});
export type FirstStartBody = z.infer<typeof firstStartBody>;

export const signInBody = z.strictObject({name: shownName, passphrase: z.string().min(1).max(128)});
export type SignInBody = z.infer<typeof signInBody>;

export const passphraseBody = z.strictObject({
  current: z.string().min(1).max(128),
  passphrase,
});

export const newInstructorBody = z.strictObject({name: shownName, passphrase});

export interface SignedIn {
  readonly name: string;
  /** To be sent as the header `x-csrf` with everything that changes something. */
  readonly csrf: string;
}

export const classBody = z.strictObject({name: shownName});
export const classChange = z.strictObject({
  name: shownName.optional(),
  /** A new code: links and codes given out before stop working for those who have not joined. */
  newCode: z.literal(true).optional(),
  /** Whether students may join. */
  open: z.boolean().optional(),
});

/** One name a line, or CSV whose column `name` (or first column) holds the names. Names that are there already are passed over. */
export const rosterBody = z.strictObject({text: z.string().min(1).max(100_000)});
export const studentChange = z.strictObject({
  name: shownName.optional(),
  /** Devices that have joined under this name are sent away; the name may be taken anew. */
  sendAway: z.literal(true).optional(),
});

export interface ClassSummary {
  readonly id: string;
  readonly name: string;
  readonly code: string;
  readonly open: boolean;
  readonly students: number;
  readonly createdAt: number;
}

export interface ClassDetail extends ClassSummary {
  /** Address to open on a phone, by the address that others on the network can reach. */
  readonly joinUrl: string;
  /** Whether the wall shows who is how far. */
  readonly namesOnWall: boolean;
  readonly roster: readonly RosterEntry[];
}

export interface RosterEntry {
  readonly id: string;
  readonly name: string;
  /** Whether a device has joined under this name. */
  readonly joined: boolean;
}

export interface CatalogueEntry {
  readonly id: string;
  readonly name: string;
  readonly mode: string;
  /** Absent where a customer would notice nothing of it: no call can be made of it alone. */
  readonly difficulty?: Difficulty;
  readonly parts: readonly string[];
  readonly wires: readonly string[];
}

export interface WallLink {
  readonly url: string;
  readonly token: string;
}

export const joinBody = z.strictObject({
  code: z.string().min(4).max(20),
  student: rowId,
});
export interface JoinInfo {
  readonly className: string;
  readonly roster: readonly RosterEntry[];
}
export interface Joined {
  /** For `join` on the socket. Keep it on the device; it opens nothing of anybody else. */
  readonly token: string;
  readonly student: string;
  readonly name: string;
  readonly className: string;
}

/** One line of the class debrief per student and call. */
export interface ClassDebrief {
  readonly set: WorkSet;
  readonly calls: readonly {
    readonly faults: readonly string[];
    readonly complaint: string;
    readonly students: number;
    readonly right: number;
    /** Namings that the log did not prove. */
    readonly guesses: number;
    readonly wrong: readonly {readonly name: string; readonly count: number}[];
    /** The planner's way, beside the ways of the class. */
    readonly bestRoute?: {
      readonly readings: number;
      readonly minutes: number;
      readonly steps: readonly string[];
    };
    readonly routes: readonly {
      readonly name: string;
      readonly readings: number;
      readonly minutes: number;
      readonly verdict: string;
      readonly points?: number;
      readonly steps: readonly string[];
    }[];
  }[];
  readonly safety: readonly {
    readonly text: string;
    readonly severity: 'danger' | 'caution';
    readonly count: number;
  }[];
  /** Of a wiring task, in place of calls. */
  readonly hookup?: HookupClassDebrief;
}

export interface HookupClassDebrief {
  readonly students: number;
  readonly right: number;
  readonly handIns: number;
  /** What was wrong, the dangerous first; each with its most frequent cause and how many students made it. */
  readonly findings: readonly {
    readonly text: string;
    readonly cause: string;
    readonly dangerous: boolean;
    readonly students: number;
  }[];
  readonly ways: readonly {
    readonly name: string;
    readonly stage: string;
    readonly handIns: number;
    readonly firstRight: boolean;
    readonly points?: number;
    /** What was wrong with each hand-in, in order. */
    readonly wrong: readonly (readonly string[])[];
  }[];
}

export interface GradebookRow {
  readonly student: string;
  readonly name: string;
  readonly cells: readonly GradebookCell[];
}
/** One assignment. `points` out of 100; absent until it is graded. */
export interface GradebookCell {
  readonly set: string;
  readonly assignment: string;
  readonly kind: 'call' | 'hide' | 'hookup';
  readonly stage: string;
  readonly verdict?: string;
  readonly points?: number;
  readonly readings: number;
  readonly minutes: number;
  readonly danger: number;
  readonly caution: number;
}
export interface Gradebook {
  readonly sets: readonly {readonly id: string; readonly title: string}[];
  readonly rows: readonly GradebookRow[];
}

export const recordStoreBody = z.strictObject({
  /** Root of the record store's xAPI, without `/statements`. */
  url: z.url({protocol: /^https?$/}).max(500),
  user: z.string().max(200).optional(),
  password: z.string().max(200).optional(),
});
export interface SentStatements {
  readonly sent: number;
  /** The store had these already, in other words. */
  readonly known: number;
}

export const params = {
  class: z.strictObject({class: rowId}),
  student: z.strictObject({student: rowId}),
  set: z.strictObject({set: rowId}),
  poll: z.strictObject({poll: rowId}),
  unit: z.strictObject({unit: unitId}),
  code: z.strictObject({code: z.string().min(4).max(20)}),
} as const;

export interface ErrorAnswer {
  readonly error: string;
}
