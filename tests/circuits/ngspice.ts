import {Simulation} from 'eecircuit-engine';
import type {Network} from '../../src/circuits/network.ts';
import {spiceNodeNames} from '../../src/circuits/spice-names.ts';
import {spiceNetlist} from '../../src/circuits/spice-netlist.ts';
import type {Complex, ElementStates} from '../../src/parts/element.ts';

let started: Promise<Simulation> | undefined;

async function engine(): Promise<Simulation> {
  started ??= (async () => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  })();
  return started;
}

/** Node volts that ngspice (compiled to WebAssembly, package eecircuit-engine, BSD) finds for a network. */
export async function ngspiceVolts(
  network: Network,
  states: ElementStates,
  kind: 'ac' | 'dc',
): Promise<Map<string, Complex>> {
  const simulation = await engine();
  simulation.setNetList(spiceNetlist(network, states, kind));
  const result = await simulation.runSim();
  const byName = new Map<string, Complex>();
  for (const {name, values} of result.data) {
    const value = values[0];
    byName.set(
      name.toLowerCase(),
      typeof value === 'number' ? {re: value, im: 0} : {re: value.real, im: value.img},
    );
  }
  const volts = new Map<string, Complex>();
  for (const [node, name] of spiceNodeNames(network)) {
    if (name === '0') continue;
    const found = byName.get(`v(${name})`);
    if (!found)
      throw new Error(`ngspice gave no volts for ${name}: ${simulation.getError().join(' ')}`);
    volts.set(node, found);
  }
  return volts;
}

/** Whether two phasors agree to 0.01 % or to one millivolt. */
export function agree(ours: Complex, theirs: Complex): boolean {
  const apart = Math.hypot(ours.re - theirs.re, ours.im - theirs.im);
  return apart <= Math.max(1e-3, 1e-4 * Math.hypot(theirs.re, theirs.im));
}
