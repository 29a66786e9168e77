import type {Complex, ElementState, ElementStates, Transformer} from '../parts/element.ts';
import {isMotor, motorWindings, type AnyMotor, type TwoTerminal} from '../parts/motor-windings.ts';
import {openOhms} from './element-admittance.ts';
import {windingOhms} from './motor-windings.ts';
import type {Network} from './network.ts';
import {spiceNodeNames} from './spice-names.ts';

/**
 * The network in a state as a SPICE netlist, for checking this solver against another one.
 *
 * `ac` is an .ac analysis at the line frequency, magnitudes RMS: impedances as R with L or C, sources as V behind
 * their impedance, a transformer's core as a node fed by F and felt through E sources, a turning motor's coupling as
 * E sources fed by the other winding's current over 1 Ω and over j 1 Ω. `dc` is the .op of the direct-current network.
 * Nothing is taken from the solver but the motor's impedances at its speed.
 */
export function spiceNetlist(
  network: Network,
  states: ElementStates,
  kind: 'ac' | 'dc' = 'ac',
): string {
  const hertz = network.frequencyHz;
  const writer = new NetlistWriter(network, kind);
  for (const element of network.elements) {
    writer.comment(element.id);
    if (element.is === 'transformer') writer.transformer(element, states);
    else if (isMotor(element)) writer.motor(element, states);
    else writer.twoTerminal(element, states[element.id] ?? {});
  }
  const names = [...spiceNodeNames(network)].map(([node, name]) => `* ${name} = ${node}`);
  return [
    kind === 'ac'
      ? `Line-frequency network, ${hertz} Hz, volts and amps RMS`
      : 'Direct-current network',
    ...names,
    ...writer.lines,
    kind === 'ac' ? `.ac lin 1 ${hertz} ${hertz}` : '.op',
    '.end',
    '',
  ].join('\n');
}

/** A coil's impedance with its copper warmer or colder than in its data. */
function warmed({re, im}: Complex, copperOhms: number, {copper = 1}: ElementState): Complex {
  return {re: re + (copper - 1) * copperOhms, im};
}

class NetlistWriter {
  readonly lines: string[] = [];
  private readonly kind: 'ac' | 'dc';
  private readonly radiansPerSecond: number;
  private readonly names: Map<string, string>;
  private count = 0;

  constructor(network: Network, kind: 'ac' | 'dc') {
    this.kind = kind;
    this.radiansPerSecond = 2 * Math.PI * network.frequencyHz;
    this.names = spiceNodeNames(network);
  }

  comment(id: string): void {
    this.lines.push(`* ${id}`);
  }

  twoTerminal(element: TwoTerminal, state: ElementState): void {
    const a = this.node(element.a);
    const b = this.node(element.b);
    if (a === b) return;
    if (state.open) {
      this.card('R', a, b, openOhms);
      return;
    }
    switch (element.is) {
      case 'conductor':
        this.card('R', a, b, element.ohms);
        return;
      case 'contact':
        this.card(
          'R',
          a,
          b,
          (state.closed ?? element.normally === 'closed') ? element.closedOhms : openOhms,
        );
        return;
      case 'variable':
        this.card('R', a, b, state.ohms ?? element.restOhms);
        return;
      case 'impedance':
        this.impedance(a, b, this.kind === 'ac' ? element.acOhms : {re: element.dcOhms, im: 0});
        return;
      case 'coil':
        this.impedance(
          a,
          b,
          this.kind === 'dc'
            ? {re: element.dcOhms * (state.copper ?? 1), im: 0}
            : warmed(state.sealed ? element.sealedOhms : element.inrushOhms, element.dcOhms, state),
        );
        return;
      case 'capacitor':
        this.card('R', a, b, element.leakageOhms);
        if (this.kind === 'ac' && element.microfarads > 0)
          this.card('C', a, b, element.microfarads * 1e-6);
        return;
      case 'acSource': {
        if (this.kind === 'dc') {
          this.card('R', a, b, element.ohms.re);
          return;
        }
        const behind = this.inner();
        this.card('V', behind, b, `dc 0 ac ${element.volts} ${element.degrees}`);
        this.impedance(a, behind, element.ohms);
        return;
      }
      case 'dcSource': {
        if (this.kind === 'ac' || !state.on) {
          this.card('R', a, b, element.ohms);
          return;
        }
        const behind = this.inner();
        this.card('V', behind, b, `dc ${element.volts}`);
        this.card('R', a, behind, element.ohms);
      }
    }
  }

