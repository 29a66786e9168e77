import {css} from 'lit';

export const readyPageStyles = css`
  section {
    margin-top: var(--space-6);
    padding-top: var(--space-3);
    border-top: 2px solid var(--ink);
  }

  .signed {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
    margin-top: var(--space-4);
  }

  .signed input {
    flex: 1 1 14rem;
    max-width: 24rem;
  }

  .note {
    margin-top: var(--space-3);
  }

  .next p {
    margin-top: var(--space-2);
  }

  .scroll {
    margin-top: var(--space-3);
    overflow-x: auto;
  }

  table {
    width: 100%;
    border-collapse: collapse;
  }

  th,
  td {
    padding: var(--space-2) var(--space-3) var(--space-2) 0;
    border-bottom: 1px solid var(--rule);
    text-align: left;
    font-weight: 400;
  }

  thead th {
    color: var(--ink-2);
    font-size: var(--text-s);
    white-space: nowrap;
  }

  tbody th {
    min-width: 8.5rem;
    font-weight: 700;
  }

  .number {
    font: var(--text-s) var(--font-mono);
    white-space: nowrap;
  }

  .state {
    display: inline-block;
    padding: 0 var(--space-2);
    border: var(--line) solid var(--rule-strong);
    font-size: var(--text-s);
    white-space: nowrap;
  }

  .state.shown {
    border-color: var(--good);
    background: var(--good-soft);
    color: var(--good);
    font-weight: 700;
  }

  .state.begun {
    border-color: var(--caution);
    background: var(--caution-soft);
    color: var(--caution);
  }

  .known {
    display: flex;
    align-items: center;
    gap: var(--space-2);
  }

  .known svg {
    width: 6rem;
    height: 8px;
    flex: none;
  }

  .whole {
    fill: var(--paper-sunken);
  }

  .part {
    fill: var(--accent);
  }

  .known path {
    stroke: var(--ink);
    stroke-width: 1.5;
    vector-effect: non-scaling-stroke;
  }

  table + p,
  .scroll + p {
    margin-top: var(--space-3);
  }

  .sign {
    display: none;
  }

  @media (max-width: 720px) {
    .known svg,
    .counts {
      display: none;
    }

    tbody th {
      min-width: 0;
    }

    th,
    td {
      padding-right: var(--space-2);
    }
  }

  @media print {
    .sign {
      display: grid;
      grid-template-columns: repeat(3, 1fr);
      gap: var(--space-5);
      margin-top: 18mm;
    }

    .sign dd {
      height: 12mm;
      border-bottom: 1px solid #000;
    }

    .signed input {
      border: 0;
      font-weight: 700;
    }

    section {
      break-inside: avoid;
    }
  }
`;
