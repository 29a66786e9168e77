import {nothing, svg, type TemplateResult} from 'lit';
import type {BoardPart, BoardTerminal} from '../../hookup/board-layout.ts';
import type {Element} from '../../parts/element.ts';

/** A part on the board: its box, its name, and what joins its terminals inside. */
export function drawPart({part, x, y, width, height, terminals}: BoardPart): TemplateResult {
  const at = new Map(terminals.map((each) => [each.terminal, each]));
  return svg`<g>
    <rect class="part" x=${x} y=${y} width=${width} height=${height} rx="3"></rect>
    <text class="part-id" x=${x + width / 2} y=${y + 15} text-anchor="middle">${part.id}</text>
    <text class="part-title" x=${x + width / 2} y=${y + 29} text-anchor="middle">${part.title}</text>
    ${part.elements.flatMap((element) =>
      pathsInside(element, part.kind).map(([a, b, word]) => drawInside(at.get(a), at.get(b), word)),
    )}
  </g>`;
}

type PathInside = readonly [string, string, string];

/** Pairs of nodes that an element joins, with the word that stands on the line. */
function pathsInside(element: Element, kind: string): PathInside[] {
  switch (element.is) {
    case 'transformer':
      return element.windings.map(({a, b}): PathInside => [a, b, 'winding']);
    case 'motor':
    case 'threePhaseMotor':
      return [];
    default:
      return [[element.a, element.b, insideWord(kind, element)]];
  }
}

/** What joins two terminals inside a part: a line with a word on it. */
function drawInside(a: BoardTerminal | undefined, b: BoardTerminal | undefined, word: string) {
  if (!a || !b || !word) return nothing;
  const inner = ({x, side}: BoardTerminal): number => (side === 'left' ? x + 36 : x - 36);
  if (a.y === b.y && a.side !== b.side) {
    const middle = (a.x + b.x) / 2;
    return svg`<path class="inside" d="M${inner(a)} ${a.y}H${inner(b)}"></path>
      <text class="inside-text" x=${middle} y=${a.y - 4} text-anchor="middle">${word}</text>`;
  }
  const bend = (inner(a) + inner(b)) / 2;
  return svg`<path class="inside" d="M${inner(a)} ${a.y}H${bend}V${b.y}H${inner(b)}"></path>
    <text class="inside-text" x=${bend + 3} y=${(a.y + b.y) / 2 + 3}>${word}</text>`;
}

function insideWord(kind: string, element: Element): string {
  if (kind === 'fuse') return 'link';
  if (kind === 'breaker' || kind === 'disconnect') return 'pole';
  switch (element.is) {
    case 'contact':
      return element.normally === 'open' ? 'NO' : 'NC';
    case 'coil':
      return 'coil';
    case 'capacitor':
      return '| |';
    case 'impedance':
      return 'load';
    default:
      return '';
  }
}
