import fc from 'fast-check';
import type {Network} from '../../src/circuits/network.ts';
import type {Element, ElementState, ElementStates, MotorModel} from '../../src/parts/element.ts';

/** A network with states for its elements. */
export interface Drawn {
  readonly network: Network;
  readonly states: ElementStates;
}

/** Evenly spread over decades. */
function decades(low: number, high: number): fc.Arbitrary<number> {
  return fc
    .double({min: Math.log10(low), max: Math.log10(high), noNaN: true})
    .map((power) => 10 ** power);
}

const between = (min: number, max: number) => fc.double({min, max, noNaN: true});

const motorModel: fc.Arbitrary<MotorModel> = fc.record({
  ratedVolts: fc.constant(230),
  poles: fc.constantFrom(2, 4, 6),
  mainOhms: decades(0.5, 40),
  mainReactanceOhms: decades(0.5, 40),
  startOhms: decades(1, 80),
  startReactanceOhms: decades(1, 60),
  turnsRatio: between(0.7, 1.8),
  rotorOhms: decades(0.5, 40),
  rotorReactanceOhms: decades(0.5, 30),
  magnetisingOhms: decades(20, 300),
  loadNewtonMetres: fc.constant(1),
  loadExponent: fc.constant(1),
  breakawayNewtonMetres: fc.constant(0.1),
});

type Piece = (
  id: string,
  nodes: string[],
) => {element: Element; state?: ElementState; beside?: readonly Element[]};

/** One element, or a group of equals, between nodes that the caller chooses; its state beside it. */
const pieces = {
  // twelve decades between the smallest and the greatest resistance
  conductor: decades(1e-3, 1e9).map((ohms): Piece => (id, [a, b]) => ({
    element: {is: 'conductor', id, a, b, ohms},
  })),
  contact: fc
    .tuple(decades(1e-3, 1), fc.boolean())
    .map(([closedOhms, closed]): Piece => (id, [a, b]) => ({
      element: {is: 'contact', id, a, b, normally: 'open', closedOhms},
      state: {closed},
    })),
  impedance: fc
    .tuple(decades(0.01, 1e4), decades(0.01, 1e4))
    .map(([re, im]): Piece => (id, [a, b]) => ({
      element: {is: 'impedance', id, a, b, acOhms: {re, im}, dcOhms: re * 0.7},
    })),
  coil: fc
    .tuple(decades(1, 100), between(2, 9), fc.boolean())
    .map(([ohms, ratio, sealed]): Piece => (id, [a, b]) => ({
      element: {
        is: 'coil',
        id,
        a,
        b,
        inrushOhms: {re: ohms, im: ohms * 1.2},
        sealedOhms: {re: ohms * 0.4 * ratio, im: ohms * ratio},
        dcOhms: ohms * 0.4,
      },
      state: {sealed},
    })),
  variable: decades(100, 1e6).map((ohms): Piece => (id, [a, b]) => ({
    element: {is: 'variable', id, a, b, restOhms: 1e4},
    state: {ohms},
  })),
  capacitor: decades(1e-5, 100).map((microfarads): Piece => (id, [a, b]) => ({
    element: {is: 'capacitor', id, a, b, microfarads, leakageOhms: 5e8},
  })),
  acSource: fc
    .tuple(between(12, 480), between(-180, 180), decades(0.01, 5), decades(0.005, 5))
    .map(([volts, degrees, re, im]): Piece => (id, [a, b]) => ({
      element: {is: 'acSource', id, a, b, volts, degrees, ohms: {re, im}},
    })),
  // three phases in wye, a third of a turn apart, the star point on the fourth node: grounded, floating or loaded
  threePhaseSource: fc
    .tuple(between(100, 280), between(-180, 180), decades(0.01, 2), decades(0.01, 2))
    .map(([volts, degrees, re, im]): Piece => (id, [a, b, c, star]) => {
      const phase = (name: string, at: string, turned: number): Element => ({
        is: 'acSource',
        id: `${id}.${name}`,
        a: at,
        b: star,
        volts,
        degrees: degrees + turned,
        ohms: {re, im},
      });
      return {
        element: phase('one', a, 0),
        beside: [phase('two', b, -120), phase('three', c, 120)],
      };
    }),
  // a balanced wye or delta of one impedance
  threePhaseLoad: fc
    .tuple(decades(0.5, 500), decades(0.1, 500), fc.boolean())
    .map(([re, im, delta]): Piece => (id, [a, b, c, star]) => {
      const leg = (name: string, from: string, to: string): Element => ({
        is: 'impedance',
        id: `${id}.${name}`,
        a: from,
        b: to,
        acOhms: {re, im},
        dcOhms: re,
      });
      const ends = delta ? [b, c, a] : [star, star, star];
      return {
        element: leg('one', a, ends[0]),
        beside: [leg('two', b, ends[1]), leg('three', c, ends[2])],
      };
    }),
  dcSource: fc
    .tuple(between(1, 24), decades(0.1, 1e4), fc.boolean())
    .map(([volts, ohms, on]): Piece => (id, [a, b]) => ({
      element: {is: 'dcSource', id, a, b, volts, ohms},
      state: {on},
    })),
  transformer: fc
    .tuple(between(5, 100), between(0.02, 0.2), between(0.05, 0.5), fc.boolean())
    .map(([va, loss, magnetising, tapped]): Piece => (id, [a, b, c, d, e]) => ({
      element: {
        is: 'transformer',
        id,
        magnetisingVa: {re: va * loss, im: va * magnetising},
        windings: [
          {id: `${id}.p1`, a, b, turnsVolts: 208, ohms: 2500 / va, reactanceOhms: 800 / va},
          ...(tapped
            ? [
                {
                  id: `${id}.p2`,
                  a: b,
                  b: e,
                  turnsVolts: 32,
                  ohms: 300 / va,
                  reactanceOhms: 100 / va,
                },
              ]
            : []),
          {id: `${id}.s`, a: c, b: d, turnsVolts: 26.4, ohms: 30 / va, reactanceOhms: 10 / va},
        ],
      },
    })),
  motor: fc
    .tuple(motorModel, fc.oneof(fc.constant(0), between(0, 0.99)))
    .map(([model, speed]): Piece => (id, [a, b, c, d, e]) => ({
      // usually a common end, as in a motor with three leads
      element: {
        is: 'motor',
        id,
        model,
        main: {a, b},
        start: {a: c, b: speed > 0.5 ? b : d === e ? b : d},
      },
      state: {speed},
    })),
};

