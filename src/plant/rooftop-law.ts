import type {Heading, PlantLaw} from './driven-plant.ts';
import {heatPumpTargets} from './split-heat-pump-targets.ts';

/** How often targets are looked at again while the values they depend on drift. */
const everyMs = 5 * 60_000;

/** Each circuit does half of what a whole unit does to the room and to the air it blows. */
const circuitShare = 0.5;

/**
 * A rooftop cooling unit: two refrigerant circuits with one condenser fan and one blower, and a damper that lets
 * outdoor air into the return. Each circuit follows the cooling side of {@link heatPumpTargets} on the mixed air; the
 * room is cooled by what runs and by the outdoor air that the blower brings in. Rules of thumb (common practice, no source).
 */
export const rooftopLaw: PlantLaw = {
  resting: {
    roomDegF: 75,
    outdoorDegF: 85,
    outdoorHumidityFraction: 0.5,
    mixedAirDegF: 75,
    damperFraction: 0,
    supplyAirDegF: 75,
    dischargePsig: 220,
    suctionPsig: 220,
    chargeFraction: 1,
    compressorShellDegF: 85,
    secondDischargePsig: 220,
    secondSuctionPsig: 220,
    secondChargeFraction: 1,
    secondShellDegF: 85,
    panInches: 0,
    indoorAirflowFraction: 1,
    outdoorAirflowFraction: 1,
  },
  headings: (drive, now) => {
    const room = now('roomDegF');
    const outdoor = now('outdoorDegF');
    const damper = now('damperFraction');
    const blows = drive.indoorBlower > 0.1;
    // the air that comes to the coil: return air and outdoor air as the damper mixes them
    const mixed = room + (outdoor - room) * damper;
    const circuit = (compressor: number, charge: string) =>
      heatPumpTargets({
        ...drive,
        compressor,
        // no reversing valve, no heater, no frost worth speaking of
        valveShifted: true,
        airHeatWatts: 0,
        roomDegF: blows ? now('mixedAirDegF') : room,
        outdoorDegF: Math.max(outdoor, 46),
        chargeFraction: now(charge),
        indoorAirflowFraction: now('indoorAirflowFraction'),
        outdoorAirflowFraction: now('outdoorAirflowFraction'),
        frostFraction: 0,
      });
    const first = circuit(drive.compressor, 'chargeFraction');
    const second = circuit(drive.secondCompressor, 'secondChargeFraction');
    const running = [
      ...(drive.compressor > 0.5 ? [first] : []),
      ...(drive.secondCompressor > 0.5 ? [second] : []),
    ];
    const heading = ({target, minutes}: {target: number; minutes: number}): Heading => ({
      target,
      seconds: minutes * 60,
    });
    const atCoil = now('mixedAirDegF');
    const coils = running.reduce(
      (sum, {supplyAirDegF}) => sum + circuitShare * (supplyAirDegF.target - atCoil),
      0,
    );
    // what the building gains by itself, less what each circuit and the outdoor air take away
    const gains = Math.max(outdoor, 60) + 5;
    const cooled = running.reduce(
      (sum, {roomDegF}) => sum + circuitShare * (roomDegF.target - (Math.max(outdoor, 46) + 5)),
      0,
    );
    const freshAir = blows ? 0.8 * damper * Math.max(0, gains - outdoor) : 0;
    return {
      damperFraction: {target: drive.damper, seconds: 30},
      mixedAirDegF: {target: mixed, seconds: 20},
      supplyAirDegF: {target: (blows ? atCoil : room) + coils, seconds: 90},
      roomDegF: {target: gains + cooled - freshAir, seconds: 720 * 60},
      dischargePsig: heading(first.dischargePsig),
      suctionPsig: heading(first.suctionPsig),
      compressorShellDegF: heading(first.compressorShellDegF),
      secondDischargePsig: heading(second.dischargePsig),
      secondSuctionPsig: heading(second.suctionPsig),
      secondShellDegF: heading(second.compressorShellDegF),
    };
  },
  // while a damper strokes, the mix follows it
  lookAgainMs: (drive, now) =>
    Math.abs(drive.damper - now('damperFraction')) > 0.02 ||
    Math.abs(
      now('mixedAirDegF') -
        (now('roomDegF') + (now('outdoorDegF') - now('roomDegF')) * now('damperFraction')),
    ) > 1
      ? 15_000
      : everyMs,
};
