import type {AttemptHead, AttemptStore} from '../../store/attempts.ts';
import {WorkerBenchLink} from '../bench/worker-bench-link.ts';
import {desk} from '../desk/desk.ts';

/** Works out how a finished call was reasoned, in a worker, and keeps what it showed. Takes seconds. */
export async function judgeCall(store: AttemptStore, head: AttemptHead): Promise<void> {
  const record = await store.get(head.id);
  if (!record) return;
  const link = new WorkerBenchLink();
  try {
    await link.open(await desk().unit(store, head.unit), record);
    const {grade, occasions} = await link.reasoning();
    const {minutes, stage} = head;
    await store.mark(head.id, {minutes, stage, judged: {points: grade.points, occasions}});
  } finally {
    link.close();
  }
}
