/** One step of the plot: how many suspects it left. */
export interface PlotStep {
  readonly left: number;
  readonly label: string;
}

/** A point of the plot in its own units, y down. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  readonly left: number;
  readonly label: string;
}

export const plotSize = {width: 640, height: 220, left: 44, right: 16, top: 16, bottom: 34};

/**
 * Places of the points of suspects left over steps. The scale of suspects is logarithmic: each halving, one bit, is
 * one equal step down.
 */
export function plotPoints(start: number, steps: readonly PlotStep[]): PlotPoint[] {
  const all = [{left: start, label: 'start'}, ...steps];
  const {width, height, left, right, top, bottom} = plotSize;
  const bits = Math.max(1, Math.log2(Math.max(2, start)));
  return all.map((step, i) => ({
    ...step,
    x: left + ((width - left - right) * i) / Math.max(1, all.length - 1),
    y: top + (height - top - bottom) * (1 - Math.log2(Math.max(1, step.left)) / bits),
  }));
}

/** Marks of the scale: 1, 2, 4, 8 … up to the suspects at the start, thinned to what can be read. */
export function plotMarks(start: number): {readonly count: number; readonly y: number}[] {
  const bits = Math.max(1, Math.log2(Math.max(2, start)));
  const {height, top, bottom} = plotSize;
  const every = bits > 5 ? 2 : 1;
  const marks = [];
  for (let bit = 0; bit <= bits; bit += every)
    marks.push({count: 2 ** bit, y: top + (height - top - bottom) * (1 - bit / bits)});
  return marks;
}
