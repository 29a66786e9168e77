import type {Box, Point} from './drawing.ts';
import {assignTracks, type Stretch, type Tracks} from './channel-tracks.ts';
import {straighten, type Placement} from './connection-graph.ts';
import type {LanePlan} from './lane-plan.ts';
import {
  BOX_GAP,
  BOX_INSET,
  BOX_TOP,
  LANE_GAP,
  LANE_PITCH,
  LANE_TOP,
  LEAST_CHANNEL,
  MARGIN_X,
  MARGIN_Y,
  PART_GAP,
  TRACK_GAP,
  TRACK_PITCH,
} from './lane-spacing.ts';
import {solveHeights, type Attraction, type Separation} from './network-simplex.ts';
import {labelWidth} from './text-width.ts';

/** What heights are weighed by: straight wires first, then a low sheet. */
const LANE_TO_LANE = 6;
const LANE_TO_LUG = 3;
const LUG_TO_LUG = 2;
const BOX_HEIGHT = 0.2;

/** Gives a plan coordinates: heights by network simplex, tracks channel by channel. Undefined where wires cannot be kept apart. */
export function placeLanes(plan: LanePlan, sheetWeight: number): Placement | undefined {
  const apart: Separation[] = [];
  for (let round = 0; round < 8; round++) {
    const heights = heightsOf(plan, sheetWeight, apart);
    if (!heights) return undefined;
    const channels = Array.from({length: plan.columnCount + 1}, (_, channel) =>
      channelOf(plan, heights, channel),
    );
    const clashes = channels.flatMap(({zones}) =>
      zones.flatMap(({tracks, channel}) => tracks.clashes.map((clash) => ({...clash, channel}))),
    );
    if (clashes.length === 0) return coordinates(plan, heights, channels);
    for (const {wire, other, channel} of clashes) {
      const a = plan.pinsIn(wire, channel).find((pin) => !plan.fromLeft(pin, channel))!;
      const b = plan.pinsIn(other, channel).find((pin) => plan.fromLeft(pin, channel))!;
      // apart in the way that they already lean; level ones by what each comes from
      const lean = heights.pin(a) - heights.pin(b) || plan.heightKey(a) - plan.heightKey(b);
      const [upper, lower] = lean < 0 ? [a, b] : [b, a];
      apart.push({
        from: nodeOf(plan, upper),
        to: nodeOf(plan, lower),
        length: LANE_PITCH + offsetOf(plan, upper) - offsetOf(plan, lower),
        weight: 0,
      });
    }
  }
  return undefined;
}

const offsetOf = (plan: LanePlan, pin: number): number => (pin < 0 ? 0 : plan.endY[pin]!);

/** Nodes: 0 and 1 are the sheet's edges, then items by number. */
const nodeOf = (plan: LanePlan, pin: number): number => 2 + plan.itemOf(pin);

interface Heights {
  readonly item: (item: number) => number;
  readonly pin: (pin: number) => number;
  readonly sheet: number;
}

function heightsOf(
  plan: LanePlan,
  sheetWeight: number,
  apart: readonly Separation[],
): Heights | undefined {
  // only items that stand somewhere are nodes
  const used = new Map<number, number>([
    [0, 0],
    [1, 1],
  ]);
  const node = (raw: number): number => {
    let index = used.get(raw);
    if (index === undefined) used.set(raw, (index = used.size));
    return index;
  };
  const separations: Separation[] = [{from: 0, to: 1, length: 0, weight: sheetWeight}];
  const separate = (from: number, to: number, length: number, weight = 0): void => {
    separations.push({from, to, length, weight});
  };
  for (const items of plan.layers) {
    let before = -1;
    for (const item of [...items, -1]) {
      if (before < 0) {
        if (item >= 0) separate(0, node(2 + item), MARGIN_Y);
      } else if (item < 0) separate(node(2 + before), 1, below(plan, before, item));
      else separate(node(2 + before), node(2 + item), below(plan, before, item));
      before = item;
    }
  }
  plan.ranges.forEach((range, e) => {
    if (range) separate(node(2 + plan.topOf(e)), node(2 + plan.bottomOf(e)), 60, BOX_HEIGHT);
  });
  for (const it of apart) separations.push({...it, from: node(it.from), to: node(it.to)});
  const attractions: Attraction[] = [];
  for (let wire = 0; wire < plan.low.length; wire++)
    for (let channel = plan.low[wire]!; channel <= plan.high[wire]!; channel++) {
      const [a, b] = plan.pinsIn(wire, channel);
      if (plan.itemOf(a) === plan.itemOf(b)) continue;
      attractions.push({
        a: node(nodeOf(plan, a)),
        b: node(nodeOf(plan, b)),
        aOffset: offsetOf(plan, a),
        bOffset: offsetOf(plan, b),
        weight: a < 0 && b < 0 ? LANE_TO_LANE : a < 0 || b < 0 ? LANE_TO_LUG : LUG_TO_LUG,
      });
    }
  const solved = solveHeights(used.size, separations, attractions);
  if (!solved) return undefined;
  const item = (it: number): number => solved[used.get(2 + it)!]! - solved[0]!;
  return {
    item,
    pin: (pin) => item(plan.itemOf(pin)) + offsetOf(plan, pin),
    sheet: solved[1]! - solved[0]!,
  };
}

