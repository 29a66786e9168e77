import {css} from 'lit';

export const fieldLogStyles = css`
  :host {
    display: block;
    container-type: inline-size;
    font-family: var(--font-body);
    color: var(--ink);
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
    font-size: var(--text-s);
    line-height: 1.35;
  }
  caption {
    text-align: start;
    font-weight: 700;
    font-size: var(--text-m);
    padding-block-end: var(--space-2);
  }
  th {
    text-align: start;
    font-weight: 700;
    color: var(--ink-2);
    border-block-end: 2px solid var(--rule-strong);
    white-space: nowrap;
  }
  th,
  td {
    padding: var(--space-2) var(--space-2);
    vertical-align: baseline;
  }
  tbody tr {
    border-block-end: 1px solid var(--rule);
  }
  tr.done,
  tr.note {
    background: var(--paper-sunken);
  }
  tr.chosen {
    background: var(--accent-soft);
    box-shadow: inset 4px 0 0 var(--accent);
  }
  .no,
  .time,
  .red,
  .black,
  .expected,
  .read {
    font-family: var(--font-mono);
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .no,
  .time {
    color: var(--ink-2);
  }
  .read {
    font-weight: 700;
    font-size: var(--text-m);
  }
  .state {
    color: var(--ink-2);
  }
  .end {
    text-align: end;
  }
  .lead-name {
    display: inline-grid;
    place-items: center;
    inline-size: 1.15rem;
    block-size: 1.15rem;
    margin-inline-end: 4px;
    border-radius: 50%;
    color: var(--paper);
    font: 700 0.72rem var(--font-body);
  }
  .lead-name.red {
    background: var(--lead-red);
  }
  .lead-name.black {
    background: var(--lead-black);
  }
  .finding {
    display: flex;
    gap: var(--space-2);
    margin-block-start: var(--space-1);
    padding: var(--space-1) var(--space-2);
    border-inline-start: 4px solid var(--caution);
    background: var(--caution-soft);
    color: var(--ink);
  }
  .finding.danger {
    border-color: var(--danger);
    background: var(--danger-soft);
  }
  .choice {
    display: inline-grid;
    place-items: center;
    min-inline-size: 32px;
    min-block-size: 32px;
  }
  .choice input {
    inline-size: 20px;
    block-size: 20px;
    margin: 0;
    accent-color: var(--accent);
  }
  .choice input:focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
  }
  .empty {
    padding: var(--space-4);
    color: var(--ink-2);
    border: 1.5px dashed var(--rule-strong);
    border-radius: var(--radius-1);
    line-height: 1.5;
  }
  .flag {
    font: 400 var(--text-xs) var(--font-body);
    color: var(--danger);
    white-space: nowrap;
  }
  .flag.tone {
    color: var(--ink-2);
  }

  /* narrow: one stacked entry per row, the reading large at its right */
  @container (max-width: 619px) {
    thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    table,
    tbody,
    caption {
      display: block;
    }
    tbody tr {
      display: grid;
      grid-template-columns: auto auto minmax(0, 1fr) auto;
      gap: 0 var(--space-2);
      padding: var(--space-2);
    }
    tbody td {
      display: block;
      padding: 0;
      border: 0;
    }
    td.pick {
      grid-row: 1 / span 3;
      grid-column: 4;
      align-self: center;
      margin-inline-start: var(--space-1);
    }
    tr.selectable {
      grid-template-columns: auto auto minmax(0, 1fr) auto auto;
    }
    tr.selectable td.pick {
      grid-column: 5;
    }
    td.no {
      grid-area: 1 / 1;
    }
    td.time {
      grid-area: 1 / 2;
    }
    td.function {
      grid-area: 1 / 3;
      color: var(--ink-2);
      white-space: nowrap;
    }
    td.read {
      grid-area: 1 / 4 / span 2 / 5;
      align-self: start;
      text-align: end;
      font-size: var(--text-l);
    }
    /* the arithmetic is in the table, on the meter and in the debrief */
    .arithmetic {
      display: none;
    }
    td.points {
      grid-area: 2 / 1 / 3 / 4;
      font-size: var(--text-m);
    }
    td.expected {
      grid-area: 3 / 4;
      font-size: var(--text-xs);
      color: var(--ink-2);
      text-align: end;
    }
    td.expected::before {
      content: 'exp. ';
      font-family: var(--font-body);
    }
    td.state {
      grid-area: 3 / 1 / 4 / 4;
      font-size: var(--text-xs);
    }
    tr.done td.text,
    tr.note td.text {
      grid-area: 1 / 3 / 2 / 5;
    }
    tr.done td.state,
    tr.note td.state {
      grid-area: 2 / 3 / 3 / 5;
    }
    tr.found td {
      grid-column: 1 / -1;
    }
  }
  @media print {
    tr {
      break-inside: avoid;
    }
    .choice {
      display: none;
    }
  }
  .worth {
    display: block;
    font-family: var(--font-body);
    font-size: 0.75rem;
    font-weight: 400;
    color: var(--ink-2);
    white-space: normal;
  }
`;
