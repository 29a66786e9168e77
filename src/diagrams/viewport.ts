import type {Box, Point} from './drawing.ts';

/** Where the drawing stands in its frame: screen = drawing × scale + (x, y), CSS pixels. */
export interface Viewport {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const MOST_SCALE = 4;
/** At this scale neighbouring terminals are 24 pixels apart: small enough to see around, large enough to probe. */
export const PROBING_SCALE = 0.9;
const MARGIN = 8;
const FIT_AT_MOST = 1.6;

/** The whole drawing, centred, at most at 1.6 times its size. */
export function fit(drawing: Size, frame: Size): Viewport {
  const scale = Math.max(
    0.02,
    Math.min(
      (frame.width - 2 * MARGIN) / drawing.width,
      (frame.height - 2 * MARGIN) / drawing.height,
      FIT_AT_MOST,
    ),
  );
  return centred(drawing, frame, scale);
}

/** The whole width from the top, for frames much narrower than the drawing is high. */
export function fitWidth(drawing: Size, frame: Size): Viewport {
  const scale = Math.max(0.02, Math.min((frame.width - 2 * MARGIN) / drawing.width, FIT_AT_MOST));
  const view = centred(drawing, frame, scale);
  return {...view, y: Math.max(view.y, drawing.height * scale > frame.height ? MARGIN : view.y)};
}

function centred(drawing: Size, frame: Size, scale: number): Viewport {
  return {
    scale,
    x: (frame.width - drawing.width * scale) / 2,
    y: (frame.height - drawing.height * scale) / 2,
  };
}

/** Lettering can be read from this scale up (8.5 px and more). */
export const READING_SCALE = 0.8;

/** A box of the drawing as large as it fits, never too small to read: then from its top left. */
export function fitBox(box: Box, frame: Size): Viewport {
  const room = {width: frame.width - 2 * MARGIN, height: frame.height - 2 * MARGIN};
  const whole = Math.min(room.width / box.width, room.height / box.height, FIT_AT_MOST);
  const scale = Math.max(whole, READING_SCALE);
  const start = (from: number, length: number, space: number): number =>
    MARGIN + Math.max(0, (space - length * scale) / 2) - from * scale;
  return {
    scale,
    x: start(box.x, box.width, room.width),
    y: start(box.y, box.height, room.height),
  };
}

/** Zooms by a factor and keeps the point under `at` (frame pixels) where it is. */
export function zoomAt(
  view: Viewport,
  factor: number,
  at: Point,
  drawing: Size,
  frame: Size,
): Viewport {
  const least = Math.min(fit(drawing, frame).scale, fitWidth(drawing, frame).scale) * 0.8;
  const scale = Math.min(MOST_SCALE, Math.max(least, view.scale * factor));
  const real = scale / view.scale;
  return keepInFrame(
    {scale, x: at.x - (at.x - view.x) * real, y: at.y - (at.y - view.y) * real},
    drawing,
    frame,
  );
}

export function panBy(
  view: Viewport,
  dx: number,
  dy: number,
  drawing: Size,
  frame: Size,
): Viewport {
  return keepInFrame({...view, x: view.x + dx, y: view.y + dy}, drawing, frame);
}

/** A corner of the drawing always stays in the frame. */
export function keepInFrame(view: Viewport, drawing: Size, frame: Size): Viewport {
  const keep = (at: number, length: number, room: number): number => {
    const margin = Math.min(80, room / 4, length / 2);
    return Math.min(room - margin, Math.max(margin - length, at));
  };
  return {
    scale: view.scale,
    x: keep(view.x, drawing.width * view.scale, frame.width),
    y: keep(view.y, drawing.height * view.scale, frame.height),
  };
}

/** The least movement that brings a box (drawing units) into the frame, with some room around it. */
export function bringIntoView(view: Viewport, box: Box, frame: Size, room = 44): Viewport {
  const shift = (from: number, length: number, offset: number, whole: number): number => {
    const start = from * view.scale + offset;
    const end = start + length * view.scale;
    const edge = Math.min(room, whole / 4);
    if (start < edge) return edge - start;
    if (end > whole - edge) return Math.max(whole - edge - end, edge - start);
    return 0;
  };
  return {
    scale: view.scale,
    x: view.x + shift(box.x, box.width, view.x, frame.width),
    y: view.y + shift(box.y, box.height, view.y, frame.height),
  };
}

/** Frame pixels to drawing units. */
export const toDrawing = (view: Viewport, at: Point): Point => ({
  x: (at.x - view.x) / view.scale,
  y: (at.y - view.y) / view.scale,
});
