import {LitElement, html, nothing, svg} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {layBoard, type BoardLayout, type BoardTerminal} from '../../hookup/board-layout.ts';
import {handleAt, routeWires, type WireRoute} from '../../hookup/board-routes.ts';
import type {HookupTask, HookupWire} from '../../hookup/hookup-task.ts';
import {isArrow, onEnter, terminalBeyond} from './board-keys.ts';
import {drawPart} from './board-part.ts';
import {drawWire} from './board-wire.ts';
import {hookupBoardStyles} from './hookup-board.styles.ts';

/** One end of a wire, as a person takes it up to land it elsewhere. */
export interface WireEnd {
  readonly wire: string;
  readonly end: 'from' | 'to';
}

/** A press that moves further than this is a drag from terminal to terminal. */
const slop = 8;

/**
 * The parts of a task in their boxes, with the wires that are there. A wire is drawn by dragging from a terminal to
 * another, by two taps, or by keyboard: arrow keys go from terminal to terminal, Enter begins and ends a wire. The
 * chosen wire has a handle at each end: dragged, or taken up and landed, it goes to another terminal.
 *
 * @event {{from: string, to: string}} wire-drawn - A person joined two terminals.
 * @event {{wire: string | undefined}} wire-chosen - A person picked a wire of their own.
 * @event {{terminal: string | undefined}} begun - A person picked the first end, or let it go.
 * @event {{end: WireEnd | undefined}} end-taken - A person took an end of the chosen wire up, or let it go.
 * @event {{wire: string, end: 'from' | 'to', terminal: string}} end-moved - A person landed it elsewhere.
 */
@customElement('rb-hookup-board')
export class HookupBoard extends LitElement {
  static override styles = hookupBoardStyles;

  @property({attribute: false}) task?: HookupTask;
  @property({attribute: false}) wires: readonly HookupWire[] = [];
  @property() chosen?: string;
  /** Wires that a finding is about. */
  @property({attribute: false}) concerned: readonly string[] = [];
  /** Terminals of the reading that finds it. */
  @property({attribute: false}) probed: readonly string[] = [];
  /** Terminal at which a wire was begun. */
  @property() begun?: string;
  /** End of the chosen wire that is taken up. */
  @property({attribute: false}) taken?: WireEnd;
  /** Only to be looked at. */
  @property({type: Boolean}) still = false;

  @state() private drawnTo?: readonly [number, number];
  @state() private current = '';

  private layout?: BoardLayout;
  private laidFor?: HookupTask;
  private pressed?: {from: BoardTerminal | WireEnd; x: number; y: number; dragged: boolean};

  override render() {
    if (!this.task) return nothing;
    if (this.laidFor !== this.task) {
      this.layout = layBoard(this.task);
      this.laidFor = this.task;
      this.current = this.layout.parts[0]?.terminals[0]?.terminal ?? '';
    }
    const layout = this.layout!;
    const routes = new Map(
      routeWires(layout, [...this.task.given, ...this.wires]).map((route) => [route.id, route]),
    );
    return html`<div
      class="frame ${this.still ? 'still' : ''}"
      role="group"
      aria-label="Wiring board"
      tabindex=${this.still ? 0 : nothing}
    >
      <svg
        width=${layout.width}
        height=${layout.height}
        viewBox="0 0 ${layout.width} ${layout.height}"
        role="group"
        aria-label="Parts and wires of ${this.task.title}"
        @pointermove=${this.onMove}
        @pointerup=${this.onUp}
        @pointercancel=${this.onCancel}
      >
        ${layout.boxes.map(
          ({title, x, y, width, height}) =>
            svg`<rect class="box" x=${x} y=${y} width=${width} height=${height} rx="4"></rect>
              <text class="box-title" x=${x + 12} y=${y + 20}>${title}</text>`,
        )}
        ${layout.parts.map(drawPart)}
        ${this.task.given.map((wire) => this.drawWire(wire, routes.get(wire.id), true))}
        ${repeat(
          this.wires,
          ({id}) => id,
          (wire) => this.drawWire(wire, routes.get(wire.id), false),
        )}
        ${this.drawPulled()} ${this.terminals().map((each) => this.drawTerminal(each))}
        ${this.drawHandles(routes)}
      </svg>
    </div>`;
  }

