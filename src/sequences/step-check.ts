import type {StepCheck} from '../content/unit.ts';
import type {OperatingUnit} from './operating-unit.ts';

/** Whether a step of the sequence of operation holds, and what was found of each thing asked. */
export interface StepOutcome {
  readonly holds: boolean;
  /** One phrase for each thing asked: "24.1 V between TB1.R and TB1.C". */
  readonly found: readonly string[];
}

/** Checks one step on a unit as it stands. Asks the unit only, changes nothing. */
export function checkStep(operating: OperatingUnit, check: StepCheck): StepOutcome {
  const found: string[] = [];
  let holds = true;
  const note = (ok: boolean, what: string): void => {
    holds &&= ok;
    found.push(what);
  };
  if (check.volts) {
    const {between, atLeast = 0, atMost = Infinity} = check.volts;
    const {re, im} = operating.acVolts(...between);
    const volts = Math.hypot(re, im);
    note(
      volts >= atLeast && volts <= atMost,
      `${volts.toFixed(1)} V between ${between.join(' and ')}`,
    );
  }
  if (check.amps) {
    const {through, atLeast = 0, atMost = Infinity} = check.amps;
    const {re, im} = operating.amps(through);
    const amps = Math.hypot(re, im);
    note(amps >= atLeast && amps <= atMost, `${amps.toFixed(2)} A through ${through}`);
  }
  if (check.plant) {
    const {value, atLeast = -Infinity, atMost = Infinity} = check.plant;
    const now = operating.plantValues()[value] ?? NaN;
    note(now >= atLeast && now <= atMost, `${value} is ${now.toFixed(1)}`);
  }
  if (check.closed !== undefined) {
    const closed = operating.isClosed(check.closed);
    note(closed, `${check.closed} is ${closed ? 'closed' : 'open'}`);
  }
  if (check.open !== undefined) {
    const closed = operating.isClosed(check.open);
    note(!closed, `${check.open} is ${closed ? 'closed' : 'open'}`);
  }
  if (check.state) {
    const {part, is} = check.state;
    const seen = operating.observations().filter((observation) => observation.part === part);
    note(
      seen.some((observation) => observation.is === is),
      `${part} is ${seen.map((observation) => observation.is).join(', ') || 'not to be seen or heard'}`,
    );
  }
  return {holds, found};
}
