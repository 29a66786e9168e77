import type {Box, Point} from './drawing.ts';
import {
  bringIntoView,
  fit,
  fitBox,
  fitWidth,
  panBy,
  PROBING_SCALE,
  READING_SCALE,
  toDrawing,
  zoomAt,
  type Size,
  type Viewport,
} from './viewport.ts';

/** What the drawing's element does for its panning and zooming. */
export interface PanZoomHost {
  /** Size of the drawing, if there is one. */
  size(): Size | undefined;
  /** Where to begin when the whole drawing would be too small to read. */
  beginning(): Box | undefined;
  /** What must be in view wherever it begins: what a person is at work on. */
  following(): Box | undefined;
  /** The view has changed: show it. */
  show(viewport: Viewport, manner: 'glide' | 'at once'): void;
  /** A press that was no drag, in drawing units. */
  press(at: Point, pointer: string): void;
  /** The pointer moves over the drawing with no button down. */
  hover(at: Point, pointer: string): void;
}

/** Below this movement in pixels a press is a pick, not a drag. */
const SLOP = 6;
/** Strip of the frame that the view's buttons stand on. */
const TOOLS_HEIGHT = 56;
/** A narrower frame is a phone's: the width is shown, not the whole. */
const NARROW = 640;

/** Moves and zooms a drawing in its frame: by drag, two fingers, wheel, or from keys. */
export class PanZoom {
  viewport: Viewport = {scale: 1, x: 0, y: 0};
  frame: Size = {width: 0, height: 0};

  readonly #host: PanZoomHost;
  /** A person has moved the drawing: resizing keeps it where it is. */
  #moved = false;
  #element?: HTMLElement;
  readonly #pointers = new Map<number, Point>();
  #pressed?: {readonly at: Point; readonly pointer: string; dragged: boolean};

  constructor(host: PanZoomHost) {
    this.#host = host;
  }

