import type {Solution} from '../circuits/solution.ts';
import type {Unit} from '../content/unit.ts';
import {dataOf} from '../parts/part-kind.ts';
import type {heater} from '../parts/resistive-loads.ts';
import type {MotorDrives} from '../parts/motor-overload.ts';
import {isMotor} from '../parts/motor-windings.ts';
import type {PlantDrive} from '../plant/plant.ts';
import {strokeOf} from './machines/damper-actuator.machine.ts';
import {ecmSpeedOf} from './machines/ecm-blower.machine.ts';
import {passesGas} from './machines/gas-valve.machine.ts';
import {speedOf} from './machines/motor.machine.ts';
import {stateValue, type OperatedPart} from './operated-part.ts';

/** Which parts the plant feels, found once for a unit. */
export interface PlantFeelers {
  readonly motors: readonly {
    readonly part: string;
    readonly drives: MotorDrives;
  }[];
  readonly valves: readonly string[];
  readonly airHeaters: readonly string[];
  readonly crankcaseHeaters: readonly string[];
  readonly igniters: readonly string[];
  readonly gasValves: readonly string[];
  readonly moduleBlowers: readonly string[];
  readonly dampers: readonly string[];
}

export function plantFeelers(unit: Unit): PlantFeelers {
  const ofKind = (kind: string) => unit.parts.filter((part) => part.kind === kind);
  const heaters = ofKind('heater').map((part) => ({
    id: part.id,
    watts: dataOf<typeof heater>(part).watts,
  }));
  return {
    motors: unit.parts
      .filter((part) => part.elements.some(isMotor))
      .map((part) => ({part: part.id, drives: (part.data as {drives: MotorDrives}).drives})),
    valves: ofKind('solenoid').map((part) => part.id),
    // heat for a house comes in kilowatts, heat for a crankcase in tens of watts
    airHeaters: heaters.filter(({watts}) => watts >= 500).map(({id}) => id),
    crankcaseHeaters: heaters.filter(({watts}) => watts < 500).map(({id}) => id),
    igniters: ofKind('hot-surface-igniter').map((part) => part.id),
    gasValves: ofKind('gas-valve').map((part) => part.id),
    moduleBlowers: ofKind('ecm-blower').map((part) => part.id),
    dampers: ofKind('damper-actuator').map((part) => part.id),
  };
}

const round = (share: number): number => Math.round(share * 1000) / 1000;

/** What the plant feels of the unit now, rounded so that the last digits of a solution move nothing. */
export function plantDrive(
  feelers: PlantFeelers,
  operated: (part: string) => OperatedPart,
  solution: Solution,
): PlantDrive {
  const speeds = (drives: string): number[] =>
    feelers.motors
      .filter((motor) => motor.drives === drives)
      .map(({part}) => round(airOf(drives, speedOf(operated(part).state))));
  const turning = (drives: string): number => Math.max(0, ...speeds(drives));
  // a wheel's full speed is what an induction motor makes of synchronous speed
  const blown = feelers.moduleBlowers.map((part) => round(0.92 * ecmSpeedOf(operated(part).state)));
  const [first = 0, second = 0] = speeds('compressor');
  const watts = (heaters: readonly string[]): number =>
    heaters.reduce((sum, id) => sum + Math.round(solution.roughWatts(`${id}.element`)), 0);
  return {
    compressor: Math.max(0, first),
    secondCompressor: Math.max(0, second),
    damper: Math.max(0, ...feelers.dampers.map((part) => strokeOf(operated(part).state))),
    outdoorFan: turning('fan'),
    indoorBlower: Math.max(turning('blower'), ...blown),
    valveShifted: feelers.valves.some((valve) => stateValue(operated(valve)) === 'shifted'),
    airHeatWatts: watts(feelers.airHeaters),
    crankcaseWatts: watts(feelers.crankcaseHeaters),
    inducer: turning('inducer'),
    igniterWatts: watts(feelers.igniters),
    gasOpen: feelers.gasValves.some((valve) => passesGas(operated(valve).state)),
  };
}

/**
 * What a motor moves at a speed. A blower's wheel throws air outwards whichever way it turns, but backwards less than
 * half of it (common practice, no source); a compressor that turns backwards pumps nothing.
 */
function airOf(drives: string, speed: number): number {
  return speed < 0 && drives === 'blower' ? -0.4 * speed : speed;
}
