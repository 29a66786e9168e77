import {couldBeBrokenLead, type MeterCare} from '../meter/meter-condition.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {MeterDisplay} from '../meter/meter.ts';

/** What a reading is worth for ruling out: at once, once the meter is proved, or nothing. */
export type Worth = 'counts' | 'when-proved' | 'nothing';

/**
 * How far the student's own meter may be believed, from what everybody can see. In a call whose meter may itself be
 * at fault, zero volts and OL ohms say nothing about the unit until the same leads have shown something that a broken
 * lead cannot: that is what proving the meter before and after is for. So no lying meter rules out the true fault.
 */
export class MeterTrust {
  private leadsProved = false;
  private fuseProved = false;
  private fuseBlown = false;
  /** A meter of which nobody knows whether it carries current has been a part of the circuit. */
  private gapUncertain = false;

  /** Takes a reading into account and says what it is worth. */
  take(fn: MeterFunction, display: MeterDisplay, toProve: boolean): Worth {
    if (display.fuseBlew) this.fuseBlown = true;
    const microamps = fn === 'dc-microamps';
    if (display.batteryLow || display.fuseBlew || (microamps && this.fuseBlown)) return 'nothing';
    if (!toProve) return 'counts';
    if (!couldBeBrokenLead(fn, display)) {
      if (fn === 'clamp-amps' || fn === 'clamp-hertz')
        return this.sightsCount ? 'counts' : 'nothing';
      this.leadsProved = true;
      if (microamps) {
        this.fuseProved = true;
        this.gapUncertain = false;
      }
    }
    if (microamps && !this.fuseProved) {
      this.gapUncertain = true;
      return 'nothing';
    }
    if (!this.sightsCount) return 'nothing';
    return this.leadsProved ? 'counts' : 'when-proved';
  }

  /** What can be seen tells nothing while nobody knows whether the circuit is closed through the meter. */
  get sightsCount(): boolean {
    return !this.gapUncertain;
  }

  get isProved(): boolean {
    return this.leadsProved;
  }

  /** Whether microamps leads close the gap that they bridge, as far as anybody knows. */
  get closesGap(): boolean {
    return !this.fuseBlown;
  }

  /** The fuse blew although nothing was read, for power came on with the leads across a source. */
  fuseBlew(): void {
    this.fuseBlown = true;
  }

  /** Other leads begin afresh, and are good: what the old ones showed is not believed any more. */
  renewed(what: MeterCare): void {
    if (what === 'leads') this.leadsProved = true;
    if (what === 'fuse') {
      this.fuseBlown = false;
      this.fuseProved = true;
    }
  }
}
