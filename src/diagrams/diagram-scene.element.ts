import {nothing, svg, type TemplateResult} from 'lit';
import type {Unit} from '../content/unit.ts';
import {
  labelType,
  type Drawing,
  type Label,
  type PlacedSymbol,
  type Point,
  type TerminalMark,
  type WireDrawing,
} from './drawing.ts';
import {partMarks, type Reach} from './diagram-targets.ts';
import {dotted} from './ladder-lettering.ts';
import {partBoxes} from './picking.ts';
import {symbols, type Stroke} from './symbols.ts';
import {localName} from './wiring.ts';
import {WIRE_LABEL_SIZE, type WireLabel} from './wire-labels.ts';

/** The still part of the drawing as SVG: what does not change while a person works. */
export function scene(drawing: Drawing, chosenPart: string | undefined): TemplateResult {
  const chosen =
    chosenPart === undefined ? [] : partBoxes(drawing).filter((box) => box.part === chosenPart);
  return svg`<g aria-hidden="true">
    ${drawing.enclosures.map(
      (box) =>
        svg`<rect class="enclosure" x=${box.x} y=${box.y} width=${box.width} height=${box.height} rx="7"></rect>`,
    )}
    ${
      drawing.view === 'ladder'
        ? chosen.map(
            (box) =>
              svg`<rect class="chosen-part" x=${box.x - 3} y=${box.y - 3} width=${box.width + 6} height=${box.height + 6} rx="6"></rect>`,
          )
        : nothing
    }
    ${drawing.parts.map(
      (box) => svg`<rect
        class="${box.style} ${drawing.view === 'connection' && box.part === chosenPart ? 'chosen-part' : ''}"
        data-part=${box.part}
        x=${box.x} y=${box.y} width=${box.width} height=${box.height} rx=${box.style === 'box' ? 4 : 7}></rect>`,
    )}
    ${drawing.lines.map((line) => svg`<path class=${line.kind} d=${pathOf(line.points)}></path>`)}
  </g>`;
}

/** Symbols and lettering, over the wires. */
export function inkOver(drawing: Drawing): TemplateResult {
  return svg`<g aria-hidden="true">
    ${drawing.junctions.map(({x, y}) => svg`<circle class="junction" cx=${x} cy=${y} r="3.1"></circle>`)}
    ${drawing.symbols.map(drawSymbol)}
    ${drawing.flags.map(({x, y, width, points}) => {
      const away = points === 'right' ? -1 : 1;
      return svg`<path class="flag" d="M${x} ${y}l${away * 8} -8.5H${x + away * width}v17H${x + away * 8}z"></path>`;
    })}
    ${drawing.labels.map(drawLabel)}
  </g>`;
}

export function drawSymbol(symbol: PlacedSymbol): TemplateResult {
  const shape = symbols[symbol.symbol];
  const half = (symbol.width ?? 48) / 2;
  const [tagX, tagY] = shape.tagAt ?? [0, 3.8];
  return svg`<g class="symbol" data-part=${symbol.part} transform="translate(${symbol.x} ${symbol.y})">
    <g transform="rotate(${symbol.turns * 90})${symbol.mirrored ? ' scale(-1 1)' : ''}">
      ${
        symbol.symbol === 'module'
          ? svg`<rect class="module" x=${-half} y="-11.5" width=${2 * half} height="23" rx="3"></rect>`
          : nothing
      }
      ${
        half < 24 && leaded(symbol)
          ? svg`<svg x=${-half} y="-22" width=${2 * half} height="44" viewBox="${-half} -22 ${2 * half} 44">${shape.strokes.map(drawStroke)}</svg>`
          : shape.strokes.map(drawStroke)
      }
    </g>
    ${
      symbol.tag !== undefined
        ? svg`<text class="tagged" x=${tagX} y=${tagY} text-anchor="middle" font-size="11.5" stroke="none">${symbol.tag}</text>`
        : nothing
    }
  </g>`;
}

/** Symbols with leads, which are cut short where there is less room. */
const leaded = ({symbol}: PlacedSymbol): boolean =>
  symbol !== 'motor' && symbol !== 'earth' && symbol !== 'module';

function drawStroke(stroke: Stroke): TemplateResult {
  if ('circle' in stroke) {
    const [cx, cy, r] = stroke.circle;
    return svg`<circle class=${stroke.solid ? 'solid' : stroke.hollow ? 'hollow' : ''} cx=${cx} cy=${cy} r=${r}></circle>`;
  }
  const kind = [stroke.heavy && 'heavy', stroke.hollow && 'hollow', stroke.solid && 'solid']
    .filter(Boolean)
    .join(' ');
  return svg`<path class=${kind} d=${stroke.d}></path>`;
}

export function drawLabel(label: Label): TemplateResult {
  const {size, bold} = labelType[label.role];
  return svg`<text
    class="role-${label.role}"
    x=${label.x} y=${label.y}
    text-anchor=${label.anchor}
    font-size=${size}
    font-weight=${bold ? 700 : 400}>${label.text}</text>`;
}

