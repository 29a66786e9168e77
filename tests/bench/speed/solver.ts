import {Simulation} from 'eecircuit-engine';
import {all, create} from 'mathjs';
import {LuDecomposition, Matrix} from 'ml-matrix';
import type {Network} from '../../../src/circuits/network.ts';
import {compileNetwork} from '../../../src/circuits/plan.ts';
import {solveAc} from '../../../src/circuits/solve.ts';
import {spiceNodeNames} from '../../../src/circuits/spice-names.ts';
import {spiceNetlist} from '../../../src/circuits/spice-netlist.ts';
import type {Complex, Element} from '../../../src/parts/element.ts';
import {seededRandom} from '../../../src/parts/seeded-random.ts';
import {largestUnit, running} from './largest-unit.ts';
import {nodalSystem, type NodalSystem} from './nodal-analysis.ts';
import {micros, timed, type Row} from './table.ts';

const math = create(all);

/** One AC solve of the largest unit beside three peers on the same netlist, and how solving grows with size. */
export async function solverRows(): Promise<Row[]> {
  const unit = largestUnit();
  const operating = running(unit);
  const {network, states} = operating;
  const plan = compileNetwork(network);
  const solution = solveAc(plan, states);
  const ours = timed(() => solveAc(plan, states, solution).voltsRe[0], 4000);

  const netlist = spiceNetlist(network, states, 'ac');
  const spice = await timeNgspice(netlist, 8);
  const system = nodalSystem(netlist, network.frequencyHz);
  const dense = realMatrix(system);
  const right = rightSide(system);
  // a factoring and a substitution: what one solve is
  const denseTime = timed(() => new LuDecomposition(dense).solve(right).get(0, 0), 3);
  const sparse = timeSparse(system);
  const names = spiceNodeNames(network);
  const apart = (volts: (name: string) => Complex): number => {
    let worst = 0;
    for (const [node, name] of names) {
      if (name === '0') continue;
      const [a, b] = [solution.volts(node), volts(name)];
      worst = Math.max(
        worst,
        Math.hypot(a.re - b.re, a.im - b.im) / Math.max(1, Math.hypot(b.re, b.im)),
      );
    }
    return worst;
  };
  const found = new LuDecomposition(dense).solve(right);
  const worst = apart((name) => {
    const row = system.rowOf.get(name)!;
    return {re: found.get(row, 0), im: found.get(row + system.size, 0)};
  });
  return [
    {
      what: `One AC solve of ${unit.id} (${network.nodes.length} nodes)`,
      measured: `${micros(ours.least)} least, ${micros(ours.median)} median`,
      against: '',
    },
    {
      what: 'The same netlist by ngspice in WebAssembly (eecircuit-engine)',
      measured: micros(spice),
      against: `${ratio(spice, ours.median)} times ours; goal 200`,
    },
    {
      what: `Its nodal matrix by ml-matrix, dense LU (${2 * system.size} real rows; worst node ${worst.toExponential(1)} apart from ours)`,
      measured: micros(denseTime.median),
      against: `${ratio(denseTime.median, ours.median)} times ours; goal 20`,
    },
    {
      what: 'Its nodal matrix by mathjs, sparse complex LU',
      measured: sparse === undefined ? 'fails on it' : micros(sparse),
      against: sparse === undefined ? '' : `${ratio(sparse, ours.median)} times ours; goal 20`,
    },
    growth(),
  ];
}

const ratio = (theirs: number, ours: number): string =>
  Math.round(theirs / ours).toLocaleString('en-US');

async function timeNgspice(netlist: string, calls: number): Promise<number> {
  const simulation = new Simulation();
  await simulation.start();
  const times: number[] = [];
  for (let i = 0; i < calls; i += 1) {
    const from = performance.now();
    simulation.setNetList(netlist);
    await simulation.runSim();
    times.push((performance.now() - from) * 1000);
  }
  // the best of them: the first ones warm it up
  return Math.min(...times);
}

