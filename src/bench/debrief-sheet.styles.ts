import {css} from 'lit';

export const debriefSheetStyles = css`
  :host {
    display: block;
    line-height: 1.5;
  }
  .verdict {
    display: grid;
    gap: var(--space-2);
    padding-block-end: var(--space-5);
    border-block-end: 2px solid var(--ink);
  }
  .verdict h1 {
    margin: 0;
    font-size: var(--text-xxl);
    line-height: 1.1;
    letter-spacing: -0.01em;
  }
  .verdict h1 span {
    padding-block-end: 2px;
    border-block-end: 5px solid var(--good);
  }
  .verdict.wrong h1 span {
    border-color: var(--danger);
  }
  .verdict.given-up h1 span {
    border-color: var(--rule-strong);
  }
  .facts {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: var(--space-1) var(--space-4);
    margin-block-start: var(--space-3);
  }
  .facts dt {
    color: var(--ink-2);
  }
  .facts dd {
    font-weight: 700;
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
  .next {
    margin-block-start: var(--space-5);
  }
  .last {
    margin-block-start: var(--space-3);
  }
  .two {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: 0 var(--space-6);
  }
  .rail li {
    display: grid;
    grid-template-columns: 2rem minmax(0, 1fr);
    gap: var(--space-3);
    padding-block: var(--space-2);
    position: relative;
  }
  .rail li:not(:last-child)::before {
    content: '';
    position: absolute;
    inset-inline-start: 15px;
    inset-block: 2.4rem -0.5rem;
    border-inline-start: 2px solid var(--rule-strong);
  }
  .rail li.missed:not(:last-child)::before,
  .rail li.broke:not(:last-child)::before {
    border-inline-start-style: dashed;
  }
  .node {
    display: inline-grid;
    place-items: center;
    inline-size: 32px;
    block-size: 32px;
    border: 2px solid var(--good);
    border-radius: 50%;
    background: var(--good-soft);
    font-family: var(--font-mono);
    font-weight: 700;
    font-size: var(--text-s);
  }
  .missed .node {
    border: 2px dashed var(--ink-3);
    background: var(--paper);
  }
  .broke .node {
    border: 3px solid var(--danger);
    background: var(--danger-soft);
  }
  .broke > span:last-child {
    font-weight: 700;
  }
  .missed > span:last-child {
    color: var(--ink-2);
  }
  .rail small {
    display: block;
    font-weight: 400;
    font-size: var(--text-s);
    color: var(--ink-2);
  }
  .broke small {
    color: var(--danger);
    font-weight: 700;
  }
  .scroll {
    overflow-x: auto;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
    font-size: var(--text-s);
  }
  th {
    text-align: start;
    color: var(--ink-2);
    border-block-end: 2px solid var(--rule-strong);
  }
  th,
  td {
    padding: var(--space-2);
    vertical-align: baseline;
  }
  tbody tr {
    border-block-end: 1px solid var(--rule);
  }
  tr.telling {
    background: var(--highlight);
  }
  td.value {
    font-family: var(--font-mono);
    font-weight: 700;
    white-space: nowrap;
    text-align: end;
  }
  th.value {
    text-align: end;
  }
  td.value.expected {
    font-weight: 400;
  }
  .finding {
    display: grid;
    grid-template-columns: 5.5rem minmax(0, 1fr);
    gap: var(--space-3);
    padding: var(--space-2) var(--space-3);
    border-inline-start: 5px solid var(--caution);
    background: var(--caution-soft);
  }
  .finding.danger {
    border-color: var(--danger);
    background: var(--danger-soft);
  }
  .finding + .finding {
    margin-block-start: var(--space-2);
  }
  @media (max-width: 760px) {
    .two {
      grid-template-columns: minmax(0, 1fr);
    }
    .facts {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
    }
    .facts dd {
      margin-block-end: var(--space-2);
    }
    table,
    tbody,
    tr,
    td {
      display: block;
    }
    thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    tbody tr {
      padding: var(--space-2);
    }
    td {
      padding: 2px 0;
    }
    td.value {
      display: flex;
      justify-content: space-between;
      gap: var(--space-3);
    }
    td.value::before {
      content: attr(data-title);
      font-family: var(--font-body);
      font-weight: 400;
      color: var(--ink-2);
    }
  }
  @media print {
    section,
    tr,
    .finding {
      break-inside: avoid;
    }
  }
`;
