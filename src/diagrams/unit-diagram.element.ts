import {LitElement, html, nothing, svg, type PropertyValues, type TemplateResult} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import type {Unit} from '../content/unit.ts';
import {placeBadges} from './badge-places.ts';
import {drawConnections} from './connection-drawing.ts';
import {
  badgeMarker,
  clampMarker,
  jumperMarker,
  leadMarker,
  lid,
  liftedEnds,
  liftedMarker,
  liftedPoint,
} from './diagram-markers.element.ts';
import {
  drawTerminal,
  drawWire,
  inkOver,
  scene,
  terminalName,
  wireLabels,
  wireName,
} from './diagram-scene.element.ts';
import type {Box, Drawing, Point, TerminalMark, WireDrawing} from './drawing.ts';
import {layoutLadder} from './ladder-layout.ts';
import type {LayoutFile} from './layout-file.ts';
import {nextInDirection, partBoxes, pick, withinReach, type Pickable} from './picking.ts';
import {unitDiagramStyles} from './unit-diagram.styles.ts';
import {
  bringIntoView,
  fit,
  fitWidth,
  panBy,
  PROBING_SCALE,
  toDrawing,
  zoomAt,
  type Size,
  type Viewport,
} from './viewport.ts';
import {labelWires, type WireLabel} from './wire-labels.ts';

/** What a pick is for: placing a lead, closing the clamp, working on a wire, pointing something out. */
export type DiagramMode = 'red' | 'black' | 'clamp' | 'lift' | 'select';

/** What a person at the unit sees or hears of a part. */
export interface SeenOrHeard {
  readonly part: string;
  readonly is: string;
  readonly display?: string;
}

interface Target extends Point {
  readonly key: string;
  readonly box: Box;
}

/** Below this movement in pixels a press is a pick, not a drag. */
const SLOP = 6;
const NEAR_SCALE = 1.25;
const TOOLS_HEIGHT = 56;

/**
 * The drawing of a unit as ladder or connection diagram, to look at and to probe. It is given the unit and
 * what can be seen of it, never what is wrong with it.
 *
 * Drag, wheel or arrow keys move it; + − keys, Ctrl and wheel, or two fingers zoom it; 0 fits it.
 * Tab reaches the targets of the present mode; arrow keys go from one to the next, Enter or Space picks.
 *
 * @event {{terminal: string}} terminal-picked - A person picked a terminal (`K1.A1`) or lifted wire end (`W12.from`).
 * @event {{wire: string}} wire-picked - A person picked a wire.
 * @event {{part: string}} part-picked - A person picked a part.
 */
@customElement('rb-unit-diagram')
export class UnitDiagram extends LitElement {
  static override styles = unitDiagramStyles;

  @property({attribute: false}) unit?: Unit;
  @property() view: 'ladder' | 'connection' = 'ladder';
  /** Layout of the connection drawing, as committed or as searched in a worker. */
  @property({attribute: false}) layout: unknown;
  @property() mode: DiagramMode = 'red';
  /** Terminals that the leads are on. */
  @property({attribute: false}) red?: string;
  @property({attribute: false}) black?: string;
  /** Wire in the clamp's jaw. */
  @property({attribute: false}) clamp?: string;
  /** Lifted wire ends: `W12.from`. */
  @property({attribute: false}) lifted: readonly string[] = [];
  @property({attribute: false}) jumpers: readonly (readonly [string, string])[] = [];
  @property({attribute: false}) selectedPart?: string;
  @property({attribute: false}) selectedWire?: string;
  /** Enclosures whose covers are off. Not given: everything can be reached. */
  @property({attribute: false}) openEnclosures?: readonly string[];
  @property({attribute: false}) observations: readonly SeenOrHeard[] = [];

  @state() private drawing?: Drawing;
  @state() private problem = '';
  @state() private near = false;
  @state() private printing = false;
  @state() private current = '';

  @query('.frame') private frame!: HTMLElement;
  @query('.world') private world?: SVGGElement;

