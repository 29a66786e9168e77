import {assign, setup} from 'xstate';
import {signalVolts} from '../../parts/damper-signal.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface ActuatorContext {
  /** Share of the stroke that it makes for. */
  readonly fraction: number;
}
type ActuatorEvent = {type: 'stroke.asked'; fraction: number};

/** Supply volts below which the spring wins (common practice, no source). */
const leastVolts = 16;

/** It makes for the position that its signal asks for; without power its spring shuts the damper. */
export const damperActuatorMachine = setup({
  types: {
    context: {} as ActuatorContext,
    input: {} as Record<string, never>,
    events: {} as ActuatorEvent,
  },
}).createMachine({
  id: 'damper actuator',
  context: {fraction: 0},
  on: {'stroke.asked': {actions: assign({fraction: ({event}) => event.fraction})}},
});

/** Position asked for, in hundredths, so that the last millivolt moves nothing. */
function asked(look: Look, part: string): number {
  const {damper} = look.behaviour(part);
  if (damper === 'stuck-open') return 1;
  if (damper === 'stuck-shut' || damper === 'dead') return 0;
  if (look.voltsIn(`${part}.supply`) < leastVolts) return 0;
  const {shut, open} = signalVolts;
  const fraction = (look.dcVolts(`${part}.SIG`, `${part}.COM`) - shut) / (open - shut);
  return Math.round(Math.min(1, Math.max(0, fraction)) * 100) / 100;
}

export const damperActuatorBehaviour = defineBehaviour<typeof damperActuatorMachine>({
  machine: damperActuatorMachine,
  input: () => ({}),
  sense: ({context}, look, {id}) => {
    const fraction = asked(look, id);
    return fraction === context.fraction ? undefined : {type: 'stroke.asked', fraction};
  },
  observe: (_snapshot, look, {id}) => {
    const stands = look.plant('damperFraction') ?? 0;
    const word = stands < 0.1 ? 'shut' : stands > 0.85 ? 'wide open' : 'part open';
    return [
      {
        part: id,
        is: stands < 0.1 ? 'off' : 'shifted',
        sense: 'seen',
        text: `The outdoor-air damper stands ${word}.`,
        behindCover: false,
      },
    ];
  },
});

/** Share of the stroke that it makes for, for the plant. */
export function strokeOf(state: unknown): number {
  return (state as {context: ActuatorContext}).context.fraction;
}
