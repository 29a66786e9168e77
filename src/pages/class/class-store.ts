import type {DeskItem} from '../../classroom/protocol/student-messages.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {MemoryStore} from '../../store/memory-store.ts';
import {attemptOfAssignment} from './class-place.ts';

/** The bench's settings are this device's also in a class; the attempt itself lives on the server. */
class ClassStore extends MemoryStore {
  override async setting(name: string): Promise<string | undefined> {
    return (await openAttempts()).setting(name);
  }

  override async putSetting(name: string, value: string): Promise<void> {
    await (await openAttempts()).putSetting(name, value);
  }
}

/**
 * What stands in on this device for a call of the class: a record without a fault and without its actions, which the
 * server keeps. It goes with the tab, so that no other person at this device finds it.
 */
export async function storeOfCall(item: DeskItem): Promise<AttemptStore> {
  const store = new ClassStore();
  await store.add(
    {
      format: 'rungbench-attempt',
      version: 1,
      id: attemptOfAssignment(item.assignment),
      unit: item.unit,
      complaint: item.complaint ?? '',
      sealed: '',
      seed: 0,
      begunAt: new Date().toISOString(),
      actions: [],
    },
    {unitTitle: item.title, purpose: 'call', progress: {minutes: 0, stage: 'working'}},
  );
  return store;
}
