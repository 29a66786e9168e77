import type {Network} from '../../src/circuits/network.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import {spiceNodeNames} from '../../src/circuits/spice-names.ts';
import {spiceNetlist} from '../../src/circuits/spice-netlist.ts';
import type {Complex, ElementStates} from '../../src/parts/element.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {runNgspice} from './ngspice-engine.ts';
import type {Drawn} from './random-network.ts';

/** Node volts that ngspice (compiled to WebAssembly, package eecircuit-engine, BSD) finds for a network. */
export async function ngspiceVolts(
  network: Network,
  states: ElementStates,
  kind: 'ac' | 'dc',
): Promise<Map<string, Complex>> {
  const data = await runNgspice(spiceNetlist(network, states, kind));
  const byName = new Map<string, Complex>();
  for (const {name, values} of data) {
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
    if (!found) throw new Error(`ngspice gave no volts for ${name}.`);
    volts.set(node, found);
  }
  return volts;
}

/** Whether two phasors agree to 0.01 % or to one millivolt. */
function agree(ours: Complex, theirs: Complex): boolean {
  const apart = Math.hypot(ours.re - theirs.re, ours.im - theirs.im);
  return apart <= Math.max(1e-3, 1e-4 * Math.hypot(theirs.re, theirs.im));
}

/** The nodes of a network, in words, whose volts differ from those of ngspice. */
export async function networkDisagreements(
  {network, states}: Drawn,
  kind: 'ac' | 'dc',
): Promise<string[]> {
  const solution = (kind === 'ac' ? solveAc : solveDc)(compileNetwork(network), states);
  return disagreements(network, states, kind, (node) => solution.volts(node));
}

/** The nodes of a unit in operation, in words, whose AC or DC volts differ from those of ngspice. */
export async function unitDisagreements(operating: OperatingUnit): Promise<string[]> {
  const {network, states} = operating;
  return [
    ...(await disagreements(network, states, 'ac', (node) => operating.acVolts(node, 'earth'))),
    ...(await disagreements(network, states, 'dc', (node) => ({
      re: operating.dcVolts(node, 'earth'),
      im: 0,
    }))),
  ];
}

async function disagreements(
  network: Network,
  states: ElementStates,
  kind: 'ac' | 'dc',
  voltsOf: (node: string) => Complex,
): Promise<string[]> {
  const found: string[] = [];
  for (const [node, theirs] of await ngspiceVolts(network, states, kind)) {
    const ours = voltsOf(node);
    if (!agree(ours, theirs))
      found.push(`${node} ${kind}: ours ${ours.re} ${ours.im}, ngspice ${theirs.re} ${theirs.im}`);
  }
  return found;
}