/** The complex system as a real one of twice the size. */
function realMatrix({size, entries}: NodalSystem): Matrix {
  const matrix = Matrix.zeros(2 * size, 2 * size);
  for (const {row, column, value} of entries) {
    const add = (r: number, c: number, amount: number): void => {
      matrix.set(r, c, matrix.get(r, c) + amount);
    };
    add(row, column, value.re);
    add(row + size, column + size, value.re);
    add(row, column + size, -value.im);
    add(row + size, column, value.im);
  }
  return matrix;
}

function rightSide({right}: NodalSystem): Matrix {
  return Matrix.columnVector([...right.map(({re}) => re), ...right.map(({im}) => im)]);
}

/** Microseconds of one sparse solve, or undefined where the library does not get through it. */
function timeSparse({size, entries, right}: NodalSystem): number | undefined {
  const matrix = math.matrix('sparse');
  matrix.resize([size, size]);
  const sums = new Map<string, {row: number; column: number; re: number; im: number}>();
  for (const {row, column, value} of entries) {
    const key = `${row} ${column}`;
    const sum = sums.get(key) ?? {row, column, re: 0, im: 0};
    sums.set(key, {...sum, re: sum.re + value.re, im: sum.im + value.im});
  }
  for (const {row, column, re, im} of sums.values())
    matrix.set([row, column], math.complex(re, im));
  const column = right.map(({re, im}) => [math.complex(re, im)]);
  try {
    const from = performance.now();
    math.lusolve(math.slu(matrix as never, 1, 0.001), column as never);
    return (performance.now() - from) * 1000;
  } catch {
    return undefined;
  }
}

/** Solve time of ladders with rungs of safeties and coils, 50 to 1600 nodes, and the exponent of its growth. */
function growth(): Row {
  const sizes = [50, 100, 200, 400, 800, 1600];
  const times = sizes.map((size) => {
    const plan = compileNetwork(ladderOf(size));
    const solution = solveAc(plan, {});
    return timed(() => solveAc(plan, {}, solution).voltsRe[0], Math.ceil(40_000 / size)).least;
  });
  // least squares in log-log
  const points = sizes.map((size, i) => [Math.log(size), Math.log(times[i])]);
  const mean = (k: 0 | 1): number =>
    points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const exponent =
    points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) /
    points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  return {
    what: 'Solve time against size, 50 to 1600 nodes',
    measured: sizes.map((size, i) => `${size}: ${micros(times[i])}`).join(', '),
    against: `exponent ${exponent.toFixed(2)}; goal at most 1.2`,
  };
}

/** A control circuit as large as wanted: rungs of six contacts in series and a coil between two rails. */
function ladderOf(size: number): Network {
  const random = seededRandom(size);
  const nodes = ['earth', 'R.T'];
  const elements: Element[] = [
    {
      is: 'acSource',
      id: 'S.main',
      a: 'R.T',
      b: 'earth',
      volts: 24,
      degrees: 0,
      ohms: {re: 0.8, im: 0.3},
    },
  ];
  for (let rung = 0; nodes.length - 1 < size; rung += 1) {
    let from = rung === 0 ? 'R.T' : nodes[1 + Math.floor(random() * (nodes.length - 1))];
    for (let i = 0; i < 6 && nodes.length - 1 < size; i += 1) {
      const to = `N${nodes.length}.T`;
      nodes.push(to);
      elements.push(
        {
          is: 'contact',
          id: `C${nodes.length}.x`,
          a: from,
          b: to,
          normally: random() < 0.8 ? 'closed' : 'open',
          closedOhms: 0.02,
        },
        {is: 'conductor', id: `insulation:${to}`, a: to, b: 'earth', ohms: 1e8},
        {is: 'capacitor', id: `stray:${to}`, a: to, b: from, microfarads: 1e-4, leakageOhms: 1e12},
      );
      from = to;
    }
    elements.push({
      is: 'impedance',
      id: `K${rung}.coil`,
      a: from,
      b: 'earth',
      acOhms: {re: 40, im: 70},
      dcOhms: 12,
    });
  }
  return {frequencyHz: 60, nodes, elements};
}
