import type {Complex} from '../../../src/parts/element.ts';

/** A linear system of a netlist: matrix and right side by rows, and the row of each node. */
export interface NodalSystem {
  readonly size: number;
  readonly entries: readonly {
    readonly row: number;
    readonly column: number;
    readonly value: Complex;
  }[];
  readonly right: readonly Complex[];
  readonly rowOf: ReadonlyMap<string, number>;
}

/**
 * Modified nodal analysis of an exported netlist, as a general-purpose linear-algebra library would be given it.
 * Knows what this project's netlists hold: R, L, C, V (`… AC magnitude degrees`), E and F.
 */
export function nodalSystem(netlist: string, frequencyHz: number): NodalSystem {
  const cards = netlist
    .split('\n')
    .slice(1)
    .filter((line) => /^[A-Za-z]/.test(line))
    .map((line) => line.trim().split(/\s+/));
  const omega = 2 * Math.PI * frequencyHz;
  const rowOf = new Map<string, number>();
  const node = (name: string): number => {
    if (name === '0') return -1;
    if (!rowOf.has(name)) rowOf.set(name, rowOf.size);
    return rowOf.get(name)!;
  };
  for (const [, a, b, c, d] of cards.filter(([id]) => /^[RLCVEF]/.test(id))) {
    node(a);
    node(b);
    void [c, d];
  }
  let size = rowOf.size;
  const currentOf = new Map<string, number>();
  for (const [id] of cards) if (/^[VE]/.test(id)) currentOf.set(id.toLowerCase(), size++);
  const entries: {row: number; column: number; value: Complex}[] = [];
  const right: Complex[] = Array.from({length: size}, () => ({re: 0, im: 0}));
  const put = (row: number, column: number, re: number, im = 0): void => {
    if (row >= 0 && column >= 0) entries.push({row, column, value: {re, im}});
  };
  const admit = (a: number, b: number, re: number, im: number): void => {
    put(a, a, re, im);
    put(b, b, re, im);
    put(a, b, -re, -im);
    put(b, a, -re, -im);
  };
  for (const [id, first, second, ...rest] of cards) {
    const [a, b] = [node(first), node(second)];
    const own = currentOf.get(id.toLowerCase());
    switch (id[0]) {
      case 'R':
        admit(a, b, 1 / Number(rest[0]), 0);
        break;
      case 'L':
        admit(a, b, 0, -1 / (omega * Number(rest[0])));
        break;
      case 'C':
        admit(a, b, 0, omega * Number(rest[0]));
        break;
      case 'V':
      case 'E':
        put(a, own!, 1);
        put(b, own!, -1);
        put(own!, a, 1);
        put(own!, b, -1);
        if (id.startsWith('E')) {
          const gain = Number(rest[2]);
          put(own!, node(rest[0]), -gain);
          put(own!, node(rest[1]), gain);
        } else {
          const at = rest.findIndex((word) => word.toUpperCase() === 'AC');
          const [magnitude, degrees] =
            at < 0 ? [0, 0] : [Number(rest[at + 1]), Number(rest[at + 2] ?? 0)];
          right[own!] = {
            re: magnitude * Math.cos((degrees * Math.PI) / 180),
            im: magnitude * Math.sin((degrees * Math.PI) / 180),
          };
        }
        break;
      case 'F': {
        const through = currentOf.get(rest[0].toLowerCase())!;
        put(a, through, Number(rest[1]));
        put(b, through, -Number(rest[1]));
        break;
      }
      default:
        throw new Error(`${id} is not a card of this project's netlists.`);
    }
  }
  return {size, entries, right, rowOf};
}
