import type {Calibration} from '../meter/calibration.ts';
import {widened, type Extremes, type Keeping} from '../meter/extremes.ts';
import {
  asShownBy,
  conditionOf,
  conducts,
  type MeterCare,
  type MeterCondition,
  type MeterFlaw,
} from '../meter/meter-condition.ts';
import {clampFunctions, type MeterFunction} from '../meter/meter-function.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import {blowsFuse, readMeter, watched, type Placement} from '../meter/read-meter.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import type {MeterView} from './bench-view.ts';
import {layLeads, readInSeries, readWithLeads} from './lay-leads.ts';

/** A recording meter takes a reading this often, and at most so many in one wait; what switches it sees besides. */
const samplingMs = 100;
const mostSamples = 60;

/**
 * The meter as the student holds it: selector, leads, what the glass shows and keeps, and what is wrong with it. On
 * microamps its leads are a part of the circuit from the reading on, until they are moved or the selector is turned.
 */
export class MeterInHand {
  function: MeterFunction = 'ac-volts';
  red: string | undefined;
  black: string | undefined;
  extremes: Extremes | undefined;
  /** How many fuses the student has blown. */
  fusesBlown = 0;
  private clamp: string | undefined;
  private display: MeterDisplay | undefined;
  private held = false;
  private keeping: Keeping = 'nothing';
  private condition: MeterCondition;
  private readonly operating: OperatingUnit;
  private readonly calibration: Calibration;
  private readonly toProve: boolean;

  constructor(operating: OperatingUnit, calibration: Calibration, flaw?: MeterFlaw) {
    this.operating = operating;
    this.calibration = calibration;
    this.toProve = flaw !== undefined;
    this.condition = conditionOf(flaw ?? 'sound');
  }

  view(): MeterView {
    return {
      function: this.function,
      ...(this.red ? {red: this.red} : {}),
      ...(this.black ? {black: this.black} : {}),
      ...(this.clamp ? {clamp: this.clamp} : {}),
      ...(this.display ? {display: this.display} : {}),
      ...(this.keeping === 'nothing' ? {} : {keeps: this.keeping}),
      ...(this.held ? {held: true} : {}),
      ...(this.extremes ? {extremes: this.extremes} : {}),
      ...(this.toProve ? {toProve: true} : {}),
    };
  }

  /** Turns the selector: what was bridged by the meter is open again. */
  choose(fn: MeterFunction): void {
    this.function = fn;
    this.operating.disconnectMeter();
    this.clear();
    this.extremes = undefined;
  }

  keep(what: Keeping): void {
    this.keeping = what;
    if (what !== 'last' && this.held) this.clear();
    this.extremes =
      what === 'extremes' && this.display ? widened(undefined, this.display) : undefined;
  }

  renew(what: MeterCare): void {
    const good = {
      battery: {battery: 'good'},
      leads: {leads: 'good'},
      fuse: {fuse: 'good'},
    } as const;
    this.condition = {...this.condition, ...good[what]};
  }

  /** Puts both leads down and reads. */
  read(red: string, black: string): MeterDisplay {
    const {operating, function: fn} = this;
    this.red = red;
    this.black = black;
    this.held = false;
    // a fuse that blows at this reading was whole when it began
    const {condition} = this;
    const reaches = conducts(condition, fn);
    const sound =
      reaches && fn === 'dc-microamps'
        ? readInSeries(operating, red, black, this.calibration)
        : readMeter(fn, operating, {red, black}, this.calibration);
    if (!reaches) operating.disconnectMeter();
    else if (sound.fuseBlew) this.blow();
    else layLeads(operating, fn, red, black);
    const display = asShownBy(condition, fn, watched(fn, operating, {red, black}, sound));
    if (reaches) readWithLeads(operating, fn, red, black);
    return this.show(display);
  }

  /** Closes the clamp around a wire and reads. */
  clampOn(wire: string): MeterDisplay {
    this.clamp = wire;
    this.held = false;
    return this.show(this.seen({wire}));
  }

  /** Lets time pass at once. */
  wait(milliseconds: number): void {
    for (const _step of this.waiting(milliseconds, Infinity));
  }

  /**
   * Lets time pass, in pieces of at most so many milliseconds; a recording meter reads on meanwhile. Waiting in pieces comes
   * to the same as waiting at once, so whoever has others to serve may do so after each.
   */
  *waiting(milliseconds: number, mostAtOnceMs: number): Generator<void> {
    if (!this.recording) {
      yield* this.passing(milliseconds, mostAtOnceMs);
      return;
    }
    const samples = Math.min(mostSamples, Math.max(1, Math.floor(milliseconds / samplingMs)));
    this.operating.watch(() => this.sample());
    for (let taken = 0; taken < samples; taken += 1) {
      const [from, to] = [taken, taken + 1].map((n) => Math.round((milliseconds * n) / samples));
      yield* this.passing(to - from, mostAtOnceMs);
      this.sample();
    }
    this.operating.watch(undefined);
  }

  private *passing(milliseconds: number, mostAtOnceMs: number): Generator<void> {
    let left = milliseconds;
    for (; left > mostAtOnceMs; left -= mostAtOnceMs) {
      this.operating.advance(mostAtOnceMs);
      yield;
    }
    this.operating.advance(left);
  }

  /** Something is about to be done to the unit: a recording meter watches what it does. */
  beginWatching(): void {
    if (this.recording) this.operating.watch(() => this.sample());
  }

  /** The unit is another now: the display is out of date, save where it is kept. */
  unitChanged(): void {
    this.operating.watch(undefined);
    this.sample();
    if (this.keeping === 'last' && this.display) this.held = true;
    else this.clear();
  }

  /** Whether what was done has put a source across the microamps input, whose fuse then opens. */
  checkFuse(): void {
    const {operating, red, black} = this;
    const lies = this.function === 'dc-microamps' && operating.meterLeads !== undefined;
    if (lies && red && black && blowsFuse(operating, red, black)) this.blow();
  }

  private blow(): void {
    this.condition = {...this.condition, fuse: 'blown'};
    this.fusesBlown += 1;
    this.operating.disconnectMeter();
  }

  private get recording(): boolean {
    return this.keeping === 'extremes' && this.extremes !== undefined;
  }

  private sample(): void {
    if (!this.recording) return;
    const at = this.placement();
    if (at) this.extremes = widened(this.extremes, this.seen(at));
  }

  /** Where it reads now; nowhere once a lifted end under a lead has been landed. */
  private placement(): Placement | undefined {
    const {red, black, clamp} = this;
    if (clampFunctions.has(this.function)) return clamp ? {wire: clamp} : undefined;
    const points = this.operating.probePoints();
    return red && black && points.includes(red) && points.includes(black)
      ? {red, black}
      : undefined;
  }

  private seen(at: Placement): MeterDisplay {
    return asShownBy(
      this.condition,
      this.function,
      readMeter(this.function, this.operating, at, this.calibration),
    );
  }

  private show(display: MeterDisplay): MeterDisplay {
    this.display = display;
    if (this.keeping === 'extremes') this.extremes = widened(this.extremes, display);
    return display;
  }

  private clear(): void {
    this.display = undefined;
    this.held = false;
  }
}
