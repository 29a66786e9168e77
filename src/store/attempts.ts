import type {AttemptStore} from './attempt-store.ts';
import {MemoryStore} from './memory-store.ts';

export {StoreError} from './attempt-store.ts';
export type {
  AttemptHead,
  AttemptProgress,
  AttemptPurpose,
  AttemptStage,
  AttemptStore,
  KeptHookup,
  KeptTask,
  KeptUnit,
  NewAttempt,
  StoreChange,
  StoreErrorCode,
} from './attempt-store.ts';

/** How the store stands: `notice` is a sentence for people when things will not be kept, or no longer are. */
export interface StoreState {
  readonly notice?: string;
}

let opening: Promise<AttemptStore> | undefined;
let state: StoreState = {};
const stateListeners = new Set<(state: StoreState) => void>();

/**
 * The one store of this tab, opened on first use: IndexedDB, or the tab's own memory where the browser refuses
 * (then {@link onStoreState} tells a sentence for people). Never rejects.
 */
export function openAttempts(): Promise<AttemptStore> {
  opening ??= open();
  return opening;
}

/** Tells the present state at once and every change after. Returns what stops listening. */
export function onStoreState(tell: (state: StoreState) => void): () => void {
  stateListeners.add(tell);
  tell(state);
  return () => stateListeners.delete(tell);
}

/** For tests: makes `store` the one that {@link openAttempts} gives. */
export function useStore(store: AttemptStore): void {
  opening = Promise.resolve(store);
  setState({});
}

async function open(): Promise<AttemptStore> {
  try {
    if (typeof indexedDB === 'undefined') throw new Error('no IndexedDB');
    const {openIndexedDbStore} = await import('./indexed-db-store.ts');
    return await withinSeconds(
      5,
      openIndexedDbStore((reason) => setState({notice: reason})),
    );
  } catch {
    setState({
      notice:
        'This browser does not let Rungbench keep anything on this device. You can work, but your calls are gone when you close or reload this tab. Leave private browsing, or allow site data for this page, to keep them.',
    });
    return new MemoryStore();
  }
}

/** Some browsers never answer when storage is blocked; do not wait for them for ever. */
function withinSeconds<T>(seconds: number, work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('no answer')), seconds * 1000);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

function setState(next: StoreState): void {
  state = next;
  for (const tell of stateListeners) tell(state);
}
