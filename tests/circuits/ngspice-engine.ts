import {Simulation, type ResultType} from 'eecircuit-engine';

/** ngspice compiled to WebAssembly (package eecircuit-engine, BSD), started once for all files of a test worker. */
let started: Promise<Simulation> | undefined;
let runs = 0;
/** Its memory is never given back: it runs out after some 1,400 units, so a new one takes over well before. */
const mostRuns = 400;

/**
 * Runs a netlist through ngspice.
 *
 * @returns the vectors of its last analysis, by names as ngspice spells them; numbers for DC and transients
 * @throws Error with the words of ngspice where it gives none
 */
export async function runNgspice(netlist: string): Promise<ResultType['data']> {
  if (runs++ % mostRuns === 0) started = undefined;
  started ??= (async () => {
    const simulation = new Simulation();
    await withItsWindow(() => simulation.start());
    return simulation;
  })();
  const simulation = await started;
  simulation.setNetList(netlist);
  const {data} = await withItsWindow(() => simulation.runSim());
  if (data.length === 0) throw new Error(simulation.getError().join(' '));
  return data;
}

let itsWindow: unknown;

/** ngspice makes a global `window` for itself, which others take for a browser: it has it while it works only. */
async function withItsWindow<T>(work: () => Promise<T>): Promise<T> {
  if (itsWindow !== undefined) Reflect.set(globalThis, 'window', itsWindow);
  try {
    return await work();
  } finally {
    itsWindow = Reflect.get(globalThis, 'window');
    Reflect.deleteProperty(globalThis, 'window');
  }
}