  private terminals(): BoardTerminal[] {
    return this.layout?.parts.flatMap(({terminals}) => terminals) ?? [];
  }

  private drawWire(wire: HookupWire, route: WireRoute | undefined, given: boolean) {
    return drawWire(wire, route, {
      role: given ? 'given' : this.still ? 'still' : 'own',
      isConcerned: this.concerned.includes(wire.id),
      isChosen: this.chosen === wire.id,
      choose: () => this.choose(wire.id),
    });
  }

  private drawTerminal(each: BoardTerminal) {
    const {terminal, x, y, side} = each;
    const name = terminal.slice(terminal.indexOf('.') + 1);
    const drawing = svg`<circle class="reach" cx=${x} cy=${y} r="14"></circle>
      <circle class="ring" cx=${x} cy=${y} r="7"></circle>
      <text x=${side === 'left' ? x + 12 : x - 12} y=${y + 4} text-anchor=${side === 'left' ? 'start' : 'end'}>${name}</text>`;
    if (this.still) return svg`<g class="terminal">${drawing}</g>`;
    const probed = this.probed.includes(terminal);
    return svg`<g class="terminal ${this.begun === terminal ? 'begun' : ''} ${probed ? 'probed' : ''}" data-terminal=${terminal}
      role="button" tabindex=${this.current === terminal ? 0 : -1}
      aria-pressed=${this.begun === terminal ? 'true' : 'false'}
      aria-label="Terminal ${terminal}, ${this.wiresAt(terminal)}"
      @pointerdown=${(event: PointerEvent) => this.onDown(event, each)}
      @focus=${() => (this.current = terminal)}
      @keydown=${(event: KeyboardEvent) => this.onTerminalKey(event, each)}>
      ${probed ? svg`<circle class="probe" cx=${x} cy=${y} r="12"></circle>` : nothing}${drawing}</g>`;
  }

  /** Handles of the chosen wire, over everything: with them its ends go to other terminals. */
  private drawHandles(routes: ReadonlyMap<string, WireRoute>) {
    const wire = this.still ? undefined : this.wires.find(({id}) => id === this.chosen);
    const route = wire && routes.get(wire.id);
    if (!wire || !route) return nothing;
    return (['from', 'to'] as const).map((end) => {
      const {x, y} = handleAt(route, end);
      const taken = this.taken?.wire === wire.id && this.taken.end === end;
      return svg`<g class="handle ${taken ? 'taken' : ''}" data-end=${end} role="button" tabindex="0"
        aria-pressed=${taken ? 'true' : 'false'}
        aria-label="End of ${wire.id} at ${wire[end]}: move it"
        @pointerdown=${(event: PointerEvent) => this.onDown(event, {wire: wire.id, end})}
        @keydown=${(event: KeyboardEvent) => this.onHandleKey(event, {wire: wire.id, end})}>
        <circle class="reach" cx=${x} cy=${y} r="12"></circle>
        <rect class="grip" x=${x - 6} y=${y - 6} width="12" height="12" rx="1"></rect>
        <path class="arrows" d="M${x - 3.5} ${y}h7M${x} ${y - 3.5}v7"></path>
      </g>`;
    });
  }

  private wiresAt(terminal: string): string {
    const count = [...(this.task?.given ?? []), ...this.wires].filter(
      ({from, to}) => from === terminal || to === terminal,
    ).length;
    return count === 0 ? 'no wire' : count === 1 ? 'one wire' : `${count} wires`;
  }

  /** The wire under way: from where it is fast to the pointer. */
  private drawPulled() {
    if (!this.drawnTo) return nothing;
    const fast = this.taken ? this.fastEnd(this.taken) : this.begun;
    const from = this.terminals().find(({terminal}) => terminal === fast);
    if (!from) return nothing;
    return svg`<path class="drawn" d="M${from.x} ${from.y}L${this.drawnTo[0]} ${this.drawnTo[1]}"></path>`;
  }

  private fastEnd({wire, end}: WireEnd): string | undefined {
    return this.wires.find(({id}) => id === wire)?.[end === 'from' ? 'to' : 'from'];
  }

  // ── pointer ──