/** A motor of three phases in any connection that chance gives, turning either way or standing. */
const threePhaseMotor = fc
  .tuple(
    fc.record({
      windingOhms: decades(0.1, 40),
      windingReactanceOhms: decades(0.1, 40),
      rotorOhms: decades(0.1, 40),
      rotorReactanceOhms: decades(0.1, 30),
      magnetisingOhms: decades(10, 300),
    }),
    fc.oneof(fc.constant(0), between(-0.99, 0.99)),
    fc.boolean(),
  )
  .map(([ohms, speed, delta]): Piece => (id, [a, b, c, star]) => {
    const ends = delta ? [b, c, a] : [star, star, star];
    return {
      element: {
        is: 'threePhaseMotor',
        id,
        windings: [
          {id: `${id}.w1`, a, b: ends[0]},
          {id: `${id}.w2`, a: b, b: ends[1]},
          {id: `${id}.w3`, a: c, b: ends[2]},
        ],
        model: {
          ...ohms,
          ratedVolts: 208,
          poles: 4,
          loadNewtonMetres: 1,
          loadExponent: 1,
          breakawayNewtonMetres: 0.1,
          backwardLoadFraction: 1,
        },
      },
      state: {speed},
    };
  });

export const passive = [
  pieces.conductor,
  pieces.contact,
  pieces.impedance,
  pieces.coil,
  pieces.variable,
  pieces.capacitor,
] as const;

/**
 * Networks of 3 to 14 nodes beside earth. Elements fall on nodes by chance, so that parts of the network float on
 * their insulation alone; every node has 100 MΩ to earth.
 */
export function networks(
  options: {reciprocal?: boolean; sources?: boolean; insulationOhms?: number} = {},
): fc.Arbitrary<Drawn> {
  const {reciprocal = false, sources = true, insulationOhms = 1e8} = options;
  const kinds: {weight: number; arbitrary: fc.Arbitrary<Piece>}[] = [
    ...passive.map((arbitrary) => ({weight: 3, arbitrary})),
    {weight: 2, arbitrary: pieces.transformer},
    {weight: 1, arbitrary: pieces.threePhaseLoad},
  ];
  if (!reciprocal)
    kinds.push({weight: 2, arbitrary: pieces.motor}, {weight: 1, arbitrary: threePhaseMotor});
  if (sources)
    kinds.push(
      {weight: 3, arbitrary: pieces.acSource},
      {weight: 1, arbitrary: pieces.threePhaseSource},
      {weight: 1, arbitrary: pieces.dcSource},
    );
  const piece = fc.oneof(...kinds);
  return fc
    .tuple(
      fc.integer({min: 3, max: 14}),
      fc.array(fc.tuple(piece, fc.array(fc.nat(1000), {minLength: 5, maxLength: 5})), {
        minLength: 4,
        maxLength: 24,
      }),
      pieces.acSource,
    )
    .map(([count, drawn, source]) => {
      const nodes = ['earth', ...Array.from({length: count}, (_, i) => `P${i + 1}.T`)];
      const elements: Element[] = [];
      const states: Record<string, ElementState | undefined> = {};
      const place = (made: Piece, id: string, at: readonly number[]): void => {
        const {
          element,
          state,
          beside = [],
        } = made(
          id,
          at.map((number) => nodes[number % nodes.length]),
        );
        // a leg of a group whose ends fall together would be no element at all
        elements.push(element, ...beside.filter((leg) => !('b' in leg) || leg.a !== leg.b));
        if (state) states[id] = state;
      };
      if (sources) place(source, 'S.main', [1, 0]);
      drawn.forEach(([made, at], i) => {
        const [first, second] = at;
        // both ends of a two-terminal piece on one node would be no element at all
        const apart = second % nodes.length === first % nodes.length ? second + 1 : second;
        place(made, `E${i + 1}.x`, [first, apart, ...at.slice(2)]);
      });
      for (const node of nodes.slice(1))
        elements.push({
          is: 'conductor',
          id: `insulation:${node}`,
          a: node,
          b: 'earth',
          ohms: insulationOhms,
        });
      return {network: {frequencyHz: 60, nodes, elements}, states};
    });
}
