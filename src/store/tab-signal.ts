import type {StoreChange} from './attempt-store.ts';

type Signal =
  | {readonly say: 'changed'; readonly change: StoreChange}
  | {readonly say: 'claimed'; readonly id: string; readonly tab: string};

/** Random name in letters and digits, without look-alikes. Needs no secure context. */
export function randomName(length: number): string {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789';
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (byte) => letters[byte % letters.length]).join('');
}

/** What the tabs of this browser tell each other about the store: changes and claims. */
export class TabSignal {
  readonly tab = randomName(12);
  private readonly channel: BroadcastChannel | undefined;
  private readonly changeListeners = new Set<(change: StoreChange) => void>();
  private readonly claimListeners = new Map<string, Set<() => void>>();

  constructor(name: string) {
    this.channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(name);
    this.channel?.addEventListener('message', (event: MessageEvent<Signal>) =>
      this.hear(event.data),
    );
  }

  changed(change: StoreChange): void {
    this.channel?.postMessage({say: 'changed', change} satisfies Signal);
    this.tellChange(change);
  }

  claimed(id: string): void {
    this.channel?.postMessage({say: 'claimed', id, tab: this.tab} satisfies Signal);
  }

  onChange(tell: (change: StoreChange) => void): () => void {
    this.changeListeners.add(tell);
    return () => this.changeListeners.delete(tell);
  }

  onTakenOver(id: string, tell: () => void): () => void {
    const listeners = this.claimListeners.get(id) ?? new Set();
    this.claimListeners.set(id, listeners.add(tell));
    return () => listeners.delete(tell);
  }

  close(): void {
    this.channel?.close();
  }

  private hear(signal: Signal): void {
    if (signal.say === 'changed') this.tellChange(signal.change);
    else if (signal.tab !== this.tab)
      for (const tell of this.claimListeners.get(signal.id) ?? []) tell();
  }

  private tellChange(change: StoreChange): void {
    for (const tell of [...this.changeListeners]) tell(change);
  }
}
