import {resolve} from 'node:path';
import {build, isStale} from '../../src/server/build.ts';

/** Before the first end-to-end test: the app as people get it, built only when something changed. */
export default async function buildOnce(): Promise<void> {
  const root = resolve(import.meta.dirname, '../..');
  if (await isStale(root)) await build(root);
}
