import {parentPort} from 'node:worker_threads';
import {LongWork, type LongJob, type LongJobs} from '../../classroom/long-jobs.ts';
import {shippedContent} from './shipped-content.ts';

const work = new LongWork(shippedContent);

parentPort!.on(
  'message',
  ({number, job, ask}: {number: number; job: LongJob; ask: LongJobs[LongJob]['ask']}) => {
    try {
      parentPort!.postMessage({number, answer: work.do(job, ask)});
    } catch (error) {
      parentPort!.postMessage({
        number,
        failed: error instanceof Error ? error.message : String(error),
      });
    }
  },
);