  /** Windings are R, L, an ammeter and an E source of turns times the core's node; each F feeds the core. */
  transformer(transformer: Transformer, states: ElementStates): void {
    const burnt = (id: string) => states[id]?.open ?? states[transformer.id]?.open ?? false;
    const copper = states[transformer.id]?.copper ?? 1;
    if (this.kind === 'dc') {
      for (const {id, a, b, ohms} of transformer.windings)
        this.card('R', this.node(a), this.node(b), burnt(id) ? openOhms : ohms * copper);
      return;
    }
    const core = this.inner();
    for (const winding of transformer.windings) {
      const ohms = burnt(winding.id)
        ? {re: openOhms, im: 0}
        : {re: winding.ohms * copper, im: winding.reactanceOhms};
      const [p, q] = [this.inner(), this.inner()];
      this.impedance(this.node(winding.a), p, ohms);
      const ammeter = this.card('V', p, q, '0');
      this.card('E', q, this.node(winding.b), `${core} 0 ${winding.turnsVolts}`);
      this.card('F', '0', core, `${ammeter} ${winding.turnsVolts}`);
    }
    const {re, im} = transformer.magnetisingVa;
    if (re > 0) this.card('R', core, '0', 1 / re);
    if (im > 0) this.card('L', core, '0', 1 / (im * this.radiansPerSecond));
  }

  /** Each winding is its own impedance, an ammeter, and what it feels of every other winding's amps. */
  motor(motor: AnyMotor, states: ElementStates): void {
    const burnt = (id: string) => ((states[id]?.open ?? states[motor.id]?.open) ? openOhms : 0);
    const windings = motorWindings(motor);
    const copper = states[motor.id]?.copper ?? 1;
    if (this.kind === 'dc') {
      for (const {id, a, b, ohms} of windings)
        this.card('R', this.node(a), this.node(b), burnt(id) || ohms * copper);
      return;
    }
    const ohms = windingOhms(motor, states[motor.id]?.speed ?? 0, copper);
    const meters = windings.map(({id, a}, i) =>
      this.ammeter(a, {re: ohms[i][i].re + burnt(id), im: ohms[i][i].im}),
    );
    windings.forEach(({b}, i) => {
      const others = windings.map((_, j) => j).filter((j) => j !== i);
      let from = meters[i].after;
      others.forEach((j, k) => {
        const to = k === others.length - 1 ? this.node(b) : this.inner();
        this.felt(from, to, meters[j].card, ohms[i][j]);
        from = to;
      });
    });
  }

  /** An impedance from a node to an ammeter. */
  private ammeter(from: string, ohms: Complex): {card: string; after: string} {
    const [p, q] = [this.inner(), this.inner()];
    this.impedance(this.node(from), p, ohms);
    return {card: this.card('V', p, q, '0'), after: q};
  }

  /** Volts of transfer ohms times another branch's amps, in series from a point to the next. */
  private felt(from: string, to: string, ammeter: string, ohms: Complex): void {
    const [inPhase, quarterAhead, between] = [this.inner(), this.inner(), this.inner()];
    this.card('F', '0', inPhase, `${ammeter} 1`);
    this.card('R', inPhase, '0', 1);
    this.card('F', '0', quarterAhead, `${ammeter} 1`);
    this.card('L', quarterAhead, '0', 1 / this.radiansPerSecond);
    this.card('E', from, between, `${inPhase} 0 ${ohms.re}`);
    this.card('E', between, to, `${quarterAhead} 0 ${ohms.im}`);
  }

  private impedance(a: string, b: string, ohms: Complex): void {
    if (ohms.im === 0) {
      this.card('R', a, b, ohms.re);
      return;
    }
    const middle = ohms.re === 0 ? a : this.inner();
    if (ohms.re !== 0) this.card('R', a, middle, ohms.re);
    if (ohms.im > 0) this.card('L', middle, b, ohms.im / this.radiansPerSecond);
    else this.card('C', middle, b, 1 / (-ohms.im * this.radiansPerSecond));
  }

  private card(letter: string, a: string, b: string, value: number | string): string {
    this.count += 1;
    const name = `${letter}${this.count}`;
    this.lines.push(`${name} ${a} ${b} ${value}`);
    return name;
  }

  private node(name: string): string {
    return this.names.get(name)!;
  }

  /** A node of the netlist alone. Two underscores keep it apart from the network's own names. */
  private inner(): string {
    this.count += 1;
    return `in__${this.count}`;
  }
}
