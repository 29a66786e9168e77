import type {FastifyInstance} from 'fastify';
import type {School} from './school.ts';

/** Gradebook, exports, a student's records. */
export function recordRoutes(app: FastifyInstance, school: School): void {
  void app;
  void school;
}