  /** Listens on the frame. The listeners go with it. */
  attach(element: HTMLElement): void {
    this.#element = element;
    element.addEventListener('pointerdown', this.#onPointerdown);
    element.addEventListener('pointermove', this.#onPointermove);
    element.addEventListener('pointerup', this.#onPointerup);
    element.addEventListener('pointercancel', this.#onPointercancel);
    // wheel must be cancelled, and Lit adds passive listeners for it
    element.addEventListener('wheel', this.#onWheel, {passive: false});
  }

  get narrow(): boolean {
    return this.frame.width < NARROW;
  }

  get pressing(): boolean {
    return this.#pressed !== undefined;
  }

  /** A new frame size: the view stays where a person put it, else it fits again. */
  resize(frame: Size): void {
    this.frame = frame;
    if (!this.#moved) this.start();
  }

  /** Where a person has moved the drawing to; undefined where it stands as it began. */
  get place(): Viewport | undefined {
    return this.#moved ? this.viewport : undefined;
  }

  /**
   * The first view: as it was left, else all of it where that can be read, else the section to begin with.
   * What is followed is in it: the drawing is moved for that, never zoomed.
   */
  start(left?: Viewport): void {
    const size = this.#host.size();
    this.#moved = left !== undefined;
    if (!size || this.frame.width === 0) return;
    this.viewport = left ?? this.#first(size);
    const following = this.#host.following();
    if (following) this.viewport = bringIntoView(this.viewport, following, this.#clear);
  }

  #first(size: Size): Viewport {
    const whole = this.#whole(size);
    const beginning = whole.scale < READING_SCALE ? this.#host.beginning() : undefined;
    return beginning ? fitBox(beginning, this.frame) : whole;
  }

  /** The whole drawing, seen to move there; in a narrow frame its width, from the top. */
  fit(): void {
    const size = this.#host.size();
    if (size) this.#move(this.#whole(size), 'glide');
  }

  /** One section of the drawing, as large as it fits. */
  look(box: Box): void {
    if (this.frame.width > 0) this.#move(fitBox(box, this.frame), 'glide');
  }

  /** The frame without the strip on which the buttons stand. */
  get #clear(): Size {
    const {width, height} = this.frame;
    return {width, height: Math.max(height - TOOLS_HEIGHT, height / 2)};
  }

  #whole(size: Size): Viewport {
    const whole = fit(size, this.frame);
    return this.narrow && whole.scale < 0.6 ? fitWidth(size, this.frame) : whole;
  }

  zoom(factor: number, at: Point = {x: this.frame.width / 2, y: this.frame.height / 2}): void {
    const size = this.#host.size();
    if (size) this.#move(zoomAt(this.viewport, factor, at, size, this.frame), 'glide');
  }

  pan(dx: number, dy: number): void {
    const size = this.#host.size();
    if (size) this.#move(panBy(this.viewport, dx, dy, size, this.frame), 'glide');
  }

  /** Comes as near as probing needs, keeping a point of the drawing where it is. */
  comeCloser(at: Point): void {
    const {scale, x, y} = this.viewport;
    this.zoom((PROBING_SCALE * 1.15) / scale, {x: at.x * scale + x, y: at.y * scale + y});
  }

  /** Brings a box of the drawing clear of the edges and the buttons; where asked, near enough to probe. */
  bring(box: Box, near: 'as it is' | 'near enough'): void {
    const size = this.#host.size();
    if (!size) return;
    if (near === 'near enough' && this.viewport.scale < PROBING_SCALE) {
      const middle = {x: this.frame.width / 2, y: this.frame.height / 2};
      this.viewport = zoomAt(
        this.viewport,
        PROBING_SCALE / this.viewport.scale,
        middle,
        size,
        this.frame,
      );
    }
    this.viewport = bringIntoView(this.viewport, box, this.#clear);
    this.#host.show(this.viewport, 'glide');
  }

  #move(viewport: Viewport, manner: 'glide' | 'at once'): void {
    this.#moved = true;
    this.viewport = viewport;
    this.#host.show(viewport, manner);
  }

  #local(event: MouseEvent): Point {
    const {left, top} = this.#element!.getBoundingClientRect();
    return {x: event.clientX - left, y: event.clientY - top};
  }

  #onPointerdown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const at = this.#local(event);
    this.#pointers.set(event.pointerId, at);
    this.#pressed = {at, pointer: event.pointerType, dragged: this.#pointers.size > 1};
    this.#element!.setPointerCapture(event.pointerId);
  };

  #onPointermove = (event: PointerEvent): void => {
    const size = this.#host.size();
    const at = this.#local(event);
    const last = this.#pointers.get(event.pointerId);
    const pressed = this.#pressed;
    if (!size) return;
    if (!last || !pressed) return this.#host.hover(toDrawing(this.viewport, at), event.pointerType);
    if (!pressed.dragged && Math.hypot(at.x - pressed.at.x, at.y - pressed.at.y) < SLOP) return;
    pressed.dragged = true;
    this.#element!.classList.add('dragging');
    const other = [...this.#pointers].find(([id]) => id !== event.pointerId)?.[1];
    this.#pointers.set(event.pointerId, at);
    if (!other)
      return this.#move(
        panBy(this.viewport, at.x - last.x, at.y - last.y, size, this.frame),
        'at once',
      );
    const middle = {x: (at.x + other.x) / 2, y: (at.y + other.y) / 2};
    const before = Math.hypot(last.x - other.x, last.y - other.y);
    const now = Math.hypot(at.x - other.x, at.y - other.y);
    const zoomed = zoomAt(this.viewport, before > 0 ? now / before : 1, middle, size, this.frame);
    this.#move(
      panBy(zoomed, (at.x - last.x) / 2, (at.y - last.y) / 2, size, this.frame),
      'at once',
    );
  };

  #onPointerup = (event: PointerEvent): void => {
    const pressed = this.#pressed;
    this.#pointers.delete(event.pointerId);
    if (this.#pointers.size > 0) return;
    this.#release();
    if (pressed && !pressed.dragged)
      this.#host.press(toDrawing(this.viewport, pressed.at), pressed.pointer);
  };

  #onPointercancel = (event: PointerEvent): void => {
    this.#pointers.delete(event.pointerId);
    this.#release();
  };

  #release(): void {
    this.#pressed = undefined;
    this.#element!.classList.remove('dragging');
  }

  #onWheel = (event: WheelEvent): void => {
    const size = this.#host.size();
    if (!size) return;
    event.preventDefault();
    const step = event.deltaMode === 1 ? 20 : 1;
    const zooms = event.ctrlKey || event.metaKey;
    const view = zooms
      ? zoomAt(
          this.viewport,
          Math.exp(-event.deltaY * step * 0.004),
          this.#local(event),
          size,
          this.frame,
        )
      : panBy(this.viewport, -event.deltaX * step, -event.deltaY * step, size, this.frame);
    this.#move(view, 'at once');
  };
}
