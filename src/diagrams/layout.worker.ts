import ELK from 'elkjs/lib/elk-api.js';
import ElkWorker from 'elkjs/lib/elk-worker.min.js?worker';
import type {Unit} from '../content/unit.ts';
import {quickBudget, searchLayout} from './connection-layout.ts';
import {toLayoutFile} from './layout-file.ts';

/** Lays out the connection drawing of a unit that a person wrote. One unit in, one layout (or a sentence) out. */
addEventListener('message', async ({data: unit}: MessageEvent<Unit>) => {
  const elk = new ELK({workerFactory: () => new ElkWorker()});
  try {
    const layout = await searchLayout(unit, (graph) => elk.layout(graph), quickBudget, 7);
    postMessage({layout: toLayoutFile(unit, layout)});
  } catch (error) {
    postMessage({failed: error instanceof Error ? error.message : String(error)});
  } finally {
    elk.terminateWorker();
  }
});
