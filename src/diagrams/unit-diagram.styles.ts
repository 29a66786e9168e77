import {css} from 'lit';

export const unitDiagramStyles = css`
  :host {
    display: block;
    position: relative;
    min-block-size: 12rem;
    background: var(--paper);
    color: var(--ink);
    font-family: var(--font-body);
    overflow: hidden;
  }
  :host([hidden]) {
    display: none;
  }
  .frame {
    position: absolute;
    inset: 0;
    overflow: hidden;
    cursor: grab;
    touch-action: none;
    user-select: none;
    -webkit-user-select: none;
    outline-offset: -3px;
  }
  .frame:focus-visible {
    outline: 3px solid var(--focus);
  }
  .frame.dragging {
    cursor: grabbing;
  }
  .frame.over {
    cursor: pointer;
  }
  svg.sheet {
    display: block;
    inline-size: 100%;
    block-size: 100%;
  }
  .glide .world {
    transition: transform 180ms ease-out;
  }
  @media (prefers-reduced-motion: reduce) {
    .glide .world {
      transition: none;
    }
  }
  text {
    fill: var(--ink);
    font-family: var(--font-body);
    pointer-events: none;
    text-rendering: geometricPrecision;
  }
  path,
  circle,
  rect {
    fill: none;
    stroke-linecap: round;
    stroke-linejoin: round;
  }

  .enclosure {
    fill: var(--enclosure);
    stroke: var(--rule-strong);
    stroke-width: 1.2;
  }
  .box {
    fill: var(--part);
    stroke: var(--ink-2);
    stroke-width: 1.2;
  }
  .dashed {
    stroke: var(--ink-3);
    stroke-width: 1.2;
    stroke-dasharray: 5 4;
  }
  .chosen-part {
    fill: var(--highlight);
    stroke: var(--highlight-edge);
    stroke-width: 1.8;
  }
  .symbol {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .symbol .heavy {
    stroke-width: 2.6;
  }
  .symbol .hollow {
    fill: var(--part);
  }
  .ladder .symbol .hollow {
    fill: var(--paper);
  }
  .symbol .solid {
    fill: var(--ink);
    stroke: none;
  }
  .module {
    fill: var(--part);
  }
  .rail {
    stroke: var(--ink);
    stroke-width: 3.2;
  }
  .joint,
  .inside,
  .lug {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .inside {
    stroke-width: 1.4;
  }
  .junction {
    fill: var(--ink);
  }
  .flag {
    fill: var(--paper-raised);
    stroke: var(--ink-2);
    stroke-width: 1.2;
  }

  .ladder .wire .core {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .connection .wire .gap {
    stroke: var(--enclosure);
    stroke-width: 6.4;
    stroke-linecap: butt;
  }
  .connection .wire .casing {
    stroke: var(--wire-casing);
    stroke-width: 3.6;
  }
  .connection .wire .core {
    stroke: var(--colour);
    stroke-width: 2.6;
  }
  .connection .wire.cased .core {
    stroke-width: 2.1;
  }
  .connection .wire.cased .casing {
    stroke-width: 4.2;
  }
  .wire.chosen .glow {
    stroke: var(--highlight);
    stroke-width: 11;
  }
  .wire.chosen .rim {
    stroke: var(--highlight-edge);
    stroke-width: 6.6;
  }
  .ladder .wire.chosen .core {
    stroke-width: 2.4;
  }
  .wire.aim .rim {
    stroke: var(--accent);
    stroke-width: 6;
    opacity: 0.45;
  }
  .wire {
    outline: none;
  }
  .wire:focus-visible .rim {
    stroke: var(--focus);
    stroke-width: 7.5;
  }

  .terminal {
    outline: none;
  }
  .terminal .mark {
    fill: var(--paper-raised);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .terminal.closed .mark {
    fill: none;
    stroke: var(--ink-3);
    stroke-dasharray: 2 2;
  }
  .terminal .reach {
    fill: transparent;
  }
  .terminal .halo {
    display: none;
    fill: none;
    vector-effect: non-scaling-stroke;
  }
  .terminal.aim .halo {
    display: inline;
    stroke: var(--accent);
    stroke-width: 2.5;
  }
  .terminal:focus-visible .halo {
    display: inline;
    stroke: var(--focus);
    stroke-width: 3.5;
  }
  .terminal.same .mark {
    fill: var(--highlight);
  }
  .tagged {
    font-weight: 700;
  }

  .ladder text[class^='role-'] {
    /* letters break the dashes of an outline that runs behind them */
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
    stroke-linejoin: round;
  }
  .role-terminal,
  .role-strip {
    fill: var(--focus);
  }
  .role-caption,
  .role-value,
  .role-note {
    fill: var(--ink-2);
  }
  .role-rung,
  .role-reference {
    fill: var(--ink-2);
  }
  .role-enclosure {
    fill: var(--ink-2);
    letter-spacing: 0.02em;
  }
  .role-circuit {
    letter-spacing: 0.02em;
  }
  .closed-label {
    fill: var(--ink-3);
  }

  .wire-label {
    display: none;
  }
  .near .wire-label,
  .printing .wire-label {
    display: inline;
  }
  .wire-label rect {
    fill: var(--part);
    opacity: 0.92;
  }
  .wire-label text {
    font-weight: 700;
    fill: var(--ink);
  }
`;