  private onDown(event: PointerEvent, from: BoardTerminal | WireEnd): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.pressed = {from, x: event.clientX, y: event.clientY, dragged: false};
    // a finger keeps sending its moves to where it went down; let go, so that all targets hear it
    (event.target as Element).releasePointerCapture?.(event.pointerId);
    if ('terminal' in from) this.focusTerminal(from.terminal);
    else (event.currentTarget as SVGElement).focus();
  }

  private readonly onMove = (event: PointerEvent): void => {
    const {pressed} = this;
    if (!pressed) return;
    if (
      Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > slop &&
      !pressed.dragged
    ) {
      pressed.dragged = true;
      if ('terminal' in pressed.from) {
        this.take(undefined);
        this.begin(pressed.from.terminal);
      } else this.take(pressed.from);
    }
    if (!pressed.dragged) return;
    const frame = (this.renderRoot.querySelector('svg') as SVGSVGElement).getBoundingClientRect();
    this.drawnTo = [event.clientX - frame.left, event.clientY - frame.top];
  };

  private readonly onUp = (event: PointerEvent): void => {
    const {pressed} = this;
    this.pressed = undefined;
    this.drawnTo = undefined;
    if (!pressed) return;
    const {from} = pressed;
    if (!pressed.dragged) {
      if ('terminal' in from) this.pick(from.terminal);
      else this.toggle(from);
      return;
    }
    const root = this.renderRoot as ShadowRoot;
    const under = root.elementFromPoint(event.clientX, event.clientY)?.closest('[data-terminal]');
    const to = under?.getAttribute('data-terminal');
    if ('terminal' in from) {
      if (to) this.join(from.terminal, to);
      this.begin(undefined);
    } else this.land(from, to ?? undefined);
  };

  private readonly onCancel = (): void => {
    this.pressed = undefined;
    this.drawnTo = undefined;
  };

  // ── keyboard ──

  private onTerminalKey(event: KeyboardEvent, terminal: BoardTerminal): void {
    if (isArrow(event.key)) {
      event.preventDefault();
      const next = terminalBeyond(event.key, terminal, this.terminals());
      if (next) this.focusTerminal(next.terminal);
    } else if (event.key === 'Escape') this.letGo();
    else onEnter(event, () => this.pick(terminal.terminal));
  }

  private onHandleKey(event: KeyboardEvent, end: WireEnd): void {
    if (event.key === 'Escape') this.letGo();
    else
      onEnter(event, () => {
        this.toggle(end);
        // taken up: the arrow keys carry it from the terminal that it is on
        const at = this.wires.find(({id}) => id === end.wire)?.[end.end];
        if (at) this.focusTerminal(at);
      });
  }

  private focusTerminal(terminal: string): void {
    this.current = terminal;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<SVGElement>(`[data-terminal="${terminal}"]`)?.focus(),
    );
  }

  // ── deeds ──

  private pick(terminal: string): void {
    if (this.taken) this.land(this.taken, terminal);
    else if (this.begun === undefined) this.begin(terminal);
    else {
      if (this.begun !== terminal) this.join(this.begun, terminal);
      this.begin(undefined);
    }
  }

  private begin(terminal: string | undefined): void {
    this.emit('begun', {terminal});
  }

  private join(from: string, to: string): void {
    if (from !== to) this.emit('wire-drawn', {from, to});
  }

  private take(end: WireEnd | undefined): void {
    if (end && this.begun) this.begin(undefined);
    if (end || this.taken) this.emit('end-taken', {end});
  }

  private toggle(end: WireEnd): void {
    const isTaken = this.taken?.wire === end.wire && this.taken.end === end.end;
    this.take(isTaken ? undefined : end);
  }

  /** Lands an end that was taken up; where it was, or nowhere, it is let go. */
  private land(end: WireEnd, terminal: string | undefined): void {
    const was = this.wires.find(({id}) => id === end.wire)?.[end.end];
    if (terminal !== undefined && terminal !== was) this.emit('end-moved', {...end, terminal});
    this.emit('end-taken', {end: undefined});
  }

  private letGo(): void {
    this.begin(undefined);
    this.take(undefined);
  }

  private choose(wire: string): void {
    this.emit('wire-chosen', {wire: this.chosen === wire ? undefined : wire});
  }

  private emit(name: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(name, {detail}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-board': HookupBoard;
  }
}
