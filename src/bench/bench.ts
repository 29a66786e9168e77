import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import {circuitClasses} from '../faults/nets.ts';
import {calibrationOf} from '../meter/calibration.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {MeterFlaw} from '../meter/meter-condition.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import {operateUnit} from '../sequences/operate-unit.ts';
import type {Observation, OperatingUnit} from '../sequences/operating-unit.ts';
import type {Action} from './actions.ts';
import {actionCost} from './action-costs.ts';
import {controlsOf, type PlacedControl} from './bench-controls.ts';
import type {BenchView, LogEntry, SafetyFinding} from './bench-view.ts';
import {doneText} from './done-text.ts';
import {MeterInHand} from './meter-in-hand.ts';
import {bleedOhms, bleedSeconds, microampsAcross} from './meter-practice.ts';
import {Reach} from './reach.ts';
import {refusal} from './refuse-action.ts';
import type {Breach} from './breach.ts';
import {breachesAfter, breachesBefore} from './safe-practice.ts';
import {isolating} from './bench-controls.ts';
import type {Standing} from './standing.ts';
import {StandingUnit} from './standing-unit.ts';

export interface BenchSetup {
  readonly unit: Unit;
  /** The hidden faults; none for a healthy unit to explore. */
  readonly faults: readonly Fault[];
  readonly complaint: string;
  /** Decides the meter's own error; 0 = an exact meter. */
  readonly seed: number;
  /** What may be wrong with the meter; absent = it is sound, and nobody need wonder. */
  readonly meterFlaw?: MeterFlaw;
  /** How a unit is put into operation; {@link operateUnit} unless a test says otherwise. */
  readonly operate?: (unit: Unit, faults: readonly Fault[]) => OperatingUnit;
}

/** Done, with its line in the log (choosing a meter function leaves none), or refused with one sentence. */
export type ActResult = {readonly refused: string} | {readonly entry?: LogEntry};

/**
 * One attempt at one unit. A pure function of its set-up and the actions done so far: the same actions give
 * the same log, view and debrief, so an attempt is stored as its actions.
 *
 * The unit's clock stands still while a person works, and moves only by waiting; minutes of work are counted
 * apart. A refused action changes nothing and leaves no trace.
 */
export class Bench {
  readonly setup: BenchSetup;
  readonly operating: OperatingUnit;
  private readonly reach: Reach;
  private readonly controls: readonly PlacedControl[];
  private readonly classes: Standing['classes'];
  private readonly meter: MeterInHand;
  private readonly open = new Set<string>();
  private readonly locked = new Set<string>();
  private readonly lifted: string[] = [];
  private readonly jumpers: [string, string][] = [];
  private readonly lines: LogEntry[] = [];
  private readonly findings: SafetyFinding[] = [];
  private readonly done: {readonly action: Action; readonly entry?: LogEntry}[] = [];
  private readonly told = new Set<string>();
  private minutes = 0;
  private isolatedSince = 0;
  private stage: BenchView['stage'] = 'working';
  private names: {readonly fault: string; readonly evidence: readonly number[]}[] = [];
  private gaveUp = false;
  /** What has been worked out of the unit as it stands. */
  private still: StandingUnit | undefined;

  constructor(setup: BenchSetup) {
    this.setup = setup;
    this.operating = (setup.operate ?? operateUnit)(setup.unit, setup.faults);
    this.reach = new Reach(setup.unit);
    this.controls = controlsOf(setup.unit);
    this.classes = circuitClasses(setup.unit);
    this.meter = new MeterInHand(this.operating, calibrationOf(setup.seed), setup.meterFlaw);
  }

  /** Does a row of actions on a new bench. Throws an Error that names the first one that cannot be done. */
  static replay(setup: BenchSetup, actions: readonly Action[]): Bench {
    const bench = new Bench(setup);
    for (const [i, action] of actions.entries()) {
      const result = bench.act(action);
      if ('refused' in result) {
        throw new Error(
          `Action ${i + 1} (${action.do}) of this attempt cannot be done again: ${result.refused}`,
        );
      }
    }
    return bench;
  }