export const pathOf = (points: readonly Point[]): string =>
  points.map(({x, y}, i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');

/** A path with its corners rounded a little, as wires are bent. */
export function bentPath(points: readonly Point[], radius = 5): string {
  let d = '';
  points.forEach((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (!before || !after) {
      d += `${before ? 'L' : 'M'}${point.x} ${point.y}`;
      return;
    }
    const cut = (other: Point): Point => {
      const length = Math.hypot(other.x - point.x, other.y - point.y) || 1;
      const r = Math.min(radius, length / 2);
      return {
        x: point.x + ((other.x - point.x) / length) * r,
        y: point.y + ((other.y - point.y) / length) * r,
      };
    };
    const [a, b] = [cut(before), cut(after)];
    d += `L${a.x} ${a.y}Q${point.x} ${point.y} ${b.x} ${b.y}`;
  });
  return d;
}

export interface WireManner {
  readonly chosen: boolean;
  readonly pickable: boolean;
  /** In the order of the Tab key: one target of the drawing is, the rest follow by arrow keys. */
  readonly current: boolean;
  readonly name: string;
}

/** Wires that need their casing to be seen: pale ones on paper, black ones on a dark screen. */
const cased = new Set(['white', 'yellow', 'tan', 'pink', 'grey', 'black']);

export function drawWire(
  wire: WireDrawing,
  view: Drawing['view'],
  manner: WireManner,
): TemplateResult {
  const paths = wire.paths.map((path) => (view === 'connection' ? bentPath(path) : pathOf(path)));
  const strokes = (kind: string): TemplateResult[] =>
    paths.map((d) => svg`<path class=${kind} d=${d}></path>`);
  const [under, over] = view === 'connection' ? [strokes('gap'), strokes('casing')] : [[], []];
  return svg`<g
    class="wire ${cased.has(wire.colour) ? 'cased' : ''} ${manner.chosen ? 'chosen' : ''}"
    .style=${`--colour: var(--wire-${wire.colour})`}
    data-wire=${wire.id}
    data-target=${manner.pickable ? `wire ${wire.id}` : nothing}
    role=${manner.pickable ? 'button' : nothing}
    aria-label=${manner.pickable ? manner.name : nothing}
    aria-hidden=${manner.pickable ? nothing : 'true'}
    tabindex=${manner.pickable ? (manner.current ? 0 : -1) : nothing}
  >${under}${strokes('glow')}${strokes('rim')}${over}${strokes('core')}</g>`;
}

export interface TerminalManner {
  readonly closed: boolean;
  readonly pickable: boolean;
  readonly current: boolean;
  readonly name: string;
  /** Another mark of the terminal that a lead is on. */
  readonly same: boolean;
}

export function drawTerminal(
  mark: TerminalMark,
  index: number,
  manner: TerminalManner,
): TemplateResult {
  const {x, y, width, height} = mark;
  const pickable = manner.pickable && !manner.closed;
  return svg`<g
    class="terminal ${manner.closed ? 'closed' : ''} ${manner.same ? 'same' : ''}"
    data-terminal=${mark.terminal}
    data-target=${pickable ? `terminal ${index}` : nothing}
    role=${pickable ? 'button' : nothing}
    aria-label=${pickable ? manner.name : nothing}
    aria-hidden=${pickable ? nothing : 'true'}
    tabindex=${pickable ? (manner.current ? 0 : -1) : nothing}
    transform="translate(${x} ${y})"
  >
    <circle class="reach" r="12"></circle>
    <rect class="halo" x=${-width / 2 - 5} y=${-height / 2 - 5} width=${width + 10} height=${height + 10} rx="9"></rect>
    <rect class="mark" x=${-width / 2} y=${-height / 2} width=${width} height=${height} rx="4.5"></rect>
    ${
      mark.text !== undefined
        ? svg`<text class="tagged" y="4" text-anchor="middle" font-size="11.5">${mark.text}</text>`
        : nothing
    }
  </g>`;
}

/** Parts as targets, where one is to be pointed out. */
export function partTargets(reach: Reach, current: string): TemplateResult {
  return svg`<g>${partMarks(reach).map(({part, x, y, width, height}) => {
    const title = reach.unit.parts.find(({id}) => id === part)?.title ?? '';
    return svg`<g class="terminal" role="button" tabindex=${current === `part ${part}` ? 0 : -1}
      data-part=${part} data-target="part ${part}" aria-label="Part ${part}, ${title}">
      <rect class="reach" x=${x} y=${y} width=${width} height=${height}></rect>
      <rect class="halo" x=${x - 3} y=${y - 3} width=${width + 6} height=${height + 6} rx="6"></rect>
    </g>`;
  })}</g>`;
}

/** Labels such as `YE W25`, shown when zoomed in and on paper. */
export function wireLabels(labels: readonly WireLabel[]): TemplateResult {
  return svg`<g aria-hidden="true">${labels.map(
    ({x, y, width, text, upright}) => svg`<g
      class="wire-label"
      transform="translate(${x} ${y})${upright ? ' rotate(-90)' : ''}">
      <rect x=${-width / 2} y=${-WIRE_LABEL_SIZE / 2 - 0.6} width=${width} height=${WIRE_LABEL_SIZE + 1.2} rx="2"></rect>
      <text y=${WIRE_LABEL_SIZE * 0.35} text-anchor="middle" font-size=${WIRE_LABEL_SIZE}>${text}</text>
    </g>`,
  )}</g>`;
}

/** "TB1 terminal Y, 24 V strip". */
export function terminalName(unit: Unit, terminal: string): string {
  const id = terminal.slice(0, terminal.indexOf('.'));
  const title = unit.parts.find((part) => part.id === id)?.title;
  return `${id} terminal ${localName(terminal)}${title ? `, ${title}` : ''}`;
}

/** "Wire W25, yellow, TB2 Y to HPS 1". */
export function wireName(unit: Unit, id: string): string {
  const wire = unit.wires.find((it) => it.id === id);
  if (!wire) return `Wire ${id}`;
  const end = (terminal: string): string => dotted(terminal).replace('·', ' ');
  return `Wire ${id}, ${wire.colour}, ${end(wire.from)} to ${end(wire.to)}`;
}
