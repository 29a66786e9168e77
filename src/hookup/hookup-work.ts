import {Bench} from '../bench/bench.ts';
import type {Action} from '../bench/actions.ts';
import type {SafetyFinding} from '../bench/bench-view.ts';
import {doneText} from '../bench/done-text.ts';
import type {Unit} from '../content/unit.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import {checkHookup, type HookupReport} from './check-hookup.ts';
import {findingTitles, type Finding} from './finding.ts';
import {hookedUnit} from './hooked-unit.ts';
import type {Deed, TimedDeed} from './hookup-deed.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';
import {operateWaiting} from './operate-waiting.ts';
import {
  alterWire,
  beginWiring,
  putWire,
  redo,
  takeWire,
  undo,
  type WireHistory,
} from './wire-history.ts';

/** What counts in the grade of a task. */
export interface HookupCounts {
  readonly checks: number;
  /** Wrong verdicts before the first right one. */
  readonly corrections: number;
  readonly solved: boolean;
  readonly energisings: number;
  /** Of these on wires that are a danger with power on. */
  readonly unsafeEnergisings: number;
  /** Of these without an ohms or continuity reading on the dead circuit before. */
  readonly unreadEnergisings: number;
  /** Ohms and continuity readings on the dead circuit before power. */
  readonly deadReadings: number;
  /** Wires at the first right verdict; until then those that are in. */
  readonly wiresUsed: number;
  readonly minutes: number;
}

/** A line of the debrief: what was done and what came of it. */
export interface WorkLine {
  readonly atMinutes: number;
  readonly is: 'wiring' | 'check' | 'reading' | 'power' | 'bench' | 'safety';
  readonly text: string;
  readonly tone?: 'good' | 'caution' | 'danger';
}

/** What came of a deed: refused with a sentence, or done. */
export interface Outcome {
  readonly refused?: string;
  /** The wire that it was about. */
  readonly wire?: string;
}

/** Whether power on these wires is a danger: a short, a path that no fuse guards, metal that is not bonded. */
export const isUnsafe = ({findings}: Pick<HookupReport, 'findings'>): boolean =>
  findings.some(
    ({kind}) => kind === 'dead-short' || kind === 'unfused-path' || kind === 'not-bonded',
  );

/**
 * A student's work at one task: wires, bench, verdicts, and what counts. A pure function of the task and the deeds done
 * so far, so that it is kept as its deeds and given back exactly by doing them again.
 */
export class HookupWork {
  readonly task: HookupTask;
  private readonly done: TimedDeed[] = [];
  private history: WireHistory;
  private wired: Unit | undefined;
  private made: Bench | undefined;
  private judged: HookupReport | undefined;
  private first: readonly Finding[] | undefined;
  private usedWhenRight: number | undefined;
  private readonly told: WorkLine[] = [];
  private readonly breaches: SafetyFinding[] = [];
  private function: MeterFunction = 'ac-volts';
  private hasPower = false;
  private hasRead = false;
  private tally = {
    checks: 0,
    corrections: 0,
    solved: false,
    energisings: 0,
    unsafeEnergisings: 0,
    unreadEnergisings: 0,
    deadReadings: 0,
  };

  constructor(task: HookupTask) {
    this.task = task;
    this.history = beginWiring(task);
  }

  /** Does a row of deeds on a new board. Throws an Error that names the first one that cannot be done. */
  static replay(task: HookupTask, deeds: readonly TimedDeed[]): HookupWork {
    const work = new HookupWork(task);
    for (const [i, deed] of deeds.entries()) {
      const {refused} = work.do(deed);
      if (refused !== undefined)
        throw new Error(`Deed ${i + 1} (${deed.do}) of this work cannot be done again: ${refused}`);
    }
    return work;
  }

  get deeds(): readonly TimedDeed[] {
    return this.done;
  }

  get wires(): readonly HookupWire[] {
    return this.history.wires;
  }

  get canUndo(): boolean {
    return this.history.past.length > 0;
  }

  get canRedo(): boolean {
    return this.history.future.length > 0;
  }

  /** The unit that stands there with the wires as they are. */
  get unit(): Unit {
    return (this.wired ??= hookedUnit(this.task, this.wires));
  }