  #labels: readonly WireLabel[] = [];
  #viewport: Viewport = {scale: 1, x: 0, y: 0};
  #size: Size = {width: 0, height: 0};
  #aspect = 1.6;
  /** A person has moved the drawing: resizing keeps it where it is. */
  #moved = false;
  #pointers = new Map<number, Point>();
  #pressed?: {readonly at: Point; readonly pointer: string; dragged: boolean};
  /** Which of several marks of one terminal was picked: the lead is drawn there. */
  #pickedMark = new Map<string, Point>();
  #observer?: ResizeObserver;
  #observed?: HTMLElement;
  #print = typeof matchMedia === 'function' ? matchMedia('print') : undefined;
  #aimed?: Element;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#print?.addEventListener('change', this.#onPrint);
    window.addEventListener('beforeprint', this.#onPrint);
    window.addEventListener('afterprint', this.#onPrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer?.disconnect();
    this.#observer = undefined;
    this.#observed = undefined;
    this.#print?.removeEventListener('change', this.#onPrint);
    window.removeEventListener('beforeprint', this.#onPrint);
    window.removeEventListener('afterprint', this.#onPrint);
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('unit') || changed.has('view') || changed.has('layout')) this.#redraw();
  }

  protected override updated(): void {
    // the frame comes and goes with the drawing: a layout may still be on its way
    if (this.frame && this.frame !== this.#observed) {
      this.#observer?.disconnect();
      this.#observed = this.frame;
      this.#observer = new ResizeObserver(() => this.#measure());
      this.#observer.observe(this.frame);
      // wheel must be cancelled, and Lit adds passive listeners for it
      this.frame.addEventListener('wheel', this.#onWheel, {passive: false});
    }
    this.#apply();
  }

  override focus(options?: FocusOptions): void {
    const target = this.#element(this.current) ?? this.#element(this.#targets()[0]?.key ?? '');
    if (target) target.focus(options);
    else this.frame?.focus(options);
  }

  /** Bring a terminal (`K1.A1`), wire or part into view, large enough to probe. */
  reveal(id: string): void {
    const box = this.#boxOf(id);
    if (!box || !this.drawing) return;
    if (this.#viewport.scale < PROBING_SCALE) {
      const centre = {x: this.#size.width / 2, y: this.#size.height / 2};
      this.#viewport = zoomAt(
        this.#viewport,
        PROBING_SCALE / this.#viewport.scale,
        centre,
        this.drawing,
        this.#size,
      );
    }
    this.#moveTo(bringIntoView(this.#viewport, box, this.#clear()), 'glide');
  }

  /** The whole drawing in the frame. */
  fit(): void {
    if (!this.drawing) return;
    this.#moved = false;
    this.#moveTo(this.#firstView(), 'glide');
  }

  zoom(factor: number): void {
    if (!this.drawing) return;
    this.#moved = true;
    const centre = {x: this.#size.width / 2, y: this.#size.height / 2};
    this.#moveTo(zoomAt(this.#viewport, factor, centre, this.drawing, this.#size), 'glide');
  }

  override render(): TemplateResult {
    const {unit, drawing} = this;
    if (!unit || !drawing) return html`<p class="empty">${this.problem}</p>`;
    const what = this.view === 'ladder' ? 'ladder drawing' : 'connection drawing';
    return html`<div
        class="frame"
        role="group"
        tabindex="0"
        aria-label="${unit.title}, ${what}. Arrow keys move it, plus and minus zoom, 0 fits."
        @keydown=${this.#onKeydown}
        @focusin=${this.#onFocusin}
        @pointerdown=${this.#onPointerdown}
        @pointermove=${this.#onPointermove}
        @pointerup=${this.#onPointerup}
        @pointercancel=${this.#onPointercancel}
        @pointerleave=${this.#onPointerleave}
        @click=${this.#onClick}
      >
        <svg
          class="sheet ${drawing.view} ${this.near ? 'near' : ''} ${this.printing ? 'printing' : ''}"
          viewBox=${this.printing ? `0 0 ${drawing.width} ${drawing.height}` : nothing}
        >
          <g class="world">${this.#world(unit, drawing)}</g>
        </svg>
      </div>
      <div class="tools" role="group" aria-label="View">
        <button type="button" aria-label="Zoom out" @click=${() => this.zoom(1 / 1.35)}>−</button>
        <button type="button" aria-label="Zoom in" @click=${() => this.zoom(1.35)}>+</button>
        <button type="button" @click=${() => this.fit()}>Fit</button>
      </div>`;
  }

  #world(unit: Unit, drawing: Drawing): TemplateResult {
    const closed = this.#closed();
    const lids = drawing.enclosures.filter(({id}) => closed.has(id));
    const probing = this.mode === 'red' || this.mode === 'black';
    const reachableWires = this.#reachableWires(drawing);
    const current = this.#currentKey();
    const leads = [this.red, this.black].filter((it): it is string => it !== undefined);
    const hidden = (enclosure: string): boolean =>
      drawing.view === 'connection' && closed.has(enclosure);
    // the chosen wire lies on top of the others
    const wires = [...drawing.wires].sort(
      (a, b) => Number(a.id === this.selectedWire) - Number(b.id === this.selectedWire),
    );
    return svg`
      ${scene(drawing, this.selectedPart)}
      <g>${repeat(
        wires,
        ({id}) => id,
        (wire) =>
          drawWire(wire, drawing.view, {
            chosen: wire.id === this.selectedWire,
            pickable: !probing && reachableWires.has(wire.id),
            current: current === `wire ${wire.id}`,
            name: wireName(unit, wire.id),
          }),
      )}</g>
      ${inkOver(drawing)}
      ${this.mode === 'select' ? this.#partTargets(drawing, closed, current) : nothing}
      <g>${drawing.terminals.map((mark, i) =>
        drawTerminal(mark, i, {
          closed: closed.has(mark.enclosure),
          pickable: probing && !hidden(mark.enclosure),
          current: current === `terminal ${i}`,
          name: terminalName(unit, mark.terminal),
          same: leads.includes(mark.terminal),
        }),
      )}</g>
      ${wireLabels(this.#labels)}
      ${lids.map(lid)}
      <g aria-hidden="true">${placeBadges(
        drawing,
        this.observations.map((it) => ({
          part: it.part,
          text: it.display || it.is.replace(/-/g, ' '),
        })),
      ).map(badgeMarker)}</g>
      <g aria-hidden="true">${this.#markers(unit, drawing)}</g>`;
  }

  #partTargets(drawing: Drawing, closed: ReadonlySet<string>, current: string): TemplateResult {
    const unit = this.unit!;
    return svg`<g>${this.#partMarks(drawing, closed).map(({part, x, y, width, height}) => {
      const title = unit.parts.find(({id}) => id === part)?.title ?? '';
      return svg`<g class="terminal" role="button" tabindex=${current === `part ${part}` ? 0 : -1}
        data-part=${part} data-target="part ${part}" aria-label="Part ${part}, ${title}">
        <rect class="reach" x=${x} y=${y} width=${width} height=${height}></rect>
        <rect class="halo" x=${x - 3} y=${y - 3} width=${width + 6} height=${height + 6} rx="6"></rect>
      </g>`;
    })}</g>`;
  }

  /** One box for each part that can be pointed out. */
  #partMarks(drawing: Drawing, closed: ReadonlySet<string>): (Box & {readonly part: string})[] {
    const seen = new Set<string>();
    const enclosureOf = new Map(this.unit!.parts.map(({id, enclosure}) => [id, enclosure]));
    return partBoxes(drawing).filter(({part}) => {
      if (seen.has(part) || (drawing.view === 'connection' && closed.has(enclosureOf.get(part)!)))
        return false;
      seen.add(part);
      return true;
    });
  }

  #markers(unit: Unit, drawing: Drawing): (TemplateResult | typeof nothing)[] {
    const ends = liftedEnds(unit, drawing, this.lifted);
    const at = (terminal: string): Point | undefined => {
      const end = ends.find((it) => it.end === terminal);
      if (end) return liftedPoint(end);
      const picked = this.#pickedMark.get(terminal);
      const marks = drawing.terminals.filter((mark) => mark.terminal === terminal);
      return marks.find((mark) => picked && mark.x === picked.x && mark.y === picked.y) ?? marks[0];
    };
    const jumpers = this.jumpers.map(([a, b]) => {
      const [from, to] = [at(a), at(b)];
      if (!from || !to) return nothing;
      const part = drawing.parts.find(({part: id}) => id === a.slice(0, a.indexOf('.')));
      return jumperMarker(from, to, part && from.x < part.x + part.width / 2 ? 'left' : 'right');
    });
    const lead = (which: 'red' | 'black'): TemplateResult | typeof nothing => {
      const terminal = this[which];
      const point = terminal === undefined ? undefined : at(terminal);
      return point ? leadMarker(which, point) : nothing;
    };
    const jaw =
      this.clamp === undefined
        ? undefined
        : middleOf(
            drawing.wires.find(({id}) => id === this.clamp),
            0.75,
          );
    return [
      ...ends.map(liftedMarker),
      ...jumpers,
      jaw ? clampMarker(jaw) : nothing,
      lead('black'),
      lead('red'),
    ];
  }

