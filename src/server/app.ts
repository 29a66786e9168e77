import fastifyStatic from '@fastify/static';
import fastify, {type FastifyInstance} from 'fastify';
import {classServer} from './class/class-server.ts';
import type {School} from './class/school.ts';

/**
 * What a page of the tutor may do: load its own files, and nothing else. No inline script or style,
 * no address outside this server. Lit needs no exception, since it adopts constructed style sheets.
 */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Longest body that any route takes: a roster of a thousand names. */
const longestBody = 200_000;

/** A year: built files carry a hash of their content in their name, so they never change. */
const hashedMaxAgeSeconds = 31_536_000;

/**
 * The web server of the tutor, not yet listening: the built app in `dist`, compressed copies where
 * the build left them (`*.br`, `*.gz`). With a school, the class server too, below `/api`.
 */
export async function createApp(
  dist: string,
  school?: School,
  {trustProxy = false}: {readonly trustProxy?: boolean | string} = {},
): Promise<FastifyInstance> {
  const app = fastify({
    logger: false,
    forceCloseConnections: true,
    trustProxy,
    bodyLimit: longestBody,
  });
  app.addHook('onSend', async (_request, reply) => {
    reply.headers({
      'content-security-policy': contentSecurityPolicy,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
    });
  });
  if (school) await classServer(app, school);
  await app.register(fastifyStatic, {
    root: dist,
    preCompressed: true,
    cacheControl: false,
    setHeaders(response, path) {
      const hashed = /[\\/]assets[\\/]/.test(path);
      response.setHeader(
        'cache-control',
        hashed ? `public, max-age=${hashedMaxAgeSeconds}, immutable` : 'no-cache',
      );
    },
  });
  app.setNotFoundHandler(async (request, reply) => {
    reply.code(404).type('text/plain; charset=utf-8');
    return `There is no ${request.url} here. The tutor starts at /.\n`;
  });
  return app;
}
