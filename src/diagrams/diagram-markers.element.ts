import {nothing, svg, type TemplateResult} from 'lit';
import type {Unit} from '../content/unit.ts';
import {BADGE_HEIGHT, BADGE_SIZE, type Badge} from './badge-places.ts';
import {alongWire} from './diagram-targets.ts';
import type {Drawing, EnclosureBox, Point} from './drawing.ts';
import {LIFTED_BY, liftedEnds, liftedPoint, type LiftedEnd} from './lifted-ends.ts';
import {labelWidth, twoLines} from './text-width.ts';

/** Markers keep their size on the screen: they stand at a point of the drawing, scaled back by `--k`. */
const standing = ({x, y}: Point): string =>
  `transform: translate(${x}px, ${y}px) scale(var(--k, 1))`;

/** A lead's tip on a terminal, told by letter as well as colour: R from above right, B from below left. */
export function leadMarker(lead: 'red' | 'black', at: Point): TemplateResult {
  const away = lead === 'red' ? 1 : -1;
  return svg`<g class="marker lead ${lead}" data-lead=${lead} .style=${standing(at)}>
    <path class="point" d="M0 0L${away * 17} ${away * -22}"></path>
    <path class="tip" d="M0 0L${away * 17} ${away * -22}"></path>
    <rect class="grip" x=${away * 23 - 10} y=${away * -30 - 11} width="20" height="22" rx="7"></rect>
    <text x=${away * 23} y=${away * -30 + 4.7} text-anchor="middle">${lead === 'red' ? 'R' : 'B'}</text>
  </g>`;
}

/** The clamp's jaw around a wire. */
export function clampMarker(at: Point): TemplateResult {
  return svg`<g class="marker clamp" .style=${standing(at)}>
    <circle class="jaw" r="12"></circle>
    <circle class="jaw-fill" r="12"></circle>
    <rect class="plate" x="-9" y="-33" width="18" height="18" rx="4"></rect>
    <text class="plate-text" y="-20" text-anchor="middle">A</text>
  </g>`;
}

/** A jumper between two terminals: a slack arc with a plate on it. One upright between two terminals hangs out to the `bulge` side. */
export function jumperMarker(from: Point, to: Point, bulge: 'left' | 'right'): TemplateResult {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  // it hangs to one side of the straight line, downward where it can
  const upright = Math.abs(to.x - from.x) < Math.abs(to.y - from.y);
  const side = upright
    ? Math.sign(from.y - to.y) * (bulge === 'right' ? 1 : -1)
    : Math.sign(to.x - from.x);
  const slack = 30 + length * 0.22;
  const aside = {
    x: (-(to.y - from.y) / length) * side * slack,
    y: ((to.x - from.x) / length) * side * slack,
  };
  const middle = {x: (from.x + to.x) / 2 + aside.x, y: (from.y + to.y) / 2 + aside.y};
  const d = `M${from.x} ${from.y}Q${middle.x} ${middle.y} ${to.x} ${to.y}`;
  const top = {x: (from.x + to.x) / 4 + middle.x / 2, y: (from.y + to.y) / 4 + middle.y / 2};
  return svg`<g class="marker">
    <path class="jumper" d=${d}></path>
    <path class="jumper-core" d=${d}></path>
    <g .style=${standing(top)}>
      <rect class="plate" x="-28" y="-9" width="56" height="18" rx="4"></rect>
      <text class="plate-text" y="4" text-anchor="middle">Jumper</text>
    </g>
  </g>`;
}

/** A wire end pulled off its terminal. */
export function liftedMarker(end: LiftedEnd): TemplateResult {
  const {at, along} = end;
  const point = (distance: number, aside = 0): string =>
    `${at.x + along.x * distance - along.y * aside} ${at.y + along.y * distance + along.x * aside}`;
  const tip = liftedPoint(end);
  return svg`<g class="marker" data-lifted=${end.end}>
    <path class="lifted-gap" d="M${point(5.5)}L${point(LIFTED_BY + 9)}"></path>
    <path class="lifted-end" d="M${point(LIFTED_BY + 9)}L${tip.x} ${tip.y}"></path>
    <circle class="lifted-tip" cx=${tip.x} cy=${tip.y} r="4"></circle>
    <g .style=${standing(tip)}>
      <rect class="plate" x="-33" y="9" width="66" height="17" rx="4"></rect>
      <text class="plate-text" y="21.5" text-anchor="middle">${end.wire} lifted</text>
    </g>
  </g>`;
}

const CLOSED = 'Cover closed';

