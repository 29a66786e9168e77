import type {AttemptStore} from '../../store/attempts.ts';

/** Settings of the bench that outlive an attempt. */
export interface BenchSettings {
  readonly muted: boolean;
  readonly shortcuts: boolean;
  readonly view: 'ladder' | 'connection';
}

const asGiven: BenchSettings = {muted: false, shortcuts: true, view: 'ladder'};
const name = 'bench';

/** The settings as they were left; as given where nothing was kept, or what was kept is not ours. */
export async function readSettings(store: AttemptStore): Promise<BenchSettings> {
  try {
    const kept: unknown = JSON.parse((await store.setting(name)) ?? '{}');
    const {muted, shortcuts, view} = (kept ?? {}) as Partial<Record<keyof BenchSettings, unknown>>;
    return {
      muted: typeof muted === 'boolean' ? muted : asGiven.muted,
      shortcuts: typeof shortcuts === 'boolean' ? shortcuts : asGiven.shortcuts,
      view: view === 'connection' ? 'connection' : 'ladder',
    };
  } catch {
    return asGiven;
  }
}

/** Losing a setting is no loss of work: a failure is let go. */
export async function keepSettings(store: AttemptStore, settings: BenchSettings): Promise<void> {
  await store.putSetting(name, JSON.stringify(settings)).catch(() => undefined);
}
