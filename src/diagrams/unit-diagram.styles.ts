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

  .lid {
    fill: var(--paper-sunken);
    stroke: var(--rule-strong);
    stroke-width: 1.5;
  }
  .lid-hatch {
    stroke: var(--rule);
    stroke-width: 1.4;
  }
  .lid-plate {
    fill: var(--paper-raised);
    stroke: var(--rule-strong);
  }
  .screw {
    fill: var(--paper-raised);
    stroke: var(--rule-strong);
  }

  .badge rect {
    fill: var(--accent-soft);
    stroke: var(--accent);
    stroke-width: 1;
  }
  .badge {
    transform-box: fill-box;
    transform-origin: 100% 50%;
  }
  .badge text {
    fill: var(--ink);
    font-weight: 700;
  }

  .marker {
    pointer-events: none;
  }
  .lead .tip {
    stroke-width: 3;
  }
  .lead.red .tip {
    stroke: var(--lead-red);
  }
  .lead.black .tip {
    stroke: var(--lead-black);
  }
  .lead.red .grip {
    fill: var(--lead-red);
    stroke: var(--paper-raised);
    stroke-width: 1.5;
  }
  .lead.black .grip {
    fill: var(--lead-black);
    stroke: var(--paper-raised);
    stroke-width: 1.5;
  }
  .lead text {
    fill: var(--paper-raised);
    font-weight: 700;
    font-size: 13px;
  }
  .lead .point {
    stroke: var(--paper-raised);
    stroke-width: 6;
  }
  .jaw {
    stroke: var(--ink);
    stroke-width: 4.5;
  }
  .jaw-fill {
    stroke: var(--accent);
    stroke-width: 2;
  }
  .marker .plate {
    fill: var(--ink);
    stroke: var(--paper-raised);
  }
  .marker .plate-text {
    fill: var(--paper-raised);
    font-weight: 700;
    font-size: 11px;
  }
  .jumper {
    stroke: var(--paper-raised);
    stroke-width: 6;
  }
  .jumper-core {
    stroke: var(--accent);
    stroke-width: 3;
    stroke-dasharray: 8 3;
  }
  .lifted-gap {
    stroke: var(--enclosure);
    stroke-width: 7;
    stroke-linecap: butt;
  }
  .ladder .lifted-gap {
    stroke: var(--paper);
  }
  .lifted-end {
    stroke: var(--danger);
    stroke-width: 2;
  }

  .lifted-tip {
    fill: var(--paper-raised);
    stroke: var(--danger);
    stroke-width: 2;
  }

  .tools {
    position: absolute;
    inset-block-end: 10px;
    inset-inline-end: 10px;
    display: flex;
    gap: 4px;
    padding: 2px;
    background: var(--paper-raised);
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius-2);
  }
  .tools select {
    max-inline-size: 6em;
    min-block-size: 34px;
    border: 0;
    border-radius: var(--radius-1);
    background: var(--paper-raised);
    color: var(--ink);
    font: 700 var(--text-s) / 1 var(--font-body);
  }
  .tools button {
    min-inline-size: 34px;
    min-block-size: 34px;
    padding: 0 8px;
    border: 0;
    border-radius: var(--radius-1);
    background: none;
    color: var(--ink);
    font: 700 var(--text-s) / 1 var(--font-body);
    cursor: pointer;
  }
  .tools button:hover {
    background: var(--accent-soft);
  }
  .tools button:focus-visible,
  .tools select:focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 1px;
  }
  .empty {
    display: grid;
    align-content: center;
    justify-items: center;
    gap: var(--space-3);
    block-size: 100%;
    margin: 0;
    padding: var(--space-5);
    box-sizing: border-box;
    color: var(--ink);
    text-align: center;
  }
  .empty p {
    margin: 0;
    max-inline-size: 44ch;
    font-weight: 700;
  }
  .empty .note {
    color: var(--ink-2);
    font-weight: 400;
  }
  .progress {
    inline-size: min(220px, 60%);
    block-size: 6px;
    border-radius: 3px;
    background:
      linear-gradient(var(--accent), var(--accent)) 0 0 / 40% 100% no-repeat,
      var(--accent-soft);
    animation: to-and-fro 1.6s ease-in-out infinite alternate;
  }
  @keyframes to-and-fro {
    to {
      background-position:
        100% 0,
        0 0;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    .progress {
      animation: none;
    }
  }

  @media (max-width: 640px) {
    .tools {
      gap: 0;
      inset-block-end: 4px;
      inset-inline-end: 4px;
    }
    .tools select {
      max-inline-size: 4.6em;
    }
    .tools button {
      padding: 0 4px;
    }
  }
  @media (pointer: coarse) {
    .tools button {
      min-inline-size: 44px;
      min-block-size: 44px;
    }
    .tools select {
      min-block-size: 44px;
    }
  }

  @media print {
    :host {
      --paper: white;
      --paper-raised: white;
      --paper-sunken: white;
      --enclosure: white;
      --part: white;
      --ink: black;
      --ink-2: black;
      --ink-3: #333;
      --focus: black;
      --rule: #999;
      --rule-strong: #333;
      --highlight: #eee;
      --wire-casing: black;
      block-size: auto !important;
      min-block-size: 0;
      overflow: visible;
      break-inside: avoid;
    }
    .frame {
      position: static;
    }
    svg.sheet {
      block-size: auto;
      max-block-size: 92vh;
    }
    .tools {
      display: none;
    }
    .wire-label {
      display: inline;
    }
    .connection .wire .core,
    .connection .wire.cased .core {
      stroke: black;
      stroke-width: 1.6;
    }
    .connection .wire .casing {
      stroke: none;
    }
  }
`;