/** A closed cover: what lies under it can be neither seen nor reached. */
export function lid(box: EnclosureBox, badges: readonly Point[]): TemplateResult {
  const inset = 5;
  const lines: string[] = [];
  for (let offset = -box.height; offset < box.width; offset += 22) {
    const [x1, y1] = offset >= 0 ? [offset, 0] : [0, -offset];
    const [x2, y2] =
      offset + box.height <= box.width
        ? [offset + box.height, box.height]
        : [box.width, box.width - offset];
    lines.push(`M${box.x + x1} ${box.y + y1}L${box.x + x2} ${box.y + y2}`);
  }
  const title = twoLines(box.title, 'enclosure', box.width * 0.6);
  const widest = Math.max(
    labelWidth(CLOSED, 'enclosure'),
    ...title.map((line) => labelWidth(line, 'enclosure')),
  );
  const [half, tall] = [widest / 2 + 9, title.length * 16 + 33];
  // where no word about a part would lie on it
  const free = [0.5, 0.32, 0.68, 0.16, 0.84].find((it) =>
    badges.every(
      ({x, y}) =>
        x < box.x || x > box.x + box.width || Math.abs(y - box.y - box.height * it) > tall + 12,
    ),
  );
  const share = free ?? 0.5;
  const [cx, cy] = [box.x + box.width / 2, box.y + box.height * share];
  // seen from afar the plate grows back to a size that can be read, as far as the lid is wide
  const most = Math.min(
    (box.width - 8) / (2 * half),
    (2 * box.height * Math.min(share, 1 - share) - 8) / tall,
  );
  return svg`<g class="covered" data-enclosure=${box.id}>
    <rect class="lid" x=${box.x} y=${box.y} width=${box.width} height=${box.height} rx="7"></rect>
    <path class="lid-hatch" d=${lines.join('')}></path>
    <g .style=${`transform: translate(${cx}px, ${cy}px) scale(min(max(1, var(--k, 1)), ${most}))`}>
      <rect class="lid-plate" x=${-half} y=${-tall / 2} width=${2 * half} height=${tall} rx="5"></rect>
      ${title.map((line, i) => svg`<text class="role-enclosure" y=${-tall / 2 + 19 + i * 16} text-anchor="middle" font-size="13" font-weight="700">${line}</text>`)}
      <text class="closed-label" y=${tall / 2 - 11} text-anchor="middle" font-size="12.5">${CLOSED}</text>
    </g>
    ${[
      [box.x + inset + 6, box.y + inset + 6],
      [box.x + box.width - inset - 6, box.y + inset + 6],
      [box.x + inset + 6, box.y + box.height - inset - 6],
      [box.x + box.width - inset - 6, box.y + box.height - inset - 6],
    ].map(([x, y]) => svg`<circle class="screw" cx=${x!} cy=${y!} r="3.4"></circle>`)}
  </g>`;
}

export function badgeMarker({x, y, width, text, part, most}: Badge): TemplateResult {
  // seen from afar it grows back
  const grown = `transform: scale(min(max(1, var(--k, 1) * 0.85), ${most}))`;
  return svg`<g class="badge" data-badge=${part} .style=${grown}>
    <rect x=${x - width / 2} y=${y - BADGE_HEIGHT / 2} width=${width} height=${BADGE_HEIGHT} rx=${BADGE_HEIGHT / 2}></rect>
    <text x=${x} y=${y + 3.5} text-anchor="middle" font-size=${BADGE_SIZE}>${text}</text>
  </g>`;
}

/** What hands have put on the unit. */
export interface Hung {
  readonly red: string | undefined;
  readonly black: string | undefined;
  readonly clamp: string | undefined;
  readonly lifted: readonly string[];
  readonly jumpers: readonly (readonly [string, string])[];
  /** Which of several marks of one terminal a lead was put on. */
  readonly pickedMarks: ReadonlyMap<string, Point>;
}

/** Lifted ends, jumpers, clamp and leads where they are. */
export function markersOn(
  unit: Unit,
  drawing: Drawing,
  hung: Hung,
): (TemplateResult | typeof nothing)[] {
  const ends = liftedEnds(unit, drawing, hung.lifted);
  const at = (terminal: string): Point | undefined => {
    const end = ends.find((it) => it.end === terminal);
    if (end) return liftedPoint(end);
    const picked = hung.pickedMarks.get(terminal);
    const marks = drawing.terminals.filter((mark) => mark.terminal === terminal);
    return marks.find((mark) => picked && mark.x === picked.x && mark.y === picked.y) ?? marks[0];
  };
  const jumpers = hung.jumpers.map(([a, b]) => {
    const [from, to] = [at(a), at(b)];
    if (!from || !to) return nothing;
    const part = drawing.parts.find(({part: id}) => id === a.slice(0, a.indexOf('.')));
    return jumperMarker(from, to, part && from.x < part.x + part.width / 2 ? 'left' : 'right');
  });
  const lead = (which: 'red' | 'black'): TemplateResult | typeof nothing => {
    const terminal = hung[which];
    const point = terminal === undefined ? undefined : at(terminal);
    return point ? leadMarker(which, point) : nothing;
  };
  const clamped =
    hung.clamp === undefined ? undefined : drawing.wires.find(({id}) => id === hung.clamp);
  // beside the middle, where the wire's label stands
  const jaw = alongWire(clamped, 0.75);
  return [
    ...ends.map(liftedMarker),
    ...jumpers,
    jaw ? clampMarker(jaw) : nothing,
    lead('black'),
    lead('red'),
  ];
}
