import cookie from '@fastify/cookie';
import rateLimit from '@fastify/rate-limit';
import websocket from '@fastify/websocket';
import type {FastifyInstance} from 'fastify';
import {accountRoutes} from './account-routes.ts';
import {classRoutes} from './class-routes.ts';
import {InstructorSocket} from './instructor-socket.ts';
import {recordRoutes} from './record-routes.ts';
import {cookieName, isOwnOrigin, sendError} from './requests.ts';
import type {School} from './school.ts';
import {StudentSocket} from './student-socket.ts';
import {WallSocket} from './wall-socket.ts';

/** Longest frame on any socket; each kind of socket takes less. */
const longestFrame = 65_536;
/** A school's phones may all come through one address. */
const requestsPerMinute = 3000;

/** Puts the class server below `/api`. */
export async function classServer(app: FastifyInstance, school: School): Promise<void> {
  await app.register(cookie);
  await app.register(rateLimit, {
    global: false,
    max: requestsPerMinute,
    timeWindow: '1 minute',
  });
  await app.register(websocket, {
    options: {maxPayload: longestFrame, perMessageDeflate: false, skipUTF8Validation: false},
  });
  await app.register(
    async (api) => {
      api.addHook('onRequest', api.rateLimit());
      api.addHook('onRequest', async (_request, reply) => {
        reply.header('cache-control', 'no-store');
      });
      api.setErrorHandler((error, _request, reply) => sendError(error, reply));
      api.setNotFoundHandler(async (_request, reply) => {
        reply.code(404);
        return {error: 'There is nothing at this address.'};
      });
      accountRoutes(api, school);
      classRoutes(api, school);
      recordRoutes(api, school);
      sockets(api, school);
    },
    {prefix: '/api'},
  );
}

function sockets(api: FastifyInstance, school: School): void {
  api.register(async (scope) => {
    // a page of another site could open a socket with this browser's cookie
    scope.addHook('preValidation', async (request, reply) => {
      if (!isOwnOrigin(request)) {
        await reply.code(403).send({error: 'This must be asked from a page of this server.'});
      }
    });
    scope.get('/socket/student', {websocket: true}, (socket) => {
      new StudentSocket(school, socket);
    });
    scope.get('/socket/wall', {websocket: true}, (socket) => {
      new WallSocket(school, socket);
    });
    scope.get(
      '/socket/instructor',
      {
        websocket: true,
        preValidation: async (request, reply) => {
          if (!(await school.accounts.session(request.cookies[cookieName]))) {
            await reply.code(401).send({error: 'Sign in first.'});
          }
        },
      },
      async (socket, request) => {
        const session = await school.accounts.session(request.cookies[cookieName]);
        if (session) new InstructorSocket(school, socket, session);
        else socket.close();
      },
    );
  });
}
