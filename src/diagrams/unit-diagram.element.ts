import {LitElement, html, nothing, svg, type PropertyValues, type TemplateResult} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import type {Unit} from '../content/unit.ts';
import {placeBadges} from './badge-places.ts';
import {drawConnections} from './connection-drawing.ts';
import {controlStyles} from './diagram-controls.styles.ts';
import {badgeMarker, lid, markersOn} from './diagram-markers.element.ts';
import {markerStyles} from './diagram-markers.styles.ts';
import {printStyles} from './diagram-print.styles.ts';
import {
  drawTerminal,
  drawWire,
  inkOver,
  partTargets,
  scene,
  terminalName,
  wireLabels,
  wireName,
} from './diagram-scene.element.ts';
import {
  boxOf,
  closedEnclosures,
  isProbing,
  pickableOf,
  reachableWires,
  targetsOf,
  type DiagramMode,
  type Reach,
  type Target,
} from './diagram-targets.ts';
import type {Box, Drawing, Point} from './drawing.ts';
import {layoutLadder} from './ladder-layout.ts';
import type {LayoutFile} from './layout-file.ts';
import {PanZoom} from './pan-zoom.element.ts';
import {nextInDirection, pick, withinReach} from './picking.ts';
import {largest, sectionsOf} from './sections.ts';
import {unitDiagramStyles} from './unit-diagram.styles.ts';
import {PROBING_SCALE, type Viewport} from './viewport.ts';
import {labelWires, type WireLabel} from './wire-labels.ts';

/** What a person at the unit sees or hears of a part. */
export interface SeenOrHeard {
  readonly part: string;
  readonly is: string;
  readonly display?: string;
}

