import type {MagnetCoilData} from '../../parts/magnet-coil.ts';
import type {Look} from '../look.ts';

/** What a coil does to its armature: `coil.pulled` at pull-in, `coil.released` below drop-out. */
export type ArmatureEvent =
  | {type: 'coil.pulled'; atMs: number}
  | {type: 'coil.released'; atMs: number}
  | {type: 'armature.chattered'};

/**
 * The crossing, if any, of a coil's pull-in or drop-out volts. Between the two an armature stays as it is: that
 * hysteresis is what keeps a held contactor in through a dip.
 */
export function armatureEvent(
  part: string,
  coil: MagnetCoilData,
  position: 'open' | 'sealed' | 'chattering',
  look: Look,
): ArmatureEvent | undefined {
  const volts = look.voltsIn(`${part}.coil`);
  const jammed = look.behaviour(part).armature === 'jammed';
  if (position !== 'sealed') {
    if (!jammed && volts >= coil.pullInFraction * coil.ratedVolts)
      return {type: 'coil.pulled', atMs: look.atMs};
    // what made it chatter is gone
    return position === 'chattering' ? {type: 'coil.released', atMs: look.atMs} : undefined;
  }
  return jammed || volts < coil.dropOutFraction * coil.ratedVolts
    ? {type: 'coil.released', atMs: look.atMs}
    : undefined;
}

/** An open armature on a coil that is more than half way to pulling in buzzes without closing. */
export function buzzes(part: string, coil: MagnetCoilData, sealed: boolean, look: Look): boolean {
  return !sealed && look.voltsIn(`${part}.coil`) >= coil.dropOutFraction * coil.ratedVolts;
}
