import type {SentStatements} from '../../classroom/protocol/rest.ts';
import type {XapiStatement} from '../../classroom/xapi-schema.ts';
import {Refusal} from './refusal.ts';

const statementsAtOnce = 50;
const storeTimeoutMs = 15_000;
/** Pauses before a second and a third try, where the store is busy or cannot be reached. */
const usualPauses = [500, 2000];
/** A store that asks for a longer pause is asked again by the instructor, not by a server that waits. */
const longestPauseMs = 10_000;

export interface RecordStore {
  /** Root of the store's xAPI, without `/statements`. */
  readonly url: string;
  readonly user?: string;
  readonly password?: string;
}

/**
 * Sends statements to a record store (xAPI 1.0.3, part three, "Statement Resource"), a batch at a time, in order. Sending
 * them again enters nothing twice, since their ids stay the same: a store says 204 or 200 to what it has, or 409 where
 * what it has reads otherwise (a student has been renamed, say). With 409 it has taken nothing of the whole batch, so
 * the batch is halved until what clashes stands alone.
 *
 * @param pauses milliseconds before each further try
 * @throws Refusal that says how far it came, where the store refuses or stays away
 */
export async function sendStatements(
  statements: readonly XapiStatement[],
  store: RecordStore,
  pauses: readonly number[] = usualPauses,
): Promise<SentStatements> {
  let sent = 0;
  let known = 0;
  const post = async (batch: readonly XapiStatement[]): Promise<void> => {
    const status = await offer(batch, store, pauses).catch((error: unknown) => {
      throw new Refusal(
        409,
        `The record store cannot be reached (${(error as Error).message}). Compare its address; ${sent} statements were sent.`,
      );
    });
    if (status === 409 && batch.length > 1) {
      const half = Math.ceil(batch.length / 2);
      await post(batch.slice(0, half));
      await post(batch.slice(half));
    } else if (status === 409) known += 1;
    else if (status >= 200 && status < 300) sent += batch.length;
    else throw new Refusal(409, `${said(status)} ${sent} statements were sent.`);
  };
  for (let i = 0; i < statements.length; i += statementsAtOnce) {
    await post(statements.slice(i, i + statementsAtOnce));
  }
  return {sent, known};
}

function said(status: number): string {
  const answered = `The record store answered ${status}.`;
  if (status === 401 || status === 403) return `${answered} Compare user and password;`;
  if (status === 404) return `${answered} Compare its address, which ends before /statements;`;
  if (status === 429 || status >= 500) return `${answered} It is not well: try again later;`;
  return `${answered} It does not take our statements;`;
}

/** One batch; tried again where that can help. Gives the status of the last answer. */
async function offer(
  batch: readonly XapiStatement[],
  {url, user, password}: RecordStore,
  pauses: readonly number[],
): Promise<number> {
  for (let tried = 0; ; tried++) {
    const pause = pauses[tried];
    let wait = pause;
    try {
      const response = await fetch(`${url.replace(/\/$/, '')}/statements`, {
        method: 'POST',
        redirect: 'error',
        signal: AbortSignal.timeout(storeTimeoutMs),
        headers: {
          'content-type': 'application/json',
          'x-experience-api-version': '1.0.3',
          ...(user === undefined ? {} : {authorization: basic(user, password ?? '')}),
        },
        body: JSON.stringify(batch),
      });
      // the connection is free for the next batch only once the answer is read
      await response.arrayBuffer();
      const {status} = response;
      if ((status !== 429 && status < 500) || pause === undefined) return status;
      const asked = Number(response.headers.get('retry-after')) * 1000;
      if (asked > longestPauseMs) return status;
      wait = Math.max(pause, asked || 0);
    } catch (error) {
      if (pause === undefined) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, wait));
  }
}

/** RFC 7617. */
const basic = (user: string, password: string): string =>
  `Basic ${Buffer.from(`${user}:${password}`).toString('base64')}`;
