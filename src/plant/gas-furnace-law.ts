import type {Heading, PlantLaw} from './driven-plant.ts';
import type {PlantDrive} from './plant.ts';

const minutes = (count: number): number => count * 60;
/** A motor turns at about 0.9 of synchronous speed. */
const share = (turning: number): number => Math.min(1, Math.abs(turning) / 0.9);

/** Gas lights on a surface of this heat (natural gas ignites near 1200 °F in still air; common practice, no source). */
const ignitesAtDegF = 1800;
const enoughGasInches = 4;
const alight = 0.5;

/** Whether the burners burn now: gas comes, and either a flame or an igniter is there to light it. */
function burns(drive: PlantDrive, now: (name: string) => number): boolean {
  const gas = drive.gasOpen && now('gasInches') >= enoughGasInches;
  return gas && (now('flameFraction') >= alight || now('igniterDegF') >= ignitesAtDegF);
}

/** Share of the designed air that passes the heat exchanger; a still blower leaves a little natural draft. */
export function indoorFlow(drive: PlantDrive, now: (name: string) => number): number {
  return Math.max(0.05, share(drive.indoorBlower) * now('indoorAirflowFraction'));
}

/**
 * Where the values of a gas furnace head: igniter, flame, draft of the inducer, heat exchanger, air. An 80 000 Btu/h
 * furnace warms 1200 cfm by some 50 °F (Btu/h = 1.08 × cfm × °F, the rule for standard air); the rest is rules of
 * thumb (common practice, no source).
 */
export function gasFurnaceHeadings(
  drive: PlantDrive,
  now: (name: string) => number,
): Readonly<Record<string, Heading>> {
  const burning = burns(drive, now);
  const flow = indoorFlow(drive, now);
  const room = now('roomDegF');
  const draft = 0.9 * share(drive.inducer) ** 2 * (0.2 + 0.8 * now('ventFraction'));
  const rolls = burning && (now('flueFraction') < 0.5 || draft < 0.3);
  const exchanger = burning ? Math.min(900, room + 55 + 30 / flow) : room;
  return {
    igniterDegF: {
      // 480 W heats it to 2500 °F
      target: Math.max(room, Math.min(2800, room + 5 * drive.igniterWatts)),
      seconds: 6,
    },
    flameFraction: {target: burning ? 1 : 0, seconds: 0.5},
    draftInches: {target: draft, seconds: 2},
    // iron holds its heat: it cools slowly with no air over it
    heatExchangerDegF: {target: exchanger, seconds: flow > 0.3 ? 60 : 180},
    burnerFrontDegF: {target: rolls ? 700 : burning ? room + 45 : room, seconds: rolls ? 20 : 120},
    supplyAirDegF: {
      target: room + (now('heatExchangerDegF') - room) * 0.6,
      seconds: 30,
    },
    roomDegF: {
      target: now('outdoorDegF') + 5 + (burning ? 75 * Math.min(1, flow * 1.2) : 0),
      seconds: minutes(720),
    },
  };
}

/** Values at which a furnace stands when nobody has said otherwise. */
export const gasFurnaceResting: Readonly<Record<string, number>> = {
  roomDegF: 70,
  outdoorDegF: 40,
  supplyAirDegF: 70,
  gasInches: 7,
  draftInches: 0,
  igniterDegF: 70,
  flameFraction: 0,
  heatExchangerDegF: 70,
  burnerFrontDegF: 70,
  ventFraction: 1,
  flueFraction: 1,
  indoorAirflowFraction: 1,
};

/** While gas passes and does not burn, each second: the igniter may yet get hot enough. */
export function furnaceLookAgainMs(drive: PlantDrive, now: (name: string) => number): number {
  if (drive.gasOpen && now('flameFraction') < alight) return 500;
  // the air follows the heat exchanger
  return drive.gasOpen || drive.indoorBlower !== 0 ? 15_000 : 5 * 60_000;
}

/** A gas furnace that only heats. */
export const gasFurnaceLaw: PlantLaw = {
  resting: gasFurnaceResting,
  headings: gasFurnaceHeadings,
  lookAgainMs: furnaceLookAgainMs,
};
