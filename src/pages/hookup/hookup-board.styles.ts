import {css} from 'lit';

export const hookupBoardStyles = css`
  :host {
    display: block;
  }
  .frame {
    overflow: auto;
    max-block-size: 76vh;
    background: var(--paper);
    border: 1px solid var(--rule-strong);
  }
  svg {
    display: block;
    touch-action: pan-x pan-y;
    user-select: none;
    font-family: var(--font-body);
  }
  .still .wire,
  .still .terminal {
    cursor: default;
  }
  .still .terminal .ring {
    stroke: var(--ink);
    stroke-width: 2;
    fill: var(--paper-raised);
  }
  @media print {
    .frame {
      overflow: visible;
      max-block-size: none;
      border: 0;
    }
    svg {
      inline-size: 100%;
      block-size: auto;
      max-block-size: 17cm;
    }
    .handle {
      display: none;
    }
  }
  .box {
    fill: var(--enclosure);
    stroke: var(--rule-strong);
    stroke-width: 1.5;
  }
  .box-title {
    font-weight: 700;
    font-size: 14px;
    fill: var(--ink);
  }
  .part {
    fill: var(--part);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .part-id {
    font: 700 13px var(--font-mono);
    fill: var(--ink);
  }
  .part-title {
    font-size: 11.5px;
    fill: var(--ink-2);
  }
  .inside {
    stroke: var(--ink-2);
    stroke-width: 1.4;
    fill: none;
  }
  .inside-text {
    font-size: 10.5px;
    fill: var(--ink-2);
  }
  .terminal {
    cursor: crosshair;
    touch-action: none;
  }
  .terminal .reach {
    fill: transparent;
  }
  .terminal .ring {
    fill: var(--paper-raised);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .terminal text {
    font: 700 11.5px var(--font-mono);
    fill: var(--ink);
  }
  .terminal:hover .ring,
  .terminal.begun .ring {
    fill: var(--highlight);
    stroke: var(--highlight-edge);
    stroke-width: 3;
  }
  .terminal .probe {
    fill: none;
    stroke: var(--danger);
    stroke-width: 3;
    stroke-dasharray: 4 3;
  }
  .terminal:focus {
    outline: none;
  }
  .terminal:focus-visible .reach {
    stroke: var(--focus);
    stroke-width: 3;
  }
  .handle {
    cursor: grab;
    touch-action: none;
  }
  .handle .reach {
    fill: transparent;
  }
  .handle .grip {
    fill: var(--paper-raised);
    stroke: var(--focus);
    stroke-width: 2.5;
  }
  .handle .arrows {
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  .handle:hover .grip,
  .handle.taken .grip {
    fill: var(--highlight);
    stroke: var(--highlight-edge);
    stroke-width: 3.5;
  }
  .handle:focus {
    outline: none;
  }
  .handle:focus-visible .reach {
    stroke: var(--focus);
    stroke-width: 3;
  }
  .wire {
    cursor: pointer;
  }
  .wire path {
    fill: none;
    stroke-linejoin: round;
  }
  .wire .reach {
    stroke: transparent;
    stroke-width: 9;
  }
  .wire .casing {
    stroke: var(--wire-casing);
    stroke-width: 4.6;
  }
  .wire .copper {
    stroke-width: 2.8;
  }
  .wire.heavy .casing {
    stroke-width: 6.4;
  }
  .wire.heavy .copper {
    stroke-width: 4.4;
  }
  .wire.given .copper {
    stroke-dasharray: 9 3;
  }
  .wire.concerned .casing {
    stroke: var(--danger);
    stroke-width: 9;
  }
  .wire.selected .casing {
    stroke: var(--focus);
    stroke-width: 8;
  }
  .wire:focus {
    outline: none;
  }
  .wire:focus-visible .casing {
    stroke: var(--focus);
    stroke-width: 9;
  }
  .black {
    stroke: var(--wire-black);
  }
  .white {
    stroke: var(--wire-white);
  }
  .red {
    stroke: var(--wire-red);
  }
  .blue {
    stroke: var(--wire-blue);
  }
  .green {
    stroke: var(--wire-green);
  }
  .yellow {
    stroke: var(--wire-yellow);
  }
  .orange {
    stroke: var(--wire-orange);
  }
  .brown {
    stroke: var(--wire-brown);
  }
  .purple {
    stroke: var(--wire-purple);
  }
  .grey {
    stroke: var(--wire-grey);
  }
  .pink {
    stroke: var(--wire-pink);
  }
  .tan {
    stroke: var(--wire-tan);
  }
  .drawn {
    fill: none;
    stroke: var(--highlight-edge);
    stroke-width: 2.5;
    stroke-dasharray: 5 4;
    pointer-events: none;
  }
`;
