import {css} from 'lit';

export const reasoningSheetStyles = css`
  :host {
    display: block;
    line-height: 1.5;
  }
  section {
    padding-block: var(--space-5);
    border-block-end: 1px solid var(--rule);
  }
  h2 {
    margin: 0 0 var(--space-3);
    font-size: var(--text-xl);
    line-height: 1.2;
  }
  h3 {
    margin: var(--space-4) 0 var(--space-2);
    font-size: var(--text-m);
  }
  p {
    max-inline-size: var(--measure);
    margin-block: var(--space-2);
  }
  .points {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-5);
    margin: 0;
  }
  .points div {
    display: grid;
  }
  .points dt {
    color: var(--ink-2);
    font-size: var(--text-s);
  }
  .points dd {
    margin: 0;
    font-family: var(--font-mono);
    font-size: var(--text-l);
  }
  .points .whole dd {
    font-weight: 700;
    border-block-end: 3px solid var(--accent);
  }
  .scroll {
    overflow-x: auto;
  }
  svg {
    display: block;
    inline-size: 100%;
    max-inline-size: 52rem;
    min-inline-size: 24rem;
    block-size: auto;
  }
  .mark {
    stroke: var(--rule);
    stroke-width: 1;
  }
  .scale,
  .step {
    fill: var(--ink-2);
    font-family: var(--font-mono);
    font-size: 12px;
  }
  .path {
    fill: none;
    stroke: var(--accent);
    stroke-width: 2.5;
  }
  .dot {
    fill: var(--accent);
  }
  .dot.useless {
    fill: var(--paper);
    stroke: var(--danger);
    stroke-width: 2.5;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  th,
  td {
    padding: var(--space-1) var(--space-3) var(--space-1) 0;
    border-block-end: 1px solid var(--rule);
    text-align: start;
    vertical-align: top;
  }
  th {
    color: var(--ink-2);
    font-size: var(--text-s);
    font-weight: 400;
  }
  .value {
    font-family: var(--font-mono);
    text-align: end;
    white-space: nowrap;
  }
  .question {
    min-inline-size: 18rem;
  }
  ol {
    padding-inline-start: var(--space-5);
  }
  @media print {
    section {
      break-inside: avoid;
    }
  }
`;
