import {flameInputOhms} from '../../parts/flame-input.ts';
import type {IgnitionBoardData} from '../../parts/ignition-board.ts';
import type {Look} from '../look.ts';

export const inputNames = ['powered', 'called', 'fanCalled', 'limit', 'pressure', 'flame'] as const;
export type InputName = (typeof inputNames)[number];
/** What the board sees at its inputs: true where a call, a closed switch, a flame is there. */
export type BoardInputs = Readonly<Record<InputName, boolean>>;

/** What a dark board sees. */
export const noInputs: BoardInputs = {
  powered: false,
  called: false,
  fanCalled: false,
  limit: false,
  pressure: false,
  flame: false,
};

/** Volts at an input that count, and that no longer do (common practice, no source). */
const comesAtVolts = 14;
const goesAtVolts = 9;

/** Microamps of direct current that the board measures from the rod through the flame to the burner. */
function flameMicroamps(look: Look, part: string): number {
  // the flame makes the rod negative; current the other way is leakage and no flame
  return (-look.dcVolts(`${part}.FS`, `${part}.GND`) / flameInputOhms) * 1e6;
}

/** The board as far as its inputs go: what it has accepted, and its thresholds. */
export type InputState = Pick<
  IgnitionBoardData,
  'blankBelowVolts' | 'provedMicroamps' | 'lostMicroamps'
> & {readonly inputs: BoardInputs};

/** What stands at the inputs now; each has a band in which it stays what it was accepted as. */
export function inputsNow(
  context: InputState,
  look: Look,
  part: string,
  valveOpen: boolean,
): BoardInputs {
  const {inputs, blankBelowVolts, provedMicroamps, lostMicroamps} = context;
  const at = (element: string, name: InputName): boolean =>
    look.voltsIn(`${part}.${element}`) >= (inputs[name] ? goesAtVolts : comesAtVolts);
  const powered =
    look.behaviour(part).logic !== 'dead' &&
    look.voltsIn(`${part}.supply`) >= blankBelowVolts * (inputs.powered ? 1 : 1.05);
  if (!powered) return noInputs;
  return {
    powered,
    called: at('w-input', 'called'),
    fanCalled: at('g-input', 'fanCalled'),
    limit: at('limit-input', 'limit'),
    pressure: at('pressure-input', 'pressure'),
    // it listens for a flame while its valve is open, and not else
    flame:
      valveOpen && flameMicroamps(look, part) >= (inputs.flame ? lostMicroamps : provedMicroamps),
  };
}
