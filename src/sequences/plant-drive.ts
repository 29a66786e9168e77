import type {Solution} from '../circuits/solution.ts';
import type {Unit} from '../content/unit.ts';
import {heater} from '../parts/resistive-loads.ts';
import type {MotorDrives} from '../parts/motor-overload.ts';
import {isMotor} from '../parts/motor-windings.ts';
import type {PlantDrive} from '../plant/plant.ts';
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
}

export function plantFeelers(unit: Unit): PlantFeelers {
  const ofKind = (kind: string) => unit.parts.filter((part) => part.kind === kind);
  const heaters = ofKind('heater').map((part) => ({
    id: part.id,
    watts: heater.data.parse(part.data).watts,
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
  };
}

/** What the plant feels of the unit now, rounded so that the last digits of a solution move nothing. */
export function plantDrive(
  feelers: PlantFeelers,
  operated: (part: string) => OperatedPart,
  solution: Solution,
): PlantDrive {
  const turning = (drives: string): number =>
    Math.max(
      0,
      ...feelers.motors
        .filter((motor) => motor.drives === drives)
        .map(({part}) => Math.round(airOf(drives, speedOf(operated(part).state)) * 1000) / 1000),
    );
  const watts = (heaters: readonly string[]): number =>
    heaters.reduce((sum, id) => sum + Math.round(solution.voltAmperes(`${id}.element`).re), 0);
  return {
    compressor: turning('compressor'),
    outdoorFan: turning('fan'),
    indoorBlower: turning('blower'),
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
