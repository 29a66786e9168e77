import {labelType, type Box, type Label, type LabelRole} from './drawing.ts';

/**
 * Width of a text, estimated without a screen so that layouts are the same everywhere. Advance widths are
 * those of a broad humanist sans in thousandths of the size, rounded up: a real font draws a little
 * narrower, never wider, so a layout free of overlaps here is free of them on the page.
 */
const narrow = new Set("iljI.,:;'|! ·()[]");
const wide = new Set('MWmw@%→←µΩ');

/** Estimated width in units of the font size's unit. */
export function textWidth(text: string, size: number, bold = false): number {
  let thousandths = 0;
  for (const letter of text) {
    if (narrow.has(letter)) thousandths += 330;
    else if (wide.has(letter)) thousandths += 920;
    else if (letter >= 'A' && letter <= 'Z') thousandths += 690;
    else thousandths += 590;
  }
  return (thousandths / 1000) * size * (bold ? 1.06 : 1);
}

/** Width of a label of a role. */
export function labelWidth(text: string, role: LabelRole): number {
  const type = labelType[role];
  return textWidth(text, type.size, type.bold);
}

/** The box that a label covers: cap height above the baseline, descender below. */
export function labelBox(label: Label): Box {
  const {size} = labelType[label.role];
  const width = labelWidth(label.text, label.role);
  const x =
    label.anchor === 'start'
      ? label.x
      : label.anchor === 'end'
        ? label.x - width
        : label.x - width / 2;
  return {x, y: label.y - size * 0.76, width, height: size * 0.98};
}

/** Breaks a text at its spaces into at most two lines, each as narrow as can be. */
export function twoLines(text: string, role: LabelRole, fits: number): readonly string[] {
  if (labelWidth(text, role) <= fits) return [text];
  const words = text.split(' ');
  let best = [text];
  let bestWidth = labelWidth(text, role);
  for (let i = 1; i < words.length; i++) {
    const lines = [words.slice(0, i).join(' '), words.slice(i).join(' ')];
    const width = Math.max(...lines.map((line) => labelWidth(line, role)));
    if (width < bestWidth) {
      bestWidth = width;
      best = lines;
    }
  }
  return best;
}
