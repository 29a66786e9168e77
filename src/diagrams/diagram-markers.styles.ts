import {css} from 'lit';

/** Covers, words about parts, and what hands have put on the unit. */
export const markerStyles = css`
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
`;