  /** Does one action, or refuses it with the reason. */
  act(action: Action): ActResult {
    const acting = this.acting(action, Infinity);
    for (;;) {
      const {done, value} = acting.next();
      if (done) return value;
    }
  }

  /**
   * {@link act} in steps, for whoever has others to serve meanwhile: a wait lets at most so many milliseconds pass at the
   * unit in one step. Until the last step the bench stands in the midst of the action: nothing else may be done at it.
   */
  *acting(action: Action, mostAtOnceMs: number): Generator<void, ActResult> {
    const refused = refusal(action, {
      ...this.standing(),
      stage: this.stage,
      faultIds: () => catalogue(this.setup.unit).map((fault) => fault.id),
      gaveUp: this.gaveUp,
    });
    if (refused !== undefined) return {refused};
    const breaches = breachesBefore(action, this.standing());
    const state = this.stillUnit().phrase;
    const blewBefore = this.meter.fusesBlown;
    if (changesUnit(action)) this.meter.beginWatching();
    const {network} = this.operating;
    if (action.do === 'wait')
      yield* this.meter.waiting(Math.round(action.seconds * 1000), mostAtOnceMs);
    const display = this.perform(action);
    // microamps leads lie in the circuit, and whatever is wired anew settles anew
    if (changesUnit(action)) this.still = undefined;
    if (changesUnit(action)) this.meter.checkFuse();
    if (network !== this.operating.network) this.still = undefined;
    breaches.push(...breachesAfter(action, this.standing()));
    const fuseBlew = this.meter.fusesBlown > blewBefore;
    if (fuseBlew) breaches.push(microampsAcross(this.meter.red!, this.meter.black!));
    this.minutes += actionCost(action);
    if (action.do === 'meter' || action.do === 'keep') {
      this.done.push({action});
      return {};
    }
    const index = this.lines.length;
    const entry: LogEntry = {
      index,
      kind: display ? 'reading' : action.do === 'note' ? 'note' : 'done',
      timeMs: this.operating.timeMs,
      minutes: this.minutes,
      // a reading is of the state that it found; what was done shows the state that it left
      state: display ? state : this.stillUnit().phrase,
      ...readingFields(action, this.meter.function),
      ...(this.meter.extremes && !display ? {extremes: this.meter.extremes} : {}),
      ...(fuseBlew ? {fuseBlew} : {}),
      ...(display && this.setup.meterFlaw !== undefined ? {toProve: true} : {}),
      ...(display ? {display} : {text: doneText(action, this.setup.unit)}),
      ...(action.do === 'hint' ? {hint: action.level} : {}),
      findings: this.report(breaches, index),
    };
    this.lines.push(entry);
    this.done.push({action, entry});
    if (changesUnit(action)) this.meter.unitChanged();
    return {entry};
  }

  /** All that a screen may know. Never a word of the fault. */
  view(): BenchView {
    const still = this.stillUnit();
    return {
      unitId: this.setup.unit.id,
      complaint: this.setup.complaint,
      timeMs: this.operating.timeMs,
      minutes: this.minutes,
      observations: still.sees,
      controls: still.controls,
      enclosures: still.enclosures,
      lifted: still.lifted,
      jumpers: still.jumpers,
      meter: this.meter.view(),
      log: [...this.lines],
      safety: [...this.findings],
      cautions: still.cautions(this.standing()),
      stage: this.stage,
    };
  }

  /** What can be seen and heard now, with the covers as they are. */
  get sees(): readonly Observation[] {
    return this.stillUnit().sees;
  }

  /** The actions done so far, in order: all that need be stored. */
  get actions(): readonly Action[] {
    return this.done.map(({action}) => action);
  }

  /** The actions with the line that each left in the log; choosing a meter function leaves none. */
  get history(): readonly {readonly action: Action; readonly entry?: LogEntry}[] {
    return this.done;
  }

  /** What the student named, in order, with the evidence given. */
  get named(): readonly {readonly fault: string; readonly evidence: readonly number[]}[] {
    return this.names;
  }

  get hasGivenUp(): boolean {
    return this.gaveUp;
  }

  private stillUnit(): StandingUnit {
    return (this.still ??= new StandingUnit(this.standing()));
  }

