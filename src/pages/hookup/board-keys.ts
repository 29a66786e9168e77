import type {BoardTerminal} from '../../hookup/board-layout.ts';

const ways: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The terminal that an arrow key goes to: the nearest one that way; undefined for another key or at the edge. */
export function terminalBeyond(
  key: string,
  from: BoardTerminal,
  all: readonly BoardTerminal[],
): BoardTerminal | undefined {
  const way = ways[key];
  if (!way) return undefined;
  const [dx, dy] = way;
  const cost = ({x, y}: BoardTerminal): number => {
    const along = (x - from.x) * dx + (y - from.y) * dy;
    const aside = Math.abs((x - from.x) * dy) + Math.abs((y - from.y) * dx);
    return along <= 1 ? Infinity : along + 2.5 * aside;
  };
  const [best] = all.filter((each) => cost(each) < Infinity).sort((p, q) => cost(p) - cost(q));
  return best;
}

export const isArrow = (key: string): boolean => Object.hasOwn(ways, key);

/** Does the deed on Enter and on the space bar: groups of a drawing fire no click on them. */
export function onEnter(event: KeyboardEvent, deed: () => void): void {
  if (event.key !== 'Enter' && event.key !== ' ') return;
  event.preventDefault();
  deed();
}
