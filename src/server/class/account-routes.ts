import type {FastifyInstance, FastifyReply, FastifyRequest} from 'fastify';
import {
  firstStartBody,
  newInstructorBody,
  passphraseBody,
  signInBody,
  type Hello,
  type SignedIn,
} from '../../classroom/protocol/rest.ts';
import {BackOff} from './back-off.ts';
import {isPassphrase, passphraseHash} from './passphrase.ts';
import {Refusal} from './refusal.ts';
import {cookieName, isOwnOrigin, read, signedIn} from './requests.ts';
import type {School} from './school.ts';
import {sameSecret} from './secrets.ts';

/** First start, signing in and out, further instructors. */
export function accountRoutes(app: FastifyInstance, school: School): void {
  const {accounts} = school;
  const failures = new BackOff();

  const begin = async (
    request: FastifyRequest,
    reply: FastifyReply,
    instructor: {id: string; name: string},
  ): Promise<SignedIn> => {
    const {cookie, session} = await accounts.begin(instructor);
    reply.setCookie(cookieName, cookie, {
      path: '/api',
      httpOnly: true,
      sameSite: 'strict',
      // over plain http on a school's own network a secure cookie would never come back
      secure: request.protocol === 'https',
    });
    return {name: session.name, csrf: session.csrf};
  };

  const mayTry = (reply: FastifyReply, ...keys: string[]): void => {
    const waitMs = Math.max(...keys.map((key) => failures.waitMs(key)));
    if (waitMs === 0) return;
    const seconds = Math.ceil(waitMs / 1000);
    reply.header('retry-after', seconds);
    throw new Refusal(429, `Too many wrong tries. Wait ${seconds} seconds and try again.`);
  };

  /** Another site must not sign a browser in either. */
  const fromOwnPage = (request: FastifyRequest): void => {
    if (request.headers.origin !== undefined && !isOwnOrigin(request)) {
      throw new Refusal(403, 'This must be asked from a page of this server.');
    }
  };

  app.get('/hello', async (): Promise<Hello> => ({
    rungbench: 'class server',
    firstStart: await accounts.isEmpty(),
    addresses: school.addresses,
  }));

  app.post('/first-start', async (request, reply) => {
    fromOwnPage(request);
    const {key, name, passphrase} = read(firstStartBody, request.body);
    mayTry(reply, `first ${request.ip}`);
    if (!(await accounts.isEmpty())) {
      throw new Refusal(409, 'There is an instructor already. Sign in instead.');
    }
    if (!sameSecret(key, school.firstStartKey)) {
      failures.fail(`first ${request.ip}`);
      throw new Refusal(
        403,
        'The key is not the one that the terminal shows. Open the address that is printed there.',
      );
    }
    if (!(await accounts.addFirst(name, await passphraseHash(passphrase)))) {
      throw new Refusal(409, 'There is an instructor already. Sign in instead.');
    }
    return begin(request, reply, (await accounts.byName(name))!);
  });

  app.post('/sign-in', async (request, reply) => {
    fromOwnPage(request);
    const {name, passphrase} = read(signInBody, request.body);
    const keys = [`name ${name.toLowerCase()}`, `from ${request.ip}`];
    mayTry(reply, ...keys);
    // counted before the hash is worked out, so that many tries at once do not slip by
    for (const key of keys) failures.fail(key);
    const instructor = await accounts.byName(name);
    if (!(await isPassphrase(passphrase, instructor?.passphrase)) || !instructor) {
      for (const key of keys) failures.waitFromNow(key);
      throw new Refusal(401, 'Name and passphrase do not go together.');
    }
    for (const key of keys) failures.succeed(key);
    return begin(request, reply, instructor);
  });

  app.get('/signed-in', async (request): Promise<SignedIn> => {
    const {name, csrf} = await signedIn(school, request);
    return {name, csrf};
  });

  app.post('/sign-out', async (request, reply) => {
    await signedIn(school, request);
    await accounts.end(request.cookies[cookieName]!);
    reply.clearCookie(cookieName, {path: '/api'});
    return {};
  });

  app.post('/passphrase', async (request, reply) => {
    const {instructor, name} = await signedIn(school, request);
    const {current, passphrase} = read(passphraseBody, request.body);
    // somebody at a page left open must not guess on without end
    const key = `passphrase ${name.toLowerCase()}`;
    mayTry(reply, key);
    failures.fail(key);
    const kept = (await accounts.byName(name))!.passphrase;
    if (!(await isPassphrase(current, kept))) {
      failures.waitFromNow(key);
      throw new Refusal(403, 'The passphrase until now is another one.');
    }
    failures.succeed(key);
    await accounts.changePassphrase(
      instructor,
      await passphraseHash(passphrase),
      request.cookies[cookieName]!,
    );
    return {};
  });

  app.post('/instructors', async (request) => {
    await signedIn(school, request);
    const {name, passphrase} = read(newInstructorBody, request.body);
    if (!(await accounts.add(name, await passphraseHash(passphrase)))) {
      throw new Refusal(409, `There is an instructor "${name}" already.`);
    }
    return {};
  });
}