/** How far below one item the next begins; −1 is the lower edge of the sheet. */
function below(plan: LanePlan, upper: number, lower: number): number {
  const part = plan.isPart(upper);
  const height = part ? plan.shapes[upper]!.height : 0;
  if (lower < 0) return height + MARGIN_Y;
  if (part)
    return height + (plan.isPart(lower) ? PART_GAP : plan.isLane(lower) ? LANE_GAP : BOX_INSET);
  if (plan.isLane(upper)) return plan.isLane(lower) ? LANE_PITCH : LANE_GAP;
  if (plan.isTop(upper)) return plan.isPart(lower) ? BOX_TOP : plan.isLane(lower) ? LANE_TOP : 60;
  return plan.isLane(lower) ? LANE_GAP : BOX_GAP;
}

interface Zone {
  readonly channel: number;
  readonly stretches: readonly Stretch[];
  readonly tracks: Tracks;
}

/** A channel's tracks: those within enclosures that end here, those between, those within enclosures that begin here. */
interface Channel {
  readonly zones: readonly [Zone, Zone, Zone];
}

function channelOf(plan: LanePlan, heights: Heights, channel: number): Channel {
  const zones: [Stretch[], Stretch[], Stretch[]] = [[], [], []];
  for (let wire = 0; wire < plan.low.length; wire++) {
    if (channel < plan.low[wire]! || channel > plan.high[wire]!) continue;
    const pins = plan.pinsIn(wire, channel);
    const left = pins.filter((pin) => plan.fromLeft(pin, channel)).map(heights.pin);
    const right = pins.filter((pin) => !plan.fromLeft(pin, channel)).map(heights.pin);
    const home = plan.home[plan.endPart[2 * wire]!]!;
    const own = home === plan.home[plan.endPart[2 * wire + 1]!]!;
    const range = plan.ranges[home]!;
    const zone =
      own && left.length === 2 && range.high === channel - 1
        ? 0
        : own && right.length === 2 && range.low === channel
          ? 2
          : 1;
    zones[zone].push({wire, left, right});
  }
  const zone = (stretches: readonly Stretch[]): Zone => ({
    channel,
    stretches,
    tracks: assignTracks(stretches),
  });
  return {zones: [zone(zones[0]), zone(zones[1]), zone(zones[2])]};
}