  /** The bench, while the board is on it. */
  get bench(): Bench | undefined {
    return this.made;
  }

  /** The verdict on the wires as they are, once it was asked for. */
  get report(): HookupReport | undefined {
    return this.judged;
  }

  /** Findings of the first verdict, none where it was right; undefined before it. */
  get firstFindings(): readonly Finding[] | undefined {
    return this.first;
  }

  /** What was done, for the debrief. */
  get lines(): readonly WorkLine[] {
    return this.told;
  }

  /** Breaches of safe practice at the bench, over all the times that the board was on it. */
  get safety(): readonly SafetyFinding[] {
    return this.breaches;
  }

  get counts(): HookupCounts {
    return {
      ...this.tally,
      wiresUsed: this.usedWhenRight ?? this.wires.length,
      minutes: this.done.at(-1)?.atMinutes ?? 0,
    };
  }

  /** Does one deed, or refuses it with the reason. A refused deed leaves no trace. */
  do(deed: TimedDeed): Outcome {
    const outcome = this.perform(deed);
    if (outcome.refused === undefined) this.done.push(deed);
    return outcome;
  }

  private perform(deed: TimedDeed): Outcome {
    switch (deed.do) {
      case 'check':
        this.check(deed.atMinutes);
        return {};
      case 'bench':
        return this.putOnBench(deed.atMinutes);
      case 'act':
        return this.act(deed.action, deed.atMinutes);
      default:
        return this.wire(deed);
    }
  }

  private wire(deed: Exclude<TimedDeed, {do: 'check' | 'bench' | 'act'}>): Outcome {
    const after = changeOf(this.history, deed);
    if (after === this.history) return {refused: refusal(deed, this.history)};
    const before = this.history;
    this.history = after;
    // the wires are others now: verdict and power belong to the ones before
    this.wired = undefined;
    this.judged = undefined;
    this.made = undefined;
    const wire = wireOf(deed, before, after);
    this.tell(deed.atMinutes, 'wiring', wiringText(deed, wire, before));
    return {wire: wire?.id};
  }

  private check(atMinutes: number): void {
    const report = checkHookup(this.task, this.wires);
    this.judged = report;
    this.first ??= report.findings;
    this.tally.checks++;
    const right = report.verdict === 'right';
    if (!right && !this.tally.solved) this.tally.corrections++;
    if (right && !this.tally.solved) {
      this.tally.solved = true;
      this.usedWhenRight = this.wires.length;
    }
    const titles = [...new Set(report.findings.map(({kind}) => findingTitles[kind].toLowerCase()))];
    this.tell(
      atMinutes,
      'check',
      `Checked: ${right ? 'right' : report.verdict === 'wrong' ? 'not right' : 'not proved'}${titles.length > 0 ? ` (${titles.join(', ')})` : ''}`,
      right ? 'good' : 'caution',
    );
  }

  private putOnBench(atMinutes: number): Outcome {
    if (this.wires.length === 0) return {refused: 'There is no wire yet: put some in first.'};
    this.made = new Bench({
      unit: this.unit,
      faults: [],
      complaint: 'A board that was just wired.',
      seed: 0,
      operate: operateWaiting,
    });
    this.function = 'ac-volts';
    this.hasPower = false;
    this.hasRead = false;
    this.tell(atMinutes, 'bench', 'Put it on the bench, power off');
    return {};
  }

  private act(action: Action, atMinutes: number): Outcome {
    const bench = this.made;
    if (!bench) return {refused: 'The board is not on the bench: put it there first.'};
    const known = bench.view().safety.length;
    const result = bench.act(action);
    if ('refused' in result) return result;
    if (action.do === 'meter') this.function = action.function;
    else if (action.do === 'read') this.countReading(action, atMinutes);
    else if (this.closesPower(action)) this.countPower(action, atMinutes);
    for (const breach of bench.view().safety.slice(known)) {
      this.breaches.push(breach);
      this.tell(atMinutes, 'safety', breach.text, breach.severity);
    }
    return {};
  }

  private countReading(action: Action & {do: 'read'}, atMinutes: number): void {
    const isDead = !this.hasPower && (this.function === 'ohms' || this.function === 'continuity');
    if (!isDead) return;
    this.hasRead = true;
    this.tally.deadReadings++;
    this.tell(
      atMinutes,
      'reading',
      `Read ${this.function} on the dead circuit, ${action.red} to ${action.black}`,
      'good',
    );
  }

