import {buildNetwork, unaltered} from '../../src/circuits/build-network.ts';
import {motorOhms} from '../../src/circuits/motor-impedance.ts';
import type {Network} from '../../src/circuits/network.ts';
import {spiceNetlist} from '../../src/circuits/spice-netlist.ts';
import {spiceNodeNames} from '../../src/circuits/spice-names.ts';
import type {Unit} from '../../src/content/unit.ts';
import type {Complex, ElementState} from '../../src/parts/element.ts';
import type {PhaseMonitorData} from '../../src/parts/phase-monitor.ts';
import type {SequencerData} from '../../src/parts/sequencer.ts';
import {runNgspice} from '../circuits/ngspice-engine.ts';

/** One board in one combination: which contacts a hand holds closed or open, and what is burnt open. */
export interface Case {
  readonly unit: Unit;
  readonly closed: ReadonlyMap<string, boolean>;
  readonly open: readonly string[];
}

export interface SettledCase {
  volts(a: string, b: string): number;
  readonly sealed: ReadonlySet<string>;
  readonly turning: ReadonlySet<string>;
  /** Armatures that pulled in and let go without end. */
  readonly restless: ReadonlySet<string>;
}

/**
 * Settles many boards at once with ngspice alone (package eecircuit-engine, BSD): all of them side by side in one
 * netlist, each a subcircuit, and armatures, electronics and motors moved here by the volts that ngspice finds.
 */
export async function settleWithNgspice(cases: readonly Case[]): Promise<SettledCase[]> {
  const networks = new Map<Unit, Network>();
  const boards = cases.map((one) => {
    if (!networks.has(one.unit)) networks.set(one.unit, buildNetwork(one.unit, unaltered));
    return new Board(one, networks.get(one.unit)!);
  });
  for (let round = 0; round < 12; round++) {
    const busy = boards.filter((board) => !board.isDone);
    if (busy.length === 0) break;
    const volts = await solveTogether(busy.map((board) => board.body()));
    busy.forEach((board, i) => board.react((name) => volts.get(`x${i}.${name}`)));
  }
  return boards;
}

async function solveTogether(bodies: readonly string[]): Promise<Map<string, Complex>> {
  const data = await runNgspice(
    [
      'Boards side by side',
      ...bodies.flatMap((body, i) => [`.subckt board${i} port`, body, 'Rport port 0 1', '.ends']),
      ...bodies.map((_, i) => `X${i} p${i} board${i}`),
      '.ac lin 1 60 60',
      '.end',
      '',
    ].join('\n'),
  );
  const volts = new Map<string, Complex>();
  for (const {name, values} of data) {
    const node = /^v\((.+)\)$/.exec(name.toLowerCase())?.[1] ?? name.toLowerCase();
    const value = values[0];
    volts.set(
      node,
      typeof value === 'number' ? {re: value, im: 0} : {re: value.real, im: value.img},
    );
  }
  return volts;
}

class Board implements SettledCase {
  readonly sealed = new Set<string>();
  readonly turning = new Set<string>();
  readonly restless = new Set<string>();
  isDone = false;
  private blank = false;
  private rounds = 0;
  private readonly one: Case;
  private readonly network: Network;
  private readonly names: Map<string, string>;
  private found: (name: string) => Complex | undefined = () => undefined;

  constructor(one: Case, network: Network) {
    this.one = one;
    this.network = network;
    this.names = spiceNodeNames(network);
  }

  /** Cards of this board in its present state, without title, analysis and end. */
  body(): string {
    const lines = spiceNetlist(this.network, this.states(), 'ac').split('\n');
    return lines.filter((line) => /^[A-Z]\w*\s/.test(line)).join('\n');
  }

