import type {PlantLaw} from './driven-plant.ts';
import {indoorFlow} from './gas-furnace-law.ts';

/** Watts carry 3.412 Btu/h each; Btu/h = 1.08 × cfm × °F for standard air. */
const btuPerHourPerWatt = 3.412;
const designCfm = 1600;

/**
 * An electric furnace: the elements warm the air that passes them, and themselves the more the less air passes.
 * Temperatures at the limits are rules of thumb (common practice, no source).
 */
export const electricFurnaceLaw: PlantLaw = {
  resting: {
    roomDegF: 70,
    outdoorDegF: 40,
    supplyAirDegF: 70,
    heaterDegF: 70,
    indoorAirflowFraction: 1,
  },
  headings: (drive, now) => {
    const flow = indoorFlow(drive, now);
    const room = now('roomDegF');
    const rise = (drive.airHeatWatts * btuPerHourPerWatt) / (1.08 * designCfm * flow);
    return {
      // the air at the elements is hotter than what leaves: they glow in the middle of it
      heaterDegF: {target: Math.min(900, room + 2 * rise), seconds: flow > 0.3 ? 30 : 75},
      supplyAirDegF: {target: Math.min(300, room + rise), seconds: 45},
      roomDegF: {
        target: now('outdoorDegF') + 5 + drive.airHeatWatts * 0.004 * Math.min(1, flow * 1.2),
        seconds: 720 * 60,
      },
    };
  },
  lookAgainMs: (drive) => (drive.airHeatWatts > 0 ? 60_000 : 5 * 60_000),
};