  /** Ids of enclosures whose covers are closed. */
  #closed(): ReadonlySet<string> {
    const open = this.openEnclosures;
    if (!open || !this.unit) return new Set();
    return new Set(
      this.unit.enclosures.filter(({id, cover}) => cover && !open.includes(id)).map(({id}) => id),
    );
  }

  /** Wires with an end that is not behind a closed cover. */
  #reachableWires(drawing: Drawing): ReadonlySet<string> {
    const closed = this.#closed();
    const enclosureOf = new Map(this.unit!.parts.map(({id, enclosure}) => [id, enclosure]));
    const open = (terminal: string): boolean =>
      !closed.has(enclosureOf.get(terminal.slice(0, terminal.indexOf('.')))!);
    const drawn = new Set(drawing.wires.map(({id}) => id));
    return new Set(
      this.unit!.wires.filter(({id, from, to}) => drawn.has(id) && (open(from) || open(to))).map(
        ({id}) => id,
      ),
    );
  }

  #pickable(drawing: Drawing): Pickable {
    const closed = this.#closed();
    const probing = this.mode === 'red' || this.mode === 'black';
    const wires = this.#reachableWires(drawing);
    const ends = probing ? liftedEnds(this.unit!, drawing, this.lifted) : [];
    return {
      terminals: probing
        ? [
            ...ends.map((end): TerminalMark => {
              const {x, y} = liftedPoint(end);
              return {
                terminal: end.end,
                part: '',
                enclosure: '',
                shape: 'ring',
                x,
                y,
                width: 9,
                height: 9,
              };
            }),
            ...drawing.terminals.filter(({enclosure}) => !closed.has(enclosure)),
          ]
        : [],
      wires: drawing.wires.filter(({id}) => wires.has(id)),
      parts: partBoxes(drawing),
      lids: drawing.enclosures.filter(({id}) => closed.has(id)),
    };
  }

  /** Targets of the keyboard in reading order. */
  #targets(): Target[] {
    const {drawing} = this;
    if (!drawing || !this.unit) return [];
    const closed = this.#closed();
    const targets: Target[] = [];
    if (this.mode === 'red' || this.mode === 'black')
      drawing.terminals.forEach((mark, i) => {
        if (!closed.has(mark.enclosure))
          targets.push({key: `terminal ${i}`, x: mark.x, y: mark.y, box: around(mark)});
      });
    else {
      const reachable = this.#reachableWires(drawing);
      for (const wire of drawing.wires) {
        const at = middleOf(wire);
        if (at && reachable.has(wire.id))
          targets.push({key: `wire ${wire.id}`, ...at, box: {...at, width: 1, height: 1}});
      }
      if (this.mode === 'select')
        for (const box of this.#partMarks(drawing, closed))
          targets.push({
            key: `part ${box.part}`,
            x: box.x + box.width / 2,
            y: box.y + box.height / 2,
            box,
          });
    }
    const row = (y: number): number => Math.round(y / 30);
    return targets.sort((a, b) => row(a.y) - row(b.y) || a.x - b.x);
  }

  #currentKey(): string {
    const targets = this.#targets();
    return targets.some(({key}) => key === this.current) ? this.current : (targets[0]?.key ?? '');
  }

  #element(key: string): SVGElement | null {
    return key ? this.renderRoot.querySelector<SVGElement>(`[data-target="${key}"]`) : null;
  }

  #boxOf(id: string): Box | undefined {
    const {drawing} = this;
    const mark = drawing?.terminals.find(({terminal}) => terminal === id);
    if (mark) return around(mark);
    const wire = middleOf(drawing?.wires.find((it) => it.id === id));
    if (wire) return {...wire, width: 1, height: 1};
    return drawing && partBoxes(drawing).find(({part}) => part === id);
  }

  #redraw(): void {
    const {unit} = this;
    this.drawing = undefined;
    this.problem = '';
    this.#moved = false;
    this.#pickedMark.clear();
    if (!unit) return;
    try {
      if (this.view === 'ladder') this.drawing = layoutLadder(unit, {aspect: this.#aspect});
      else if (this.layout) this.drawing = drawConnections(unit, this.layout as LayoutFile);
      else this.problem = 'Laying out the connection drawing…';
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
    this.#labels = this.drawing ? labelWires(this.drawing) : [];
    if (this.drawing && this.#size.width > 0) this.#viewport = this.#firstView();
    this.near = this.#viewport.scale >= NEAR_SCALE;
  }

  #measure(): void {
    if (!this.frame) return;
    const {clientWidth: width, clientHeight: height} = this.frame;
    if (width === 0 || height === 0 || this.printing) return;
    this.#size = {width, height};
    // a phone takes the circuits one under another; wide frames side by side
    const aspect =
      width < 640 ? 0.5 : Math.min(2.4, Math.max(1, Math.round((width / height) * 5) / 5));
    if (this.view === 'ladder' && aspect !== this.#aspect) {
      this.#aspect = aspect;
      this.#redraw();
      this.requestUpdate();
      return;
    }
    this.#aspect = aspect;
    if (!this.#moved && this.drawing) this.#viewport = this.#firstView();
    this.#apply();
  }

  /** All of it where that can be read; in a narrow frame its width, from the top. */
  #firstView(): Viewport {
    const whole = fit(this.drawing!, this.#size);
    return this.#size.width < 640 && whole.scale < 0.6
      ? fitWidth(this.drawing!, this.#size)
      : whole;
  }

  /** The frame without the strip that the view's buttons stand on. */
  #clear(): Size {
    return {
      width: this.#size.width,
      height: Math.max(this.#size.height - TOOLS_HEIGHT, this.#size.height / 2),
    };
  }

  #moveTo(viewport: Viewport, manner: 'glide' | 'at once'): void {
    this.#viewport = viewport;
    this.frame?.classList.toggle('glide', manner === 'glide');
    this.#apply();
  }

  #apply(): void {
    const {world} = this;
    if (!world) return;
    const {scale, x, y} = this.#viewport;
    world.style.transform = this.printing ? '' : `translate(${x}px, ${y}px) scale(${scale})`;
    world.style.setProperty('--k', String(this.printing ? 1 : 1 / scale));
    this.near = scale >= NEAR_SCALE;
  }

  #onPrint = (event: Event): void => {
    this.printing =
      event.type === 'beforeprint' ||
      (event.type === 'change' && (event as MediaQueryListEvent).matches);
    // the page is printed before the next microtask
    this.performUpdate();
  };

  #onFocusin = (event: FocusEvent): void => {
    const key = (event.target as Element).getAttribute('data-target');
    if (!key || !this.drawing) return;
    this.current = key;
    const target = this.#targets().find((it) => it.key === key);
    if (target && !this.#pressed)
      this.#moveTo(bringIntoView(this.#viewport, target.box, this.#clear()), 'glide');
  };

  #onKeydown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || !this.drawing) return;
    const arrow = {ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down'}[
      event.key
    ] as 'left' | 'right' | 'up' | 'down' | undefined;
    const key = (event.target as Element).getAttribute('data-target');
    if (event.key === '+' || event.key === '=') this.zoom(1.35);
    else if (event.key === '-' || event.key === '−') this.zoom(1 / 1.35);
    else if (event.key === '0') this.fit();
    else if (key && (event.key === 'Enter' || event.key === ' ')) this.#pickTarget(key);
    else if (key && arrow) this.#step(key, arrow);
    else if (key && (event.key === 'Home' || event.key === 'End')) {
      const targets = this.#targets();
      this.#element(targets[event.key === 'Home' ? 0 : targets.length - 1]?.key ?? '')?.focus();
    } else if (arrow) {
      const [dx, dy] = {left: [60, 0], right: [-60, 0], up: [0, 60], down: [0, -60]}[arrow] as [
        number,
        number,
      ];
      this.#moved = true;
      this.#moveTo(panBy(this.#viewport, dx, dy, this.drawing, this.#size), 'glide');
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  #step(key: string, direction: 'left' | 'right' | 'up' | 'down'): void {
    const targets = this.#targets();
    const from = targets.find((it) => it.key === key);
    const to = from && nextInDirection(from, targets, direction);
    if (to) this.#element(to.key)?.focus();
  }

  #pickTarget(key: string): void {
    const [kind, id] = [key.slice(0, key.indexOf(' ')), key.slice(key.indexOf(' ') + 1)];
    if (kind === 'wire') this.#emit('wire-picked', {wire: id});
    else if (kind === 'part') this.#emit('part-picked', {part: id});
    else {
      const mark = this.drawing!.terminals[Number(id)]!;
      this.#pickedMark.set(mark.terminal, {x: mark.x, y: mark.y});
      this.#emit('terminal-picked', {terminal: mark.terminal});
    }
  }

  #emit(name: string, detail: Readonly<Record<string, string>>): void {
    this.dispatchEvent(new CustomEvent(name, {detail, bubbles: true, composed: true}));
  }

  /** A click with no pointer behind it comes from a screen reader or voice control. */
  #onClick = (event: MouseEvent): void => {
    const key = (event.target as Element).closest('[data-target]')?.getAttribute('data-target');
    if (event.detail === 0 && key) this.#pickTarget(key);
  };

  #local(event: MouseEvent): Point {
    const {left, top} = this.frame.getBoundingClientRect();
    return {x: event.clientX - left, y: event.clientY - top};
  }

  #onPointerdown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    this.#pointers.set(event.pointerId, this.#local(event));
    this.#pressed = {
      at: this.#local(event),
      pointer: event.pointerType,
      dragged: this.#pointers.size > 1,
    };
    this.frame.setPointerCapture?.(event.pointerId);
  };

  #onPointermove = (event: PointerEvent): void => {
    const {drawing} = this;
    const at = this.#local(event);
    const last = this.#pointers.get(event.pointerId);
    if (!drawing) return;
    if (!last || !this.#pressed) return this.#aim(at, event.pointerType);
    if (
      !this.#pressed.dragged &&
      Math.hypot(at.x - this.#pressed.at.x, at.y - this.#pressed.at.y) < SLOP
    )
      return;
    this.#pressed.dragged = true;
    this.#moved = true;
    this.frame.classList.add('dragging');
    const other = [...this.#pointers].find(([id]) => id !== event.pointerId)?.[1];
    let view = this.#viewport;
    if (other) {
      const middle = {x: (at.x + other.x) / 2, y: (at.y + other.y) / 2};
      const before = Math.hypot(last.x - other.x, last.y - other.y);
      const now = Math.hypot(at.x - other.x, at.y - other.y);
      view = zoomAt(view, before > 0 ? now / before : 1, middle, drawing, this.#size);
      view = panBy(view, (at.x - last.x) / 2, (at.y - last.y) / 2, drawing, this.#size);
    } else view = panBy(view, at.x - last.x, at.y - last.y, drawing, this.#size);
    this.#pointers.set(event.pointerId, at);
    this.#moveTo(view, 'at once');
  };

  #onPointerup = (event: PointerEvent): void => {
    const pressed = this.#pressed;
    this.#pointers.delete(event.pointerId);
    if (this.#pointers.size > 0) return;
    this.#pressed = undefined;
    this.frame.classList.remove('dragging');
    if (pressed && !pressed.dragged) this.#pickAt(pressed.at, pressed.pointer);
  };

  #onPointercancel = (event: PointerEvent): void => {
    this.#pointers.delete(event.pointerId);
    this.#pressed = undefined;
    this.frame.classList.remove('dragging');
  };

  #onPointerleave = (): void => {
    this.#aimed?.classList.remove('aim');
    this.#aimed = undefined;
  };

  #pickAt(at: Point, pointer: string): void {
    const {drawing} = this;
    if (!drawing) return;
    const point = toDrawing(this.#viewport, at);
    const {scale} = this.#viewport;
    const pickable = this.#pickable(drawing);
    // a fingertip over several terminals: come closer first, and let the next touch choose
    const under = new Set(
      withinReach(point, scale, pointer, pickable.terminals).map(({terminal}) => terminal),
    );
    if (pointer === 'touch' && scale < PROBING_SCALE && under.size > 1) {
      this.#moved = true;
      this.#moveTo(
        zoomAt(this.#viewport, (PROBING_SCALE * 1.15) / scale, at, drawing, this.#size),
        'glide',
      );
      return;
    }
    const picked = pick(point, scale, pointer, pickable);
    if (!picked) return;
    if (picked.is === 'wire') this.#emit('wire-picked', {wire: picked.wire});
    else if (picked.is === 'part') this.#emit('part-picked', {part: picked.part});
    else {
      const {terminal, x, y} = picked.mark;
      this.#pickedMark.set(terminal, {x, y});
      const index = drawing.terminals.indexOf(picked.mark);
      if (index >= 0) this.current = `terminal ${index}`;
      this.#emit('terminal-picked', {terminal});
    }
  }

  /** Shows what a press would pick. */
  #aim(at: Point, pointer: string): void {
    if (pointer === 'touch' || !this.drawing) return;
    const picked = pick(
      toDrawing(this.#viewport, at),
      this.#viewport.scale,
      pointer,
      this.#pickable(this.drawing),
    );
    const selector =
      picked?.is === 'terminal'
        ? `[data-target="terminal ${this.drawing.terminals.indexOf(picked.mark)}"]`
        : picked?.is === 'wire' && this.mode !== 'red' && this.mode !== 'black'
          ? `.wire[data-wire="${picked.wire}"]`
          : undefined;
    const aimed = selector ? this.renderRoot.querySelector(selector) : null;
    this.frame.classList.toggle('over', aimed !== null);
    if (aimed === (this.#aimed ?? null)) return;
    this.#aimed?.classList.remove('aim');
    aimed?.classList.add('aim');
    this.#aimed = aimed ?? undefined;
  }

  #onWheel = (event: WheelEvent): void => {
    if (!this.drawing) return;
    event.preventDefault();
    this.#moved = true;
    const step = event.deltaMode === 1 ? 20 : 1;
    const view =
      event.ctrlKey || event.metaKey
        ? zoomAt(
            this.#viewport,
            Math.exp(-event.deltaY * step * 0.004),
            this.#local(event),
            this.drawing,
            this.#size,
          )
        : panBy(
            this.#viewport,
            -event.deltaX * step,
            -event.deltaY * step,
            this.drawing,
            this.#size,
          );
    this.#moveTo(view, 'at once');
  };
}

const around = ({x, y, width, height}: TerminalMark): Box => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

/** Middle of the longest stretch of a wire, or another share of the way along it. */
function middleOf(wire: WireDrawing | undefined, share = 0.5): Point | undefined {
  let best: {at: Point; length: number} | undefined;
  for (const path of wire?.paths ?? [])
    for (let i = 1; i < path.length; i++) {
      const [from, to] = [path[i - 1]!, path[i]!];
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (!best || length > best.length)
        best = {
          at: {x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share},
          length,
        };
    }
  return best?.at;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-diagram': UnitDiagram;
  }
}
