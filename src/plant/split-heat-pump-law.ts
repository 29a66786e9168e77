import type {PlantLaw} from './driven-plant.ts';
import {heatPumpTargets, type DrivenValue} from './split-heat-pump-targets.ts';

/** How often targets are looked at again while the values they depend on drift. */
const everyMs = 5 * 60_000;

/** A split heat pump: each value heads for a target that depends on what runs ({@link heatPumpTargets}). */
export const splitHeatPumpLaw: PlantLaw = {
  resting: {
    roomDegF: 75,
    outdoorDegF: 80,
    outdoorCoilDegF: 80,
    supplyAirDegF: 75,
    heaterDegF: 75,
    dischargePsig: 220,
    suctionPsig: 220,
    panInches: 0,
    chargeFraction: 1,
    indoorAirflowFraction: 1,
    outdoorAirflowFraction: 1,
    compressorShellDegF: 85,
    frostFraction: 0,
  },
  headings: (drive, now) => {
    const targets = heatPumpTargets({
      ...drive,
      roomDegF: now('roomDegF'),
      outdoorDegF: now('outdoorDegF'),
      chargeFraction: now('chargeFraction'),
      indoorAirflowFraction: now('indoorAirflowFraction'),
      outdoorAirflowFraction: now('outdoorAirflowFraction'),
      frostFraction: now('frostFraction'),
    });
    return Object.fromEntries(
      (Object.keys(targets) as DrivenValue[]).map((name) => [
        name,
        {target: targets[name].target, seconds: targets[name].minutes * 60},
      ]),
    );
  },
  lookAgainMs: () => everyMs,
};
