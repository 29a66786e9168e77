import {LitElement, html, nothing, svg} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {
  layBoard,
  type BoardLayout,
  type BoardPart,
  type BoardTerminal,
} from '../../hookup/board-layout.ts';
import {routeWires, type WireRoute} from '../../hookup/board-routes.ts';
import type {HookupTask, HookupWire} from '../../hookup/hookup-task.ts';
import {hookupBoardStyles} from './hookup-board.styles.ts';

/** A press that moves further than this is a drag from terminal to terminal. */
const slop = 8;

/**
 * The parts of a task in their boxes, with the wires that are there. A wire is drawn by dragging from a terminal to
 * another, by two taps, or by keyboard: arrow keys go from terminal to terminal, Enter begins and ends a wire.
 *
 * @event {{from: string, to: string}} wire-drawn - A person joined two terminals.
 * @event {{wire: string | undefined}} wire-chosen - A person picked a wire of their own.
 * @event {{terminal: string | undefined}} begun - A person picked the first end, or let it go.
 */
@customElement('rb-hookup-board')
export class HookupBoard extends LitElement {
  static override styles = hookupBoardStyles;

  @property({attribute: false}) task?: HookupTask;
  @property({attribute: false}) wires: readonly HookupWire[] = [];
  @property() chosen?: string;
  /** Wires that a finding is about. */
  @property({attribute: false}) concerned: readonly string[] = [];
  /** Terminal at which a wire was begun. */
  @property() begun?: string;

  @state() private drawnTo?: readonly [number, number];
  @state() private current = '';