  react(found: (name: string) => Complex | undefined): void {
    this.found = found;
    this.rounds++;
    const changed: string[] = [];
    for (const part of this.one.unit.parts) {
      for (const element of part.elements) {
        if (element.is === 'coil') {
          const {coil} = part.data as {
            coil: {ratedVolts: number; pullInFraction: number; dropOutFraction: number};
          };
          const share = this.volts(element.a, element.b) / coil.ratedVolts;
          const is = this.sealed.has(element.id);
          if (is ? share < coil.dropOutFraction : share >= coil.pullInFraction) {
            if (is) this.sealed.delete(element.id);
            else this.sealed.add(element.id);
            changed.push(element.id);
          }
        }
        if (element.is === 'motor' && !this.turning.has(element.id)) {
          // standstill torque 4a·Rf·|Im||Is| sin φ/ωs (Fitzgerald, Electric Machinery; from memory)
          const {model} = element;
          const ohms = motorOhms(model, 0);
          const [im, is] = [
            divide(this.phasor(element.main.a, element.main.b), ohms.main),
            divide(this.phasor(element.start.a, element.start.b), ohms.start),
          ];
          const cross = is.im * im.re - is.re * im.im;
          const torque =
            (4 * model.turnsRatio * ohms.forward.re * cross) / ((4 * Math.PI * 60) / model.poles);
          if (torque > model.breakawayNewtonMetres) {
            this.turning.add(element.id);
            changed.push(element.id);
          }
        }
        if (part.kind === 'sequencer' && element.is === 'contact') {
          // steady rise of the bimetal goes with the heater's watts
          const {volts, riseDegF, contacts} = part.data as SequencerData;
          const heater = part.elements[0] as {a: string; b: string};
          const rise = riseDegF * (this.volts(heater.a, heater.b) / volts) ** 2;
          const own = contacts.find(({id}) => element.id.endsWith(`.${id}`))!;
          this.turn(
            element.id,
            this.sealed.has(element.id)
              ? rise >= own.opensAtRiseDegF
              : rise >= own.closesAtRiseDegF,
            changed,
          );
        }
        if (part.kind === 'phase-monitor' && element.id.endsWith('.ok'))
          this.turn(
            element.id,
            this.hasThreePhases(part.id, part.data as PhaseMonitorData),
            changed,
          );
        if (part.kind === 'thermostat' && element.is === 'impedance') {
          const blank = this.volts(element.a, element.b) < 16;
          if (blank !== this.blank) changed.push(part.id);
          this.blank = blank;
        }
      }
    }
    this.isDone = changed.length === 0;
    if (this.rounds > 8) for (const id of changed) this.restless.add(id);
  }

  private turn(id: string, on: boolean, changed: string[]): void {
    if (on === this.sealed.has(id)) return;
    if (on) this.sealed.add(id);
    else this.sealed.delete(id);
    changed.push(id);
  }

  /** Imbalance as NEMA MG-1 reckons it (from memory), and the order of the phases by the sign of the area they span. */
  private hasThreePhases(part: string, data: PhaseMonitorData): boolean {
    const [p, q, r] = [
      ['L1', 'L2'],
      ['L2', 'L3'],
      ['L3', 'L1'],
    ].map(([a, b]) => this.phasor(`${part}.${a}`, `${part}.${b}`));
    const volts = [p, q, r].map(({re, im}) => Math.hypot(re, im));
    const mean = (volts[0] + volts[1] + volts[2]) / 3;
    const worst = Math.max(...volts.map((each) => Math.abs(each - mean)));
    const area = p.re * q.im - p.im * q.re;
    return (
      area < 0 &&
      worst <= (data.imbalancePercent / 100) * mean &&
      Math.min(...volts) >= (data.lowPercent / 100) * data.ratedVolts &&
      Math.max(...volts) <= (data.highPercent / 100) * data.ratedVolts
    );
  }

  volts(a: string, b: string): number {
    const {re, im} = this.phasor(a, b);
    return Math.hypot(re, im);
  }

  private phasor(a: string, b: string): Complex {
    const [p, q] = [a, b].map((node) => {
      const name = this.names.get(node)!;
      return name === '0' ? {re: 0, im: 0} : this.found(name)!;
    });
    return {re: p.re - q.re, im: p.im - q.im};
  }

  private states(): Record<string, ElementState> {
    const states: Record<string, ElementState> = {};
    for (const part of this.one.unit.parts) {
      const coil = part.elements.find(({is}) => is === 'coil');
      for (const element of part.elements) {
        if (element.is === 'coil') states[element.id] = {sealed: this.sealed.has(element.id)};
        if (element.is === 'motor')
          states[element.id] = {speed: this.turning.has(element.id) ? 0.95 : 0};
        if (element.is !== 'contact') continue;
        const byHand = this.one.closed.get(element.id);
        if (part.kind === 'sequencer') states[element.id] = {closed: this.sealed.has(element.id)};
        else if (part.kind === 'phase-monitor')
          states[element.id] = {
            closed: this.sealed.has(`${part.id}.ok`) === (element.normally === 'open'),
          };
        else if (coil && byHand === undefined)
          states[element.id] = {closed: this.sealed.has(coil.id) === (element.normally === 'open')};
        else if (part.kind === 'thermostat')
          states[element.id] = {closed: !this.blank && byHand === true};
        else if (byHand !== undefined) states[element.id] = {closed: byHand};
      }
    }
    for (const id of this.one.open) states[id] = {open: true};
    return states;
  }
}

function divide(p: Complex, q: Complex): Complex {
  const square = q.re ** 2 + q.im ** 2;
  return {re: (p.re * q.re + p.im * q.im) / square, im: (p.im * q.re - p.re * q.im) / square};
}
