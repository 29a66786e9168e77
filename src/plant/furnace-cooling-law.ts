import type {Heading, PlantLaw} from './driven-plant.ts';
import {furnaceLookAgainMs, gasFurnaceHeadings, gasFurnaceResting} from './gas-furnace-law.ts';
import {heatPumpTargets} from './split-heat-pump-targets.ts';

/**
 * A gas furnace with a cooling coil on top and a condensing unit outdoors: the furnace's law, and for the refrigerant
 * that of a split unit which only ever cools.
 */
export const furnaceCoolingLaw: PlantLaw = {
  resting: {
    ...gasFurnaceResting,
    dischargePsig: 180,
    suctionPsig: 180,
    panInches: 0,
    chargeFraction: 1,
    outdoorAirflowFraction: 1,
    compressorShellDegF: 75,
  },
  headings: (drive, now) => {
    const split = heatPumpTargets({
      ...drive,
      // no reversing valve: the outdoor coil always condenses
      valveShifted: true,
      airHeatWatts: 0,
      roomDegF: now('roomDegF'),
      outdoorDegF: now('outdoorDegF'),
      chargeFraction: now('chargeFraction'),
      indoorAirflowFraction: now('indoorAirflowFraction'),
      outdoorAirflowFraction: now('outdoorAirflowFraction'),
      frostFraction: 0,
    });
    const heading = (name: keyof typeof split): Heading => ({
      target: split[name].target,
      seconds: split[name].minutes * 60,
    });
    const cools = drive.compressor > 0.5;
    return {
      ...gasFurnaceHeadings(drive, now),
      dischargePsig: heading('dischargePsig'),
      suctionPsig: heading('suctionPsig'),
      compressorShellDegF: heading('compressorShellDegF'),
      ...(cools ? {supplyAirDegF: heading('supplyAirDegF'), roomDegF: heading('roomDegF')} : {}),
    };
  },
  lookAgainMs: furnaceLookAgainMs,
};
