import type {PlantDrive} from './plant.ts';
import {saturationPsig} from './refrigerant-pressure.ts';

/** Everything that the targets depend on at one moment. */
export interface PlantMoment extends PlantDrive {
  readonly roomDegF: number;
  readonly outdoorDegF: number;
  readonly chargeFraction: number;
  readonly indoorAirflowFraction: number;
  readonly outdoorAirflowFraction: number;
  readonly frostFraction: number;
}

/** Where a value is heading and how fast, minutes. */
export interface Target {
  readonly target: number;
  readonly minutes: number;
}

export type DrivenValue =
  | 'roomDegF'
  | 'outdoorCoilDegF'
  | 'supplyAirDegF'
  | 'heaterDegF'
  | 'dischargePsig'
  | 'suctionPsig'
  | 'compressorShellDegF'
  | 'frostFraction';

/**
 * Where each value of a split heat pump is heading. Rules of thumb, not a refrigerant cycle: condensing about
 * 20 °F over the air and evaporating about 35 °F under it at full air flow, both drifting away as the flow falls
 * (common practice, no source). A model of the cycle may take this function's place and nothing else.
 */
export function heatPumpTargets(m: PlantMoment): Readonly<Record<DrivenValue, Target>> {
  // a fan turns at about 0.9 of synchronous speed; a still fan leaves a little natural draught
  const outdoorFlow = Math.max(0.06, share(m.outdoorFan) * m.outdoorAirflowFraction);
  const indoorFlow = Math.max(0.05, share(m.indoorBlower) * m.indoorAirflowFraction);
  const runs = m.compressor > 0.5;
  // capacity falls off below about two thirds of the charge
  const charge = Math.min(1, m.chargeFraction / 0.7);
  const starved = 90 * Math.max(0, 1 - charge);
  const still =
    saturationPsig((m.roomDegF + m.outdoorDegF) / 2) * Math.min(1, m.chargeFraction / 0.15);
  const heater = m.airHeatWatts / indoorFlow;
  const crankcaseRise = Math.min(40, m.crankcaseWatts * 0.5);

  if (!runs) {
    return {
      roomDegF: {
        target: m.outdoorDegF + 5 + m.airHeatWatts * 0.0035 * flowShare(indoorFlow),
        minutes: 720,
      },
      outdoorCoilDegF: {target: m.outdoorDegF, minutes: 6},
      supplyAirDegF: {target: m.roomDegF + m.airHeatWatts * 0.0027, minutes: 1.5},
      heaterDegF: {target: m.roomDegF + heater * 0.012, minutes: 2},
      dischargePsig: {target: still, minutes: 1.5},
      suctionPsig: {target: still, minutes: 1.5},
      compressorShellDegF: {target: m.outdoorDegF + crankcaseRise, minutes: 40},
      frostFraction: {target: m.outdoorDegF > 33 ? 0 : m.frostFraction, minutes: 25},
    };
  }

  if (m.valveShifted) {
    // cooling, or defrost with the outdoor fan held off: the outdoor coil condenses
    const defrosting = m.frostFraction > 0.02 || m.outdoorDegF < 45;
    const condensing = defrosting
      ? Math.min(110, 75 + 20 / Math.max(0.3, outdoorFlow))
      : Math.min(hottest, m.outdoorDegF + 20 / outdoorFlow);
    const evaporating = m.roomDegF - 35 - 40 * (1 - flowShare(indoorFlow)) - starved;
    const cools = charge * flowShare(indoorFlow) * (condensing < 150 ? 1 : 0.6);
    return {
      roomDegF: {target: m.outdoorDegF + 5 - 32 * cools + m.airHeatWatts * 0.0035, minutes: 720},
      outdoorCoilDegF: {
        target: defrosting ? 95 : condensing - 5,
        // frost must melt first
        minutes: defrosting ? 4 + 10 * m.frostFraction : 2,
      },
      supplyAirDegF: {target: m.roomDegF - 19 * charge + m.airHeatWatts * 0.0027, minutes: 1.5},
      heaterDegF: {target: m.roomDegF + heater * 0.012, minutes: 2},
      dischargePsig: {target: dischargePsig(condensing, m.chargeFraction), minutes: 1.5},
      suctionPsig: {target: suctionPsig(evaporating, m.chargeFraction), minutes: 0.35},
      compressorShellDegF: {target: m.outdoorDegF + 70 + 60 * (1 - charge), minutes: 30},
      frostFraction: {target: 0, minutes: 3},
    };
  }

  // heating: the indoor coil condenses, the outdoor coil evaporates and frosts
  const condensing = Math.min(hottest, m.roomDegF + 30 / indoorFlow);
  const evaporating =
    m.outdoorDegF - 10 / Math.max(0.4, outdoorFlow) - 18 * m.frostFraction - starved;
  const heats = charge * flowShare(indoorFlow) * (1 - 0.4 * m.frostFraction);
  const frosts = evaporating < 30 && m.outdoorDegF < 47;
  return {
    roomDegF: {
      target:
        m.outdoorDegF +
        5 +
        (20 + 0.45 * Math.max(0, m.outdoorDegF)) * heats +
        m.airHeatWatts * 0.0035,
      minutes: 720,
    },
    outdoorCoilDegF: {target: evaporating + 2, minutes: 3},
    supplyAirDegF: {
      target:
        m.roomDegF + (14 + 0.2 * Math.max(0, m.outdoorDegF)) * charge + m.airHeatWatts * 0.0027,
      minutes: 1.5,
    },
    heaterDegF: {target: m.roomDegF + heater * 0.012, minutes: 2},
    dischargePsig: {target: dischargePsig(condensing, m.chargeFraction), minutes: 1.5},
    suctionPsig: {target: suctionPsig(evaporating, m.chargeFraction), minutes: 0.35},
    compressorShellDegF: {target: m.outdoorDegF + 80 + 60 * (1 - charge), minutes: 30},
    frostFraction: {target: frosts ? 1 : 0, minutes: frosts ? 70 : 15},
  };
}

/** Nothing condenses hotter, for long before that the high-pressure switch opens or the compressor stalls. */
const hottest = 175;

const share = (turning: number): number => Math.min(1, Math.abs(turning) / 0.9);

/** Heat carried rises steeply with the first air and little with the last. */
const flowShare = (flow: number): number => Math.min(1, (1.3 * flow) / (flow + 0.3));

const dischargePsig = (condensingDegF: number, charge: number): number =>
  saturationPsig(condensingDegF) * Math.min(1, charge / 0.5);

const suctionPsig = (evaporatingDegF: number, charge: number): number =>
  Math.max(
    -14,
    saturationPsig(evaporatingDegF) * Math.min(1, charge / 0.5) - 20 * Math.max(0, 0.5 - charge),
  );
