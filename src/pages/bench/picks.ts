import type {Action, Expectation} from '../../bench/actions.ts';
import {placeLead, probingFrom, takeLead, type Lead, type Probing} from '../../bench/probing.ts';
import type {BenchView, MeterView} from '../../bench/bench-view.ts';
import type {WireTool} from '../../bench/wire-work.element.ts';

/** What the next pick is for: a lead, the clamp's jaw, a wire to lift, the ends of a jumper, or only to mark. */
export type PickPurpose = 'lead' | 'clamp' | 'lift' | 'jumper' | 'mark';

/** What has been picked so far, on the drawing or in the lists. Only a reading or wire work makes an action of it. */
export interface Picks {
  readonly probing: Probing;
  /** Leads or jaw have moved since the last reading: the glass goes blank. */
  readonly moved: boolean;
  /** Terminal (`K1.A1`), lifted end (`W12.from`), wire or part picked last: marked and kept in view in both drawings. */
  readonly last?: string;
  /** Wire of which an end is to be lifted. */
  readonly wire?: string;
  readonly jumperFrom?: string;
  readonly jumperTo?: string;
}

/** What the drawing marks. */
export interface Marked {
  readonly part?: string;
  readonly wire?: string;
}

/** An attempt picked up again: the leads lie where the last reading left them, and red's place is marked. */
export function picksFrom(meter: MeterView): Picks {
  const probing = probingFrom(meter);
  return {probing, moved: false, last: probing.red ?? probing.black};
}

/** Which work the open panel stands for. */
export function purposeOf(panel: string, tool: WireTool, probes: 'leads' | 'clamp'): PickPurpose {
  if (panel === 'wires') return tool;
  if (probes === 'leads') return 'lead';
  return panel === 'read' ? 'clamp' : 'mark';
}

/** A terminal or a lifted end was picked. Where only wires are picked it changes nothing. */
export function pickTerminal(picks: Picks, terminal: string, purpose: PickPurpose): Picks {
  if (purpose === 'lead') {
    const probing = placeLead(picks.probing, terminal);
    return {...picks, probing, moved: true, last: terminal};
  }
  if (purpose !== 'jumper') return picks;
  const {jumperFrom, jumperTo} = picks;
  // both ends were down: this begins the next jumper
  if (jumperFrom === undefined || jumperTo !== undefined)
    return {...picks, jumperFrom: terminal, jumperTo: undefined, last: terminal};
  return terminal === jumperFrom ? picks : {...picks, jumperTo: terminal, last: terminal};
}

/** A wire was picked: for the jaw, to be lifted, or to be marked; picked again it is marked no more. */
export function pickWire(picks: Picks, wire: string, purpose: PickPurpose): Picks {
  if (purpose === 'lift') return {...picks, wire, last: wire};
  if (purpose === 'clamp')
    return {...picks, probing: {...picks.probing, clamp: wire}, moved: true, last: wire};
  return mark(picks, wire);
}

/** A part was picked, to be marked; picked again it is marked no more. */
export function pickPart(picks: Picks, part: string): Picks {
  return mark(picks, part);
}

function mark(picks: Picks, site: string): Picks {
  return {...picks, last: picks.last === site ? undefined : site};
}

export function takeInHand(picks: Picks, lead: Lead): Picks {
  return {...picks, probing: takeLead(picks.probing, lead)};
}

/** A jumper that hangs frees its two ends for the next one. */
export function afterJumper(picks: Picks, before: BenchView | undefined, now: BenchView): Picks {
  if (now.jumpers.length <= (before?.jumpers.length ?? 0)) return picks;
  return {...picks, jumperFrom: undefined, jumperTo: undefined};
}

/** The part at which, or the wire on which, the last pick was. */
export function markedBy({last}: Picks, wireIds: ReadonlySet<string>): Marked {
  if (last === undefined) return {};
  const site = last.split('.')[0];
  return wireIds.has(site) ? {wire: site} : {part: site};
}

/** Both leads are down, or the jaw is closed: there is something to read. */
export function isReady({probing: {red, black, clamp}}: Picks, probes: 'leads' | 'clamp'): boolean {
  return probes === 'clamp' ? clamp !== undefined : red !== undefined && black !== undefined;
}

/** The reading that these picks stand for; undefined while a lead hangs free. */
export function readingOf(
  {probing: {red, black, clamp}}: Picks,
  probes: 'leads' | 'clamp',
  expected: Expectation | undefined,
): Action | undefined {
  const said = expected ? {expected} : {};
  if (probes === 'clamp') return clamp ? {do: 'clamp', wire: clamp, ...said} : undefined;
  return red && black ? {do: 'read', red, black, ...said} : undefined;
}
