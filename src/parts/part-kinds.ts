import type {PartKind} from './part-kind.ts';
import {breaker} from './breaker.ts';
import {capacitor, dualCapacitor} from './capacitors.ts';
import {groundLug, splice, terminalStrip} from './connections.ts';
import {contactor} from './contactor.ts';
import {damperActuator} from './damper-actuator.ts';
import {defrostBoard} from './defrost-board.ts';
import {delayTimer} from './delay-timer.ts';
import {disconnect} from './disconnect.ts';
import {doorSwitch} from './door-switch.ts';
import {flameRod} from './flame-rod.ts';
import {ecmBlower} from './ecm-blower.ts';
import {economiser} from './economiser.ts';
import {fuse} from './fuse.ts';
import {fusibleLink} from './fusible-link.ts';
import {gasValve} from './gas-valve.ts';
import {hotSurfaceIgniter} from './hot-surface-igniter.ts';
import {ignitionBoard} from './ignition-board.ts';
import {phaseMonitor} from './phase-monitor.ts';
import {pscMotor} from './psc-motor.ts';
import {relay} from './relay.ts';
import {heater, lamp} from './resistive-loads.ts';
import {draftSwitch, floatSwitch, pressureSwitch, temperatureSwitch} from './sensing-switches.ts';
import {sequencer} from './sequencer.ts';
import {solenoid} from './solenoid.ts';
import {supply} from './supply.ts';
import {thermistor} from './thermistor.ts';
import {thermostat} from './thermostat.ts';
import {threePhaseMotor} from './three-phase-motor.ts';
import {toggleSwitch} from './toggle-switch.ts';
import {transformer} from './transformer.ts';

const all = [
  breaker,
  capacitor,
  contactor,
  damperActuator,
  defrostBoard,
  delayTimer,
  disconnect,
  doorSwitch,
  draftSwitch,
  dualCapacitor,
  ecmBlower,
  economiser,
  flameRod,
  floatSwitch,
  fuse,
  fusibleLink,
  gasValve,
  groundLug,
  heater,
  hotSurfaceIgniter,
  ignitionBoard,
  lamp,
  phaseMonitor,
  pressureSwitch,
  pscMotor,
  relay,
  sequencer,
  solenoid,
  splice,
  supply,
  temperatureSwitch,
  terminalStrip,
  thermistor,
  thermostat,
  threePhaseMotor,
  toggleSwitch,
  transformer,
] as readonly unknown[] as readonly PartKind[];

/** Every part kind by the name that unit files use. */
export const partKinds: ReadonlyMap<string, PartKind> = new Map(
  all.map((kind) => [kind.kind, kind]),
);
