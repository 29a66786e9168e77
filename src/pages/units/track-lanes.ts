/** A stretch of a wire along one gutter, channel or floor. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly wire: string;
}

/** Stretches by where they run, and after {@link Tracks.assign} the lane that each has got there. */
export class Tracks {
  private readonly stretches = new Map<string, Stretch[]>();
  private readonly lanes = new Map<string, Map<string, number>>();

  put(place: string, a: number, b: number, wire: string): void {
    const here = this.stretches.get(place) ?? [];
    here.push({from: Math.min(a, b), to: Math.max(a, b), wire});
    this.stretches.set(place, here);
  }

  /** Left-edge rule: sorted by where they begin, each takes the first lane that is free there. */
  assign(): void {
    for (const [place, stretches] of this.stretches) {
      const ends: number[] = [];
      const lanes = new Map<string, number>();
      for (const {from, to, wire} of [...stretches].sort(
        (a, b) => a.from - b.from || a.to - b.to,
      )) {
        const free = ends.findIndex((end) => end < from);
        const lane = free < 0 ? ends.length : free;
        ends[lane] = to;
        lanes.set(wire, lane);
      }
      this.lanes.set(place, lanes);
    }
  }

  lane(place: string, wire: string): number {
    return this.lanes.get(place)?.get(wire) ?? 0;
  }

  count(place: string): number {
    const lanes = this.lanes.get(place);
    return lanes?.size ? Math.max(...lanes.values()) + 1 : 0;
  }
}