const NEAR_SCALE = 1.25;

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
  static override styles = [unitDiagramStyles, markerStyles, controlStyles, printStyles];

  @property({attribute: false}) unit?: Unit;
  @property() view: 'ladder' | 'connection' = 'ladder';
  /** Layout of the connection drawing, as committed or as searched in a worker. */
  @property({attribute: false}) layout: unknown;
  /** There will be no layout, and the reason is told elsewhere. */
  @property({type: Boolean, attribute: 'layout-failed'}) layoutFailed = false;
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
  /** Terminal, wire or part that stays in view when the other drawing is shown. */
  @property({attribute: false}) follow?: string;
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
  readonly #panZoom = new PanZoom({
    size: () => this.drawing,
    beginning: () => this.#beginning(),
    following: () => this.#following(),
    show: (_, manner) => this.#show(manner),
    press: (at, pointer) => this.#pickAt(at, pointer),
    hover: (at, pointer) => this.#aim(at, pointer),
  });
  #aspect = 1.6;
  /** Where a person left each drawing. */
  readonly #left = new Map<string, Viewport>();
  /** Which of several marks of one terminal was picked: the lead is drawn there. */
  #pickedMark = new Map<string, Point>();
  #observer?: ResizeObserver;
  #observed?: HTMLElement;
  #print = typeof matchMedia === 'function' ? matchMedia('print') : undefined;
  #aimed?: Element;

  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
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

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.#keepPlace(changed);
    if (changed.has('unit') || changed.has('view') || changed.has('layout')) this.#redraw();
  }

  protected override updated(changed: PropertyValues<this>): void {
    this.#followCover(changed.get('openEnclosures'));
    // the frame comes and goes with the drawing: a layout may still be on its way
    if (this.frame && this.frame !== this.#observed) {
      this.#observer?.disconnect();
      this.#observed = this.frame;
      this.#observer = new ResizeObserver(() => this.#measure());
      this.#observer.observe(this.frame);
      this.#panZoom.attach(this.frame);
    }
    this.#show();
  }

  override focus(options?: FocusOptions): void {
    const target = this.#element(this.current) ?? this.#element(this.#targets()[0]?.key ?? '');
    if (target) target.focus(options);
    else this.frame?.focus(options);
  }

  /** Bring a terminal (`K1.A1`), wire or part into view, large enough to probe. */
  reveal(id: string): void {
    const box = this.drawing && boxOf(this.drawing, id);
    if (box) this.#panZoom.bring(box, 'near enough');
  }

  /** The ladder begins with its largest circuit, the connection drawing with the box that is open. */
  #beginning(): Box | undefined {
    const {drawing, unit} = this;
    if (!drawing || !unit) return undefined;
    const sections = sectionsOf(drawing);
    if (drawing.view === 'ladder') return largest(sections)?.box;
    const last = this.openEnclosures
      ?.filter((id) => unit.enclosures.some((each) => each.id === id && each.cover))
      .at(-1);
    return sections.find(({id}) => id === last)?.box;
  }

  /** Each drawing is found again as it was left, unless it is another drawing by now. */
  #keepPlace(changed: PropertyValues<this>): void {
    if (changed.has('unit')) this.#left.clear();
    if (changed.has('layout')) this.#left.delete('connection');
    const before = changed.get('view');
    const {place} = this.#panZoom;
    if (before && this.drawing && place) this.#left.set(before, place);
  }

  #following(): Box | undefined {
    return this.follow === undefined || !this.drawing
      ? undefined
      : boxOf(this.drawing, this.follow);
  }

  /** A cover that comes off shows what was under it. */
  #followCover(before: readonly string[] | undefined): void {
    if (!before || this.drawing?.view !== 'connection') return;
    const opened = this.openEnclosures?.filter((id) => !before.includes(id)) ?? [];
    const section = sectionsOf(this.drawing).find(
      ({id}) => opened.length === 1 && id === opened[0],
    );
    if (section) this.#panZoom.look(section.box);
  }

  #onSection = (event: Event): void => {
    const select = event.target as HTMLSelectElement;
    const section = this.drawing && sectionsOf(this.drawing)[Number(select.value)];
    if (section) this.#panZoom.look(section.box);
    // it is a way to go, not a setting: the next choice may be the same one
    select.value = '';
  };

  /** The whole drawing in the frame. */
  fit(): void {
    if (this.drawing) this.#panZoom.fit();
  }

  zoom(factor: number): void {
    this.#panZoom.zoom(factor);
  }

  override render(): TemplateResult {
    const {unit, drawing} = this;
    if (!unit || !drawing) return this.#waiting();
    const what = this.view === 'ladder' ? 'ladder drawing' : 'connection drawing';
    return html`<div
        class="frame"
        role="group"
        tabindex="0"
        aria-label="${unit.title}, ${what}. Arrow keys move it, plus and minus zoom, 0 fits."
        @keydown=${this.#onKeydown}
        @focusin=${this.#onFocusin}
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
        <select aria-label="Go to a section of the drawing" @change=${this.#onSection}>
          <option value="" selected>Go to …</option>
          ${sectionsOf(drawing).map(({title}, i) => html`<option value=${i}>${title}</option>`)}
        </select>
        <button type="button" aria-label="Zoom out" @click=${() => this.zoom(1 / 1.35)}>−</button>
        <button type="button" aria-label="Zoom in" @click=${() => this.zoom(1.35)}>+</button>
        <button type="button" @click=${() => this.fit()}>Fit</button>
      </div>`;
  }

  /** In place of a drawing: that it is being laid out, or why there is none. */
  #waiting(): TemplateResult {
    if (this.problem) return html`<p class="empty" role="alert">${this.problem}</p>`;
    if (!this.unit || this.layoutFailed) return html``;
    return html`<div class="empty" role="status">
      <p>Laying out the connection drawing…</p>
      <span class="progress" aria-hidden="true"></span>
      <p class="note">
        This is done once for a unit file of your own and takes some seconds. The ladder can be used
        meanwhile.
      </p>
    </div>`;
  }

  #world(unit: Unit, drawing: Drawing): TemplateResult {
    const reach = this.#reach(unit, drawing);
    const closed = closedEnclosures(reach);
    const lids = drawing.enclosures.filter(({id}) => closed.has(id));
    const probing = isProbing(this.mode);
    const reachable = reachableWires(reach);
    const current = this.#currentKey();
    const leads = [this.red, this.black].filter((it): it is string => it !== undefined);
    const hidden = (enclosure: string): boolean =>
      drawing.view === 'connection' && closed.has(enclosure);
    const badges = placeBadges(
      drawing,
      this.observations.map((it) => ({
        part: it.part,
        text: it.display || it.is.replace(/-/g, ' '),
      })),
    );
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
            pickable: !probing && reachable.has(wire.id),
            current: current === `wire ${wire.id}`,
            name: wireName(unit, wire.id),
          }),
      )}</g>
      ${inkOver(drawing)}
      ${this.mode === 'select' ? partTargets(reach, current) : nothing}
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
      ${lids.map((box) => lid(box, badges))}
      <g aria-hidden="true">${badges.map(badgeMarker)}</g>
      <g aria-hidden="true">${markersOn(unit, drawing, {
        red: this.red,
        black: this.black,
        clamp: this.clamp,
        lifted: this.lifted,
        jumpers: this.jumpers,
        pickedMarks: this.#pickedMark,
      })}</g>`;
  }

  #reach(unit: Unit, drawing: Drawing): Reach {
    const {mode, openEnclosures, lifted} = this;
    return {unit, drawing, mode, lifted, ...(openEnclosures ? {openEnclosures} : {})};
  }

  #targets(): Target[] {
    return this.unit && this.drawing ? targetsOf(this.#reach(this.unit, this.drawing)) : [];
  }

  #currentKey(): string {
    const targets = this.#targets();
    return targets.some(({key}) => key === this.current) ? this.current : (targets[0]?.key ?? '');
  }

  #element(key: string): SVGElement | null {
    return key ? this.renderRoot.querySelector<SVGElement>(`[data-target="${key}"]`) : null;
  }

  #redraw(): void {
    const {unit} = this;
    this.drawing = undefined;
    this.problem = '';
    this.#pickedMark.clear();
    if (!unit) return;
    try {
      if (this.view === 'ladder') this.drawing = layoutLadder(unit, {aspect: this.#aspect});
      else if (this.layout) this.drawing = drawConnections(unit, this.layout as LayoutFile);
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
    this.#labels = this.drawing ? labelWires(this.drawing) : [];
    this.#panZoom.start(this.#left.get(this.view));
    this.near = this.#panZoom.viewport.scale >= NEAR_SCALE;
  }

  #measure(): void {
    if (!this.frame) return;
    const {clientWidth: width, clientHeight: height} = this.frame;
    if (width === 0 || height === 0 || this.printing) return;
    // a phone takes the circuits one under another; wide frames side by side
    this.#panZoom.resize({width, height});
    const aspect = this.#panZoom.narrow
      ? 0.5
      : Math.min(2.4, Math.max(1, Math.round((width / height) * 5) / 5));
    if (this.view === 'ladder' && aspect !== this.#aspect) {
      this.#aspect = aspect;
      this.#left.delete('ladder');
      this.#redraw();
      this.requestUpdate();
      return;
    }
    this.#aspect = aspect;
    this.#show();
  }

  #show(manner: 'glide' | 'at once' = 'at once'): void {
    const {world} = this;
    if (!world) return;
    const {scale, x, y}: Viewport = this.#panZoom.viewport;
    if (manner === 'glide') this.frame.classList.add('glide');
    else if (this.#panZoom.pressing) this.frame.classList.remove('glide');
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
    if (target && !this.#panZoom.pressing) this.#panZoom.bring(target.box, 'as it is');
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
      this.#panZoom.pan(dx, dy);
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

  #onPointerleave = (): void => {
    this.#aimed?.classList.remove('aim');
    this.#aimed = undefined;
  };

  #pickAt(at: Point, pointer: string): void {
    const {drawing} = this;
    if (!drawing) return;
    const {scale} = this.#panZoom.viewport;
    const pickable = pickableOf(this.#reach(this.unit!, drawing));
    // a fingertip over several terminals: come closer first, and let the next touch choose
    const under = new Set(
      withinReach(at, scale, pointer, pickable.terminals).map(({terminal}) => terminal),
    );
    if (pointer === 'touch' && scale < PROBING_SCALE && under.size > 1) {
      this.#panZoom.comeCloser(at);
      return;
    }
    const picked = pick(at, scale, pointer, pickable);
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
      at,
      this.#panZoom.viewport.scale,
      pointer,
      pickableOf(this.#reach(this.unit!, this.drawing)),
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
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-diagram': UnitDiagram;
  }
}
