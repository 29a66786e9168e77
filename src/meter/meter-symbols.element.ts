import {svg, html, type TemplateResult} from 'lit';
import type {MeterFunction} from './meter-function.ts';

/** A wave: alternating. */
const alternating = html`<svg viewBox="0 0 18 12" aria-hidden="true">
  <path
    d="M1 7c3-7 5-7 8 0s5 7 8 0"
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    stroke-linecap="round"
  />
</svg>`;

/** A line over three dashes: direct. Drawn, because few fonts hold the character. */
const direct = html`<svg viewBox="0 0 18 12" aria-hidden="true">
  <path d="M1 3h16M1 9h4M7 9h4M13 9h4" fill="none" stroke="currentColor" stroke-width="2" />
</svg>`;

const waves = svg`<path d="M4 5v4M8 3.2c2 2.4 2 5.2 0 7.6M11.5 1.5c3 3.6 3 7.4 0 11" fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" />`;

export const toneSymbol = html`<svg viewBox="0 0 18 14" aria-hidden="true">${waves}</svg>`;

export const mutedSymbol = html`<svg viewBox="0 0 18 14" aria-hidden="true">
  ${waves}
  <path d="M1 13L17 1" stroke="currentColor" stroke-width="2" stroke-linecap="round" />
</svg>`;

export const hazardSymbol = html`<svg viewBox="0 0 20 18" aria-hidden="true">
  <path
    d="M10 1.5L19 17H1z"
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    stroke-linejoin="round"
  />
  <path
    d="M11 6L8 10.5h4l-3 4.5"
    fill="none"
    stroke="currentColor"
    stroke-width="1.6"
    stroke-linejoin="round"
  />
</svg>`;

/** A jaw around a wire. */
const jaw = html`<svg viewBox="0 0 14 14" aria-hidden="true">
  <path
    d="M7 1.2a5.8 5.8 0 1 0 4.6 2.3"
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    stroke-linecap="round"
  />
  <circle cx="7" cy="7" r="1.8" fill="currentColor" />
</svg>`;

/** Two plates: the drawing symbol of a capacitor. */
const plates = html`<svg viewBox="0 0 20 14" aria-hidden="true">
  <path
    d="M1 7h7M12 7h7M8 1v12M12 1v12"
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    stroke-linecap="round"
  />
</svg>`;

/** The symbol on a key: the usual ones of the standards for V, Ω and A, with a wave or dashes. */
export const functionSymbols: Readonly<Record<MeterFunction, TemplateResult>> = {
  'ac-volts': html`V${alternating}`,
  'dc-volts': html`V${direct}`,
  'low-impedance-volts': html`LoZ`,
  ohms: html`Ω`,
  continuity: toneSymbol,
  'clamp-amps': html`A${alternating}`,
  hertz: html`Hz`,
  'clamp-hertz': html`Hz${jaw}`,
  capacitance: plates,
  'dc-microamps': html`µA${direct}`,
};