  private standing(): Standing {
    return {
      unit: this.setup.unit,
      operating: this.operating,
      reach: this.reach,
      controls: this.controls,
      classes: this.classes,
      open: this.open,
      locked: this.locked,
      lifted: this.lifted,
      jumpers: this.jumpers,
      function: this.meter.function,
      log: this.lines,
      isolatedSince: this.isolatedSince,
    };
  }

  /** Does an action that has been found possible. Gives what the meter shows, for a reading. */
  private perform(action: Action): MeterDisplay | undefined {
    switch (action.do) {
      case 'set':
        this.set(action.target, action.value);
        return undefined;
      case 'lock':
        this.locked.add(action.part);
        return undefined;
      case 'unlock':
        this.locked.delete(action.part);
        this.isolatedSince = this.lines.length;
        return undefined;
      case 'open-cover':
        this.open.add(action.enclosure);
        return undefined;
      case 'close-cover':
        this.open.delete(action.enclosure);
        return undefined;
      case 'meter':
        this.meter.choose(action.function);
        return undefined;
      case 'keep':
        this.meter.keep(action.what);
        return undefined;
      case 'renew':
        this.meter.renew(action.what);
        return undefined;
      case 'discharge':
        this.operating.bleed(action.from, action.to, bleedOhms, bleedSeconds);
        return undefined;
      case 'read':
        return this.meter.read(action.red, action.black);
      case 'clamp':
        return this.meter.clampOn(action.wire);
      case 'lift':
        this.operating.lift(action.end);
        this.lifted.push(action.end);
        return undefined;
      case 'land':
        this.operating.land(action.end);
        this.lifted.splice(this.lifted.indexOf(action.end), 1);
        return undefined;
      case 'jumper':
        this.operating.jumper(action.from, action.to);
        this.jumpers.push([action.from, action.to]);
        return undefined;
      case 'remove-jumper':
        this.removeJumper(action.from, action.to);
        return undefined;
      case 'name':
        this.names = [...this.names, {fault: action.fault, evidence: action.evidence}];
        this.stage = 'named';
        return undefined;
      case 'give-up':
        this.gaveUp = true;
        this.stage = 'named';
        return undefined;
      case 'clear':
        this.operating.repair();
        this.stage = 'cleared';
        return undefined;
      // time has passed already, in steps
      case 'wait':
      case 'note':
      case 'hint':
        return undefined;
    }
  }

  private set(target: string, value: string | number): void {
    const control = this.controls.find((each) => each.target === target)?.control;
    const moved =
      control?.isolates && isolating(this.operating.valueOf(target)) !== isolating(value);
    this.operating.set(target, value);
    if (!moved) return;
    // an absence-of-voltage test counts only from here on
    this.isolatedSince = this.lines.length;
  }

  private removeJumper(from: string, to: string): void {
    const at = this.jumpers.findIndex(
      ([a, b]) => (a === from && b === to) || (a === to && b === from),
    );
    const [a, b] = this.jumpers[at];
    this.operating.removeJumper(a, b);
    this.jumpers.splice(at, 1);
  }

  /** Enters breaches as findings, each once in one stretch of isolation; gives their indices. */
  private report(breaches: readonly Breach[], logIndex: number): number[] {
    const indices: number[] = [];
    for (const {id, severity, text} of breaches) {
      const key = `${this.isolatedSince}:${id}`;
      if (this.told.has(key)) continue;
      this.told.add(key);
      indices.push(this.findings.length);
      this.findings.push({id, logIndex, severity, text});
    }
    return indices;
  }
}

/** After these the display no longer tells what the unit does; it is read again. */
function changesUnit(action: Action): boolean {
  return !['read', 'clamp', 'note', 'hint', 'name', 'give-up', 'meter'].includes(action.do);
}

function readingFields(action: Action, fn: MeterFunction): Partial<LogEntry> {
  if (action.do === 'read') {
    const {red, black, expected} = action;
    return {function: fn, red, black, ...(expected ? {expected} : {})};
  }
  if (action.do === 'clamp') {
    const {wire, expected} = action;
    return {function: fn, wire, ...(expected ? {expected} : {})};
  }
  return {};
}
