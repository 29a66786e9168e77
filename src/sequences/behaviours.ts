import type {AnyBehaviour} from './part-behaviour.ts';
import {breakerBehaviour} from './machines/breaker.machine.ts';
import {contactorBehaviour} from './machines/contactor.machine.ts';
import {damperActuatorBehaviour} from './machines/damper-actuator.machine.ts';
import {defrostBoardBehaviour} from './machines/defrost-board.machine.ts';
import {delayTimerBehaviour} from './machines/delay-timer.machine.ts';
import {ecmBlowerBehaviour} from './machines/ecm-blower.machine.ts';
import {economiserBehaviour} from './machines/economiser.machine.ts';
import {flameRodBehaviour} from './machines/flame-rod.machine.ts';
import {fuseBehaviour} from './machines/fuse.machine.ts';
import {fusibleLinkBehaviour} from './machines/fusible-link.machine.ts';
import {gasValveBehaviour} from './machines/gas-valve.machine.ts';
import {handSwitchBehaviour} from './machines/hand-switch.machine.ts';
import {motorBehaviour} from './machines/motor.machine.ts';
import {ignitionBoardBehaviour} from './machines/ignition-board.behaviour.ts';
import {phaseMonitorBehaviour} from './machines/phase-monitor.machine.ts';
import {relayBehaviour} from './machines/relay.machine.ts';
import {sensingSwitchBehaviour} from './machines/sensing-switch.machine.ts';
import {sequencerBehaviour} from './machines/sequencer.machine.ts';
import {solenoidBehaviour} from './machines/solenoid.machine.ts';
import {thermostatBehaviour} from './machines/thermostat.machine.ts';
import {transformerBehaviour} from './machines/transformer.machine.ts';

/** Behaviour of each kind of part that has a memory. Kinds not listed just conduct. */
export const behaviours: ReadonlyMap<string, AnyBehaviour> = new Map([
  ['breaker', breakerBehaviour],
  ['contactor', contactorBehaviour],
  ['damper-actuator', damperActuatorBehaviour],
  ['defrost-board', defrostBoardBehaviour],
  ['delay-timer', delayTimerBehaviour],
  ['disconnect', handSwitchBehaviour],
  ['door-switch', handSwitchBehaviour],
  ['draft-switch', sensingSwitchBehaviour],
  ['ecm-blower', ecmBlowerBehaviour],
  ['economiser', economiserBehaviour],
  ['flame-rod', flameRodBehaviour],
  ['float-switch', sensingSwitchBehaviour],
  ['fuse', fuseBehaviour],
  ['fusible-link', fusibleLinkBehaviour],
  ['gas-valve', gasValveBehaviour],
  ['ignition-board', ignitionBoardBehaviour],
  ['phase-monitor', phaseMonitorBehaviour],
  ['pressure-switch', sensingSwitchBehaviour],
  ['psc-motor', motorBehaviour],
  ['relay', relayBehaviour],
  ['sequencer', sequencerBehaviour],
  ['solenoid', solenoidBehaviour],
  ['temperature-switch', sensingSwitchBehaviour],
  ['thermostat', thermostatBehaviour],
  ['three-phase-motor', motorBehaviour],
  ['toggle-switch', handSwitchBehaviour],
  ['transformer', transformerBehaviour],
]);
