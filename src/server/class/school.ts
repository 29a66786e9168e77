import type {Content} from '../../classroom/long-jobs.ts';
import {Accounts} from '../data/accounts.ts';
import {ActionJournal} from '../data/action-journal.ts';
import {ClassRecords} from '../data/class-records.ts';
import {JournalInPostgres} from '../data/journal-in-postgres.ts';
import {JournalThread} from '../data/journal-thread.ts';
import type {SchoolDatabase} from '../data/school-database.ts';
import {TalkRecords} from '../data/talk-records.ts';
import {WorkRecords} from '../data/work-records.ts';
import {Benches} from './benches.ts';
import {LocalBus, type LiveBus} from './live-bus.ts';
import {LongWorkThread} from './long-work.ts';
import {Presence} from './presence.ts';
import {randomToken} from './secrets.ts';
import {ServerClock} from './server-clock.ts';
import {shippedContent} from './shipped-content.ts';

/** Everything that the routes and sockets of one process stand on. */
export interface School {
  readonly database: SchoolDatabase;
  readonly clock: ServerClock;
  readonly content: Content;
  readonly accounts: Accounts;
  readonly classes: ClassRecords;
  readonly work: WorkRecords;
  readonly talk: TalkRecords;
  readonly journal: ActionJournal;
  readonly benches: Benches;
  readonly longWork: LongWorkThread;
  readonly bus: LiveBus;
  readonly presence: Presence;
  /** Whoever makes the first account must have seen the terminal. */
  readonly firstStartKey: string;
  /** Addresses to reach this server by, loopback first; filled in once it listens. */
  readonly addresses: string[];
  /** By how much the computer's clock stood behind the records at the start, in milliseconds. */
  readonly clockBehindMs: number;
  close(): Promise<void>;
}

/** Opens a school on its records. */
export async function openSchool(
  database: SchoolDatabase,
  bus: LiveBus = new LocalBus(),
  options: {readonly mostBenches?: number; readonly firstStartKey?: string} = {},
): Promise<School> {
  const work = new WorkRecords(database.db);
  const {clock, behindMs} = ServerClock.notBefore(await work.latest());
  const now = (): number => clock.now();
  const journal = new ActionJournal(
    database.kind === 'file'
      ? new JournalThread(database.where)
      : new JournalInPostgres(database.db),
  );
  const longWork = new LongWorkThread();
  const presence = new Presence(bus);
  return {
    database,
    clock,
    content: shippedContent,
    accounts: new Accounts(database.db, now),
    classes: new ClassRecords(database.db, now),
    work,
    talk: new TalkRecords(database.db, now),
    journal,
    benches: new Benches(
      work,
      journal,
      shippedContent,
      (call) => longWork.ask('goes-on', {call}),
      options.mostBenches,
    ),
    longWork,
    bus,
    presence,
    firstStartKey: options.firstStartKey ?? randomToken(),
    addresses: [],
    clockBehindMs: behindMs,
    async close() {
      presence.close();
      await longWork.close();
      await journal.close();
      await bus.close();
      await database.close();
    },
  };
}