function coordinates(plan: LanePlan, heights: Heights, channels: readonly Channel[]): Placement {
  const round = (value: number): number => Math.round(value * 2) / 2;
  const {unit} = plan;
  const widths = plan.layers.map((items) =>
    Math.ceil(
      Math.max(0, ...items.map((item) => (plan.isPart(item) ? plan.shapes[item]!.width : 0))),
    ),
  );
  // an enclosure is never narrower than its title
  plan.ranges.forEach((range, e) => {
    if (!range || range.low !== range.high) return;
    const title = labelWidth(unit.enclosures[e]!.title, 'enclosure');
    widths[range.low] = Math.max(widths[range.low]!, Math.ceil(title) + 24 - 2 * BOX_INSET);
  });
  const leftEdge = new Map<number, number>();
  const rightEdge = new Map<number, number>();
  const columnX: number[] = [];
  const trackX: number[][][] = [];
  let x = MARGIN_X;
  channels.forEach(({zones}, k) => {
    const ending = plan.ranges.flatMap((range, e) => (range && range.high === k - 1 ? [e] : []));
    const beginning = plan.ranges.flatMap((range, e) => (range && range.low === k ? [e] : []));
    const start = x;
    const lay = (zone: Zone): number[] => {
      const xs = Array.from({length: zone.tracks.count}, (_, i) => x + i * TRACK_PITCH);
      if (xs.length > 0) x = xs[xs.length - 1]!;
      return xs;
    };
    // a gap before the tracks, the tracks, and the same gap after, or a plain gap where there are none
    const laid = zones.map((zone, i) => {
      if (i === 1 && ending.length === 0 && beginning.length === 0) {
        if (zone.tracks.count === 0) {
          x = start + LEAST_CHANNEL;
          return [];
        }
        const spare = Math.max(
          0,
          LEAST_CHANNEL - 2 * TRACK_GAP - (zone.tracks.count - 1) * TRACK_PITCH,
        );
        x += TRACK_GAP + spare / 2;
        const xs = lay(zone);
        x += TRACK_GAP + spare / 2;
        return xs;
      }
      if (i === 0 && ending.length === 0) return [];
      if (i === 2 && beginning.length === 0) return [];
      if (i === 1) {
        const outer = k === 0 || k === plan.columnCount;
        if (zone.tracks.count === 0) {
          if (!outer) x += ending.length > 0 && beginning.length > 0 ? BOX_GAP : LANE_GAP;
          return [];
        }
        if (k > 0) x += ending.length > 0 ? LANE_GAP : TRACK_GAP;
        const xs = lay(zone);
        if (k < plan.columnCount) x += beginning.length > 0 ? LANE_GAP : TRACK_GAP;
        return xs;
      }
      if (i === 2) for (const e of beginning) leftEdge.set(e, x);
      const before = x;
      if (zone.tracks.count > 0) x += TRACK_GAP;
      const xs = lay(zone);
      x = zone.tracks.count > 0 ? Math.max(x + TRACK_GAP, before + BOX_INSET) : x + BOX_INSET;
      if (i === 0) for (const e of ending) rightEdge.set(e, x);
      return xs;
    });
    trackX.push(laid);
    columnX.push(x);
    if (k < plan.columnCount) x += widths[k]!;
  });
  const width = x + MARGIN_X;
  const parts: Record<string, Box> = {};
  plan.layers.forEach((items, column) => {
    for (const item of items) {
      if (!plan.isPart(item)) continue;
      const shape = plan.shapes[item]!;
      parts[plan.parts[item]!.id] = {
        x: round(columnX[column]! + (widths[column]! - shape.width) / 2),
        y: round(heights.item(item)),
        width: round(shape.width),
        height: round(shape.height),
      };
    }
  });
  const enclosures: Record<string, Box> = {};
  plan.ranges.forEach((range, e) => {
    if (!range) return;
    const top = heights.item(plan.topOf(e));
    const left = leftEdge.get(e)!;
    enclosures[unit.enclosures[e]!.id] = {
      x: round(left),
      y: round(top),
      width: round(rightEdge.get(e)! - left),
      height: round(heights.item(plan.bottomOf(e)) - top),
    };
  });
  const wires: Record<string, readonly Point[]> = {};
  unit.wires.forEach(({id}, wire) => {
    const lugAt = (end: number): Point => {
      const part = plan.endPart[end]!;
      const box = parts[plan.parts[part]!.id]!;
      return {
        x: box.x + (plan.endRight[end] ? round(plan.shapes[part]!.width) : 0),
        y: round(heights.pin(end)),
      };
    };
    const points: Point[] = [lugAt(plan.lowEnd[wire]!)];
    for (let k = plan.low[wire]!; k <= plan.high[wire]!; k++) {
      const zoneIndex = channels[k]!.zones.findIndex(({stretches}) =>
        stretches.some((it) => it.wire === wire),
      );
      const {stretches, tracks} = channels[k]!.zones[zoneIndex]!;
      const track = tracks.track[stretches.findIndex((it) => it.wire === wire)]!;
      if (track < 0) continue;
      const at = round(trackX[k]![zoneIndex]![track]!);
      const [first, last] = plan.pinsIn(wire, k);
      points.push({x: at, y: round(heights.pin(first))}, {x: at, y: round(heights.pin(last))});
    }
    points.push(lugAt(plan.lowEnd[wire]! ^ 1));
    const corners = straighten(points);
    wires[id] = plan.lowEnd[wire] === 2 * wire ? corners : corners.reverse();
  });
  return {width: round(width), height: round(heights.sheet), enclosures, parts, wires};
}