  private countPower(action: Action & {do: 'set'}, atMinutes: number): void {
    // a second pole of the same power does not energise it once more
    if (this.hasPower) return;
    this.hasPower = true;
    const report = this.judged ?? checkHookup(this.task, this.wires);
    const unsafe = isUnsafe(report);
    this.tally.energisings++;
    if (unsafe) this.tally.unsafeEnergisings++;
    if (!this.hasRead) this.tally.unreadEnergisings++;
    const why = report.findings.find((finding) => isUnsafe({findings: [finding]}));
    this.tell(
      atMinutes,
      'power',
      `${doneText(action, this.unit)}${why ? `: ${why.cause}` : '.'}${this.hasRead ? '' : ' No ohms were read before.'}`,
      unsafe ? 'danger' : this.hasRead ? 'good' : 'caution',
    );
  }

  /** Whether an action closes a breaker or disconnect. */
  closesPower(action: Action): action is Action & {do: 'set'} {
    if (action.do !== 'set') return false;
    const {target, value} = action;
    const [part, control] = target.split('.');
    const isolates = this.task.parts
      .find(({id}) => id === part)
      ?.controls.some(({id, isolates: does}) => id === control && does === true);
    return isolates === true && (value === 'on' || value === 'closed');
  }

  private tell(atMinutes: number, is: WorkLine['is'], text: string, tone?: WorkLine['tone']): void {
    this.told.push({atMinutes, is, text, ...(tone ? {tone} : {})});
  }
}

type WiringDeed = Exclude<Deed, {do: 'check' | 'bench' | 'act'}>;

function changeOf(history: WireHistory, deed: WiringDeed): WireHistory {
  switch (deed.do) {
    case 'put':
      return putWire(history, deed.wire);
    case 'take':
      return takeWire(history, deed.wire);
    case 'alter':
      return alterWire(history, deed.wire, deed.change);
    case 'undo':
      return undo(history);
    case 'redo':
      return redo(history);
  }
}

function refusal(deed: WiringDeed, {wires}: WireHistory): string {
  switch (deed.do) {
    case 'undo':
      return 'There is nothing to undo.';
    case 'redo':
      return 'There is nothing to do again.';
    case 'put':
      return deed.wire.from === deed.wire.to
        ? 'A wire needs two terminals.'
        : `There is a wire from ${deed.wire.from} to ${deed.wire.to} already.`;
    default: {
      const wire = wires.find(({id}) => id === deed.wire);
      if (!wire) return `There is no wire ${deed.wire}.`;
      if (deed.do === 'take') return `Wire ${deed.wire} stays.`;
      const {from, to} = {...wire, ...deed.change};
      if (from === to) return 'A wire needs two terminals.';
      return from === wire.from && to === wire.to
        ? `Wire ${wire.id} is so already.`
        : `There is a wire from ${from} to ${to} already.`;
    }
  }
}

function wireOf(deed: WiringDeed, before: WireHistory, after: WireHistory): HookupWire | undefined {
  if (deed.do === 'put') return after.wires.at(-1);
  if (deed.do === 'take') return before.wires.find(({id}) => id === deed.wire);
  if (deed.do === 'alter') return after.wires.find(({id}) => id === deed.wire);
  return undefined;
}

function wiringText(deed: WiringDeed, wire: HookupWire | undefined, before: WireHistory): string {
  switch (deed.do) {
    case 'put':
      return `Wire ${wire!.id} from ${wire!.from} to ${wire!.to}`;
    case 'take':
      return `Took ${wire!.id} off (${wire!.from} to ${wire!.to})`;
    case 'alter': {
      const was = before.wires.find(({id}) => id === deed.wire)!;
      for (const end of ['from', 'to'] as const)
        if (was[end] !== wire![end]) return `Moved ${wire!.id} from ${was[end]} to ${wire![end]}`;
      return `Made ${wire!.id} ${wire!.gauge} AWG ${wire!.colour}`;
    }
    case 'undo':
      return 'Undid the last deed';
    case 'redo':
      return 'Did it again';
  }
}
