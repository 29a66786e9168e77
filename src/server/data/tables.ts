import type {Generated} from 'kysely';

/**
 * What is kept, the same in both databases. Ids are random text; times are integer milliseconds of the server's clock;
 * true is 1; JSON is text. Columns that say who and when stand before what.
 */
export interface SchoolTables {
  school: {key: string; value: string};
  instructors: {
    id: string;
    name: string;
    /** `passphraseHash` of `passphrase.ts`. */
    passphrase: string;
    created_at: number;
  };
  sessions: {
    /** SHA-256 of the cookie: who reads the database cannot sign in with it. */
    hash: string;
    instructor: string;
    csrf: string;
    created_at: number;
    expires_at: number;
  };
  classes: {
    id: string;
    instructor: string;
    name: string;
    code: string;
    open: number;
    names_on_wall: number;
    /** SHA-256 of the wall's token. */
    wall: string | null;
    created_at: number;
  };
  students: {
    id: string;
    class: string;
    name: string;
    /** SHA-256 of the device's token; null while no device has joined. */
    device: string | null;
    /** The same of the device that this one took over from: it may take the work back. */
    device_before: string | null;
    created_at: number;
  };
  work_sets: {
    id: string;
    class: string;
    kind: string;
    title: string;
    /** Unit, or task of a hookup. */
    unit: string;
    /** The rest of the set's rules, JSON. */
    rules: string;
    state: string;
    created_at: number;
  };
  assignments: AssignmentTable;
  actions: {
    assignment: string;
    number: number;
    action: string;
    at: number;
  };
  coach_hints: {
    id: string;
    assignment: string;
    after_number: number;
    level: number;
    minutes: number;
    text: string;
    at: number;
  };
  notes: {
    id: string;
    class: string;
    student: string | null;
    set: string | null;
    kind: string;
    text: string;
    at: number;
  };
  polls: {id: string; class: string; body: string; shown: string; state: string; at: number};
  votes: {poll: string; student: string; answer: number; at: number};
  hookup_checks: {
    id: string;
    assignment: string;
    wires: string;
    verdict: string;
    findings: number;
    at: number;
  };
}

/** What one student has to do, and how it stands: a summary that follows from the actions, kept so that a list is one query. */
export interface AssignmentTable {
  id: string;
  set: string;
  class: string;
  student: string;
  kind: string;
  unit: string;
  /** Hidden faults, JSON list of ids; null while nobody has hidden any. Never leaves the server. */
  faults: string | null;
  complaint: string | null;
  seed: number;
  /** What is wrong with the student's own meter; null = it is sound. Never leaves the server before the debrief. */
  meter: string | null;
  /** `hide`: the call that it is for. */
  hides_for: string | null;
  stage: string;
  /** Number of the last action that is kept. */
  last: Generated<number>;
  doing: Generated<string>;
  readings: Generated<number>;
  minutes: Generated<number>;
  danger: Generated<number>;
  caution: Generated<number>;
  hints: Generated<number>;
  suspects: number | null;
  suspects_at_start: number | null;
  created_at: number;
  opened_at: number | null;
  /** When suspects last became fewer. */
  progressed_at: number | null;
  finished_at: number | null;
  verdict: string | null;
  points: number | null;
  /** Debrief and judgement once it is named, JSON. */
  judged: string | null;
}
