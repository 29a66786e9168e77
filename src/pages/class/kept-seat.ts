/** What a student's device keeps of a class: who sits here. Nothing of any call. */
export interface KeptSeat {
  readonly token: string;
  readonly name: string;
  readonly className: string;
}

const key = 'rungbench-seat';
let inThisTab: KeptSeat | undefined;

/** The seat of this device; undefined where nobody has joined. */
export function keptSeat(): KeptSeat | undefined {
  if (inThisTab) return inThisTab;
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    const {token, name, className} = (kept ?? {}) as Partial<Record<keyof KeptSeat, unknown>>;
    if (typeof token !== 'string' || typeof name !== 'string') return undefined;
    return {token, name, className: typeof className === 'string' ? className : ''};
  } catch {
    // storage blocked, or not ours
    return undefined;
  }
}

/** Keeps it; where storage is blocked, for as long as this tab lives. */
export function keepSeat(seat: KeptSeat): void {
  inThisTab = seat;
  try {
    localStorage.setItem(key, JSON.stringify(seat));
  } catch {
    // the tab remembers
  }
}

export function leaveSeat(): void {
  inThisTab = undefined;
  try {
    localStorage.removeItem(key);
  } catch {
    // nothing was kept
  }
}
