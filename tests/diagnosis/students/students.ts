import {Planner, stepsOf} from '../../../src/diagnosis/planner.ts';
import {catalogue} from '../../../src/faults/catalogue.ts';
import type {Desk} from './desk.ts';
import {rungs, type Rung} from './rung-points.ts';

/** A way of working at a call whose complaint is about a mode of the unit. */
export type Student = (desk: Desk, mode: string) => void;

/** Puts the leads anywhere, on any function, power on or off, and names anything. */
const randomProber: Student = (desk, mode) => {
  desk.callFor(mode);
  const points = desk.bench.operating.probePoints();
  for (let reading = 0; reading < 12; reading += 1)
    desk.read(desk.one(['ac-volts', 'ac-volts', 'ohms']), desk.one(points), desk.one(points));
  desk.name(desk.one(catalogue(desk.setup.unit)).id);
};

/** Looks, takes no reading, and changes what most often fails, until the unit works or three parts are on the floor. */
const partsChanger: Student = (desk, mode) => {
  desk.callFor(mode);
  const likely = desk.suspects.open.filter(
    ({hypothesis}) => hypothesis.faults[0]?.site.on === 'part',
  );
  for (const {hypothesis} of likely.slice(0, 3)) {
    desk.name(hypothesis.id);
    if (desk.setup.faults.some(({id}) => id === hypothesis.id)) return;
  }
};

/** One lead on the common, the other a step at a time along the rung from the hot side. */
const hopAlong: Student = (desk, mode) => {
  desk.callFor(mode);
  for (const rung of rungs(desk.setup.unit)) {
    const dead = rung.points.findIndex((point) => !isLive(desk, rung, point));
    if (finish(desk, rung, dead)) break;
  }
  desk.nameLikeliest();
};

/** The same rung, halved each time; then what is left is halved too, as long as volts and amps tell it apart. */
const halfSplitter: Student = (desk, mode) => {
  desk.callFor(mode);
  for (const rung of rungs(desk.setup.unit)) {
    let [live, dead] = [-1, rung.points.length];
    while (dead - live > 1) {
      const middle = Math.ceil((live + dead) / 2);
      if (middle >= rung.points.length) break;
      if (isLive(desk, rung, rung.points[middle])) live = middle;
      else dead = middle;
    }
    if (finish(desk, rung, dead === rung.points.length ? -1 : dead)) break;
  }
  const planner = new Planner(desk.suspects);
  for (let reading = 0; reading < 4 && desk.suspects.count > 1; reading += 1) {
    const half = planner.bestNow();
    if (!half) break;
    for (const action of stepsOf(half, desk.bench.view().meter.function)) desk.act(action);
  }
  desk.nameLikeliest();
};

function isLive(desk: Desk, {volts, reference}: Rung, point: string): boolean {
  return (desk.read('ac-volts', point, reference)?.value ?? 0) > volts / 2;
}

/** Reads across where the voltage is lost, or across the load where it arrives. Gives whether the place is found. */
function finish(desk: Desk, rung: Rung, dead: number): boolean {
  if (dead > 0) {
    desk.read('ac-volts', rung.points[dead - 1], rung.points[dead]);
    return true;
  }
  if (dead === 0) return false;
  desk.read('ac-volts', rung.load[0], rung.load[1]);
  return desk.suspects.count <= 2;
}

/** The best reading by gain per minute, until nothing more can be told apart. */
const planned: Student = (desk, mode) => {
  desk.callFor(mode);
  const planner = new Planner(desk.suspects);
  for (let reading = 0; reading < 20 && desk.suspects.count > 1; reading += 1) {
    const [proposal] = planner.best(1, desk.suspects.count <= 40);
    if (!proposal) break;
    for (const action of stepsOf(proposal, desk.bench.view().meter.function)) desk.act(action);
  }
  desk.nameLikeliest();
};

/** From the worst way of working to the best. */
export const students: readonly {readonly name: string; readonly work: Student}[] = [
  {name: 'random prober', work: randomProber},
  {name: 'parts changer', work: partsChanger},
  {name: 'hop-along prober', work: hopAlong},
  {name: 'half-splitter', work: halfSplitter},
  {name: 'planner', work: planned},
];
