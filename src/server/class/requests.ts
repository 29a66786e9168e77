import type {FastifyReply, FastifyRequest} from 'fastify';
import type {z} from 'zod';
import type {Session} from '../data/accounts.ts';
import {Refusal} from './refusal.ts';
import type {School} from './school.ts';
import {sameSecret} from './secrets.ts';

export const cookieName = 'rungbench_session';

/** A body or a path read through its schema. @throws Refusal (400) that says what is wrong. */
export function read<T>(schema: z.ZodType<T>, value: unknown): T {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const place = issue.path.map(String).join('.');
  throw new Refusal(400, `${place === '' ? 'The request' : `"${place}"`} ${said(issue.message)}.`);
}

/** Our own messages begin with a verb; the library's are sentences. */
const said = (message: string): string =>
  /^(is|has|begins)\b/.test(message)
    ? message.replace(/\.$/, '')
    : `is not as it should be: ${message.replace(/\.$/, '')}`;

/** Who is signed in. @throws Refusal (401) where nobody is, (403) where the request may come from another site. */
export async function signedIn(school: School, request: FastifyRequest): Promise<Session> {
  const session = await school.accounts.session(request.cookies[cookieName]);
  if (!session) throw new Refusal(401, 'Sign in first.');
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    const token = request.headers['x-csrf'];
    if (typeof token !== 'string' || !sameSecret(token, session.csrf)) {
      throw new Refusal(403, 'This page is out of date. Reload it and try again.');
    }
  }
  return session;
}

/** Whether a request comes from a page of this server, as far as its `Origin` tells. */
export function isOwnOrigin(request: FastifyRequest): boolean {
  const {origin} = request.headers;
  if (origin === undefined) return false;
  try {
    return new URL(origin).host === request.host;
  } catch {
    return false;
  }
}

/** Errors as the pages take them; the text of an unforeseen one stays in the server. */
export function sendError(error: unknown, reply: FastifyReply): void {
  if (error instanceof Refusal) {
    void reply.code(error.status).send({error: error.message});
    return;
  }
  const status = (error as {statusCode?: number}).statusCode;
  if (status === 429) {
    void reply.code(429).send({error: 'Too many requests. Wait a minute and try again.'});
  } else if (status === 413) {
    void reply.code(413).send({error: 'That is more than this server takes at once.'});
  } else if (status !== undefined && status >= 400 && status < 500) {
    void reply.code(status).send({error: 'The request could not be understood. Reload the page.'});
  } else if (isFull(error)) {
    void reply.code(503).send({
      error:
        'The records cannot be written just now: the disk is full or the data folder is read-only. Nothing that was confirmed is lost.',
    });
  } else {
    void reply
      .code(500)
      .send({error: 'Something went wrong on the server. Reload the page and try again.'});
  }
}

const isFull = (error: unknown): boolean =>
  /disk is full|readonly|read-only|SQLITE_FULL|SQLITE_IOERR|disk I\/O|ENOSPC|EROFS|unable to open/i.test(
    `${(error as {code?: string}).code ?? ''} ${error instanceof Error ? error.message : ''}`,
  );