  private layout?: BoardLayout;
  private laidFor?: HookupTask;
  private pressed?: {terminal: BoardTerminal; x: number; y: number; dragged: boolean};

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
    return html`<div class="frame" role="group" aria-label="Wiring board">
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
        ${layout.parts.map((part) => this.drawPart(part))}
        ${this.task.given.map((wire) => this.drawWire(wire, routes.get(wire.id), true))}
        ${repeat(
          this.wires,
          ({id}) => id,
          (wire) => this.drawWire(wire, routes.get(wire.id), false),
        )}
        ${this.drawPulled(layout)}
        ${layout.parts.flatMap(({terminals}) => terminals.map((each) => this.drawTerminal(each)))}
      </svg>
    </div>`;
  }

  private drawPart({part, x, y, width, height, terminals}: BoardPart) {
    const at = new Map(terminals.map((each) => [each.terminal, each]));
    return svg`<g>
      <rect class="part" x=${x} y=${y} width=${width} height=${height} rx="3"></rect>
      <text class="part-id" x=${x + width / 2} y=${y + 15} text-anchor="middle">${part.id}</text>
      <text class="part-title" x=${x + width / 2} y=${y + 29} text-anchor="middle">${part.title}</text>
      ${part.elements.flatMap((element) => {
        const ends =
          element.is === 'transformer'
            ? element.windings.map(({a, b}) => [a, b, 'winding'] as const)
            : element.is === 'motor' || element.is === 'threePhaseMotor'
              ? []
              : [
                  [
                    element.a,
                    element.b,
                    insideWord(
                      part.kind,
                      element.is,
                      'normally' in element ? element.normally : undefined,
                    ),
                  ] as const,
                ];
        return ends.map(([a, b, word]) => this.drawInside(at.get(a), at.get(b), word));
      })}
    </g>`;
  }

  /** What joins two terminals inside a part: a line with a word on it. */
  private drawInside(a: BoardTerminal | undefined, b: BoardTerminal | undefined, word: string) {
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

  private drawWire(wire: HookupWire, route: WireRoute | undefined, given: boolean) {
    if (!route) return nothing;
    const d = route.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
    const classes = [
      'wire',
      wire.gauge <= 12 ? 'heavy' : '',
      given ? 'given' : '',
      this.concerned.includes(wire.id) ? 'concerned' : '',
      this.chosen === wire.id ? 'selected' : '',
    ].join(' ');
    const paths = svg`<path class="reach" d=${d}></path><path class="casing" d=${d}></path>
      <path class="copper ${wire.colour}" d=${d}></path>`;
    if (given)
      return svg`<g class=${classes}><title>Given wire from ${wire.from} to ${wire.to}</title>${paths}</g>`;
    return svg`<g class=${classes} data-wire=${wire.id} role="button" tabindex="0"
      aria-pressed=${this.chosen === wire.id ? 'true' : 'false'}
      aria-label="Wire ${wire.id} from ${wire.from} to ${wire.to}, ${wire.gauge} AWG ${wire.colour}"
      @click=${() => this.choose(wire.id)}
      @keydown=${(event: KeyboardEvent) => this.onWireKey(event, wire.id)}>${paths}</g>`;
  }

  private drawTerminal(each: BoardTerminal) {
    const {terminal, x, y, side} = each;
    const name = terminal.slice(terminal.indexOf('.') + 1);
    return svg`<g class="terminal ${this.begun === terminal ? 'begun' : ''}" data-terminal=${terminal}
      role="button" tabindex=${this.current === terminal ? 0 : -1}
      aria-pressed=${this.begun === terminal ? 'true' : 'false'}
      aria-label="Terminal ${terminal}, ${this.wiresAt(terminal)}"
      @pointerdown=${(event: PointerEvent) => this.onDown(event, each)}
      @focus=${() => (this.current = terminal)}
      @keydown=${(event: KeyboardEvent) => this.onTerminalKey(event, each)}>
      <circle class="reach" cx=${x} cy=${y} r="14"></circle>
      <circle class="ring" cx=${x} cy=${y} r="7"></circle>
      <text x=${side === 'left' ? x + 12 : x - 12} y=${y + 4} text-anchor=${side === 'left' ? 'start' : 'end'}>${name}</text>
    </g>`;
  }

  private wiresAt(terminal: string): string {
    const count = [...(this.task?.given ?? []), ...this.wires].filter(
      ({from, to}) => from === terminal || to === terminal,
    ).length;
    return count === 0 ? 'no wire' : count === 1 ? 'one wire' : `${count} wires`;
  }

  private drawPulled({parts}: BoardLayout) {
    if (!this.begun || !this.drawnTo) return nothing;
    const from = parts
      .flatMap(({terminals}) => terminals)
      .find(({terminal}) => terminal === this.begun);
    if (!from) return nothing;
    return svg`<path class="drawn" d="M${from.x} ${from.y}L${this.drawnTo[0]} ${this.drawnTo[1]}"></path>`;
  }

  // ── pointer ──

  private onDown(event: PointerEvent, terminal: BoardTerminal): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.pressed = {terminal, x: event.clientX, y: event.clientY, dragged: false};
    // a finger keeps sending its moves to where it went down; let go, so that all targets hear it
    (event.target as Element).releasePointerCapture?.(event.pointerId);
    this.focusTerminal(terminal.terminal);
  }

  private readonly onMove = (event: PointerEvent): void => {
    const {pressed} = this;
    if (!pressed) return;
    if (
      Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > slop &&
      !pressed.dragged
    ) {
      pressed.dragged = true;
      this.begin(pressed.terminal.terminal);
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
    if (!pressed.dragged) {
      this.pick(pressed.terminal.terminal);
      return;
    }
    const root = this.renderRoot as ShadowRoot;
    const under = root.elementFromPoint(event.clientX, event.clientY)?.closest('[data-terminal]');
    const to = under?.getAttribute('data-terminal');
    if (to) this.join(pressed.terminal.terminal, to);
    this.begin(undefined);
  };

  private readonly onCancel = (): void => {
    this.pressed = undefined;
    this.drawnTo = undefined;
  };

  // ── keyboard ──

  private onTerminalKey(event: KeyboardEvent, terminal: BoardTerminal): void {
    const ways: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    };
    const way = ways[event.key];
    if (way) {
      event.preventDefault();
      const next = this.nearest(terminal, way);
      if (next) this.focusTerminal(next.terminal);
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.pick(terminal.terminal);
    } else if (event.key === 'Escape') this.begin(undefined);
  }

  private nearest(
    from: BoardTerminal,
    [dx, dy]: readonly [number, number],
  ): BoardTerminal | undefined {
    const all = this.layout!.parts.flatMap(({terminals}) => terminals);
    const cost = ({x, y}: BoardTerminal): number => {
      const along = (x - from.x) * dx + (y - from.y) * dy;
      const aside = Math.abs((x - from.x) * dy) + Math.abs((y - from.y) * dx);
      return along <= 1 ? Infinity : along + 2.5 * aside;
    };
    const [best] = all.filter((each) => cost(each) < Infinity).sort((p, q) => cost(p) - cost(q));
    return best;
  }

  private onWireKey(event: KeyboardEvent, wire: string): void {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    this.choose(wire);
  }

  private focusTerminal(terminal: string): void {
    this.current = terminal;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<SVGElement>(`[data-terminal="${terminal}"]`)?.focus(),
    );
  }

  // ── deeds ──

  private pick(terminal: string): void {
    if (this.begun === undefined) {
      this.begin(terminal);
      return;
    }
    if (this.begun !== terminal) this.join(this.begun, terminal);
    this.begin(undefined);
  }

  private begin(terminal: string | undefined): void {
    this.emit('begun', {terminal});
  }

  private join(from: string, to: string): void {
    if (from !== to) this.emit('wire-drawn', {from, to});
  }

  private choose(wire: string): void {
    this.emit('wire-chosen', {wire: this.chosen === wire ? undefined : wire});
  }

  private emit(name: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(name, {detail}));
  }
}

/** What stands on the line inside a part. */
function insideWord(kind: string, is: string, normally: 'open' | 'closed' | undefined): string {
  if (kind === 'fuse') return 'link';
  if (kind === 'breaker' || kind === 'disconnect') return 'pole';
  switch (is) {
    case 'contact':
      return normally === 'open' ? 'NO' : 'NC';
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

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-board': HookupBoard;
  }
}
