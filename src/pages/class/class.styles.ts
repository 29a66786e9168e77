import {css} from 'lit';

/** What the pages of a class share beside the sheet's own look. */
export const classStyles = css`
  input:is([type='password'], [type='url']) {
    width: 100%;
    min-height: 44px;
    padding: 0.5em 0.7em;
    font: inherit;
    color: var(--ink);
    background: var(--paper-raised);
    border: 1px solid var(--rule-strong);
    border-bottom: 2px solid var(--ink);
    border-radius: var(--radius-1) var(--radius-1) 0 0;
  }

  .form {
    display: grid;
    gap: var(--space-3);
    max-width: 30rem;
    margin-top: var(--space-4);
  }

  .form .field > label,
  .form .field > .label {
    display: block;
  }

  .form .hint {
    font-size: var(--text-s);
    color: var(--ink-2);
  }

  .note {
    overflow-wrap: anywhere;
  }

  .choice {
    display: flex;
    gap: var(--space-2);
    align-items: center;
    min-height: 44px;
    font-weight: 400;
  }

  .choice:has(:checked) {
    font-weight: 700;
  }

  fieldset.choices {
    border: 0;
  }

  fieldset.choices legend {
    font-weight: 700;
    padding: 0;
  }

  .button.small {
    gap: 0;
    min-height: 36px;
    padding: 0.3em 0.8em;
    font-size: var(--text-s);
  }

  /* The code of a class: read across a room, typed on a phone. */
  .code {
    font-family: var(--font-mono);
    font-variant-ligatures: none;
    font-weight: 700;
    letter-spacing: 0.06em;
    white-space: nowrap;
  }

  .lines {
    border-top: var(--line) solid var(--ink);
    margin-top: var(--space-3);
  }

  .lines > li {
    max-width: none;
    padding: var(--space-3) 0;
    border-bottom: 1px solid var(--rule);
  }

  .crumbs {
    font-size: var(--text-s);
    margin-bottom: var(--space-2);
  }

  .crumbs a {
    display: inline-block;
    padding: 4px 0;
  }

  .table {
    overflow-x: auto;
    margin-top: var(--space-3);
  }

  table {
    width: 100%;
    border-collapse: collapse;
    border-top: 2px solid var(--ink);
  }

  th,
  td {
    padding: 6px var(--space-3) 6px 0;
    border-bottom: 1px solid var(--rule);
    text-align: left;
    vertical-align: baseline;
    line-height: 1.35;
  }

  thead th {
    font-size: var(--text-s);
    color: var(--ink-2);
    font-weight: 400;
    border-bottom: 1px solid var(--rule-strong);
    vertical-align: bottom;
  }

  tbody th {
    font-weight: 700;
    overflow-wrap: anywhere;
  }

  td.number,
  th.number {
    text-align: right;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }

  dialog {
    width: min(36rem, calc(100vw - 2rem));
    max-height: calc(100dvh - 2rem);
    padding: var(--space-5);
    color: var(--ink);
    background: var(--paper-raised);
    border: 2px solid var(--ink);
    border-radius: var(--radius-1);
    overflow: auto;
  }

  dialog::backdrop {
    background: rgb(10 14 18 / 45%);
  }

  dialog .row {
    margin-top: var(--space-4);
  }

  .state {
    display: inline-block;
    padding: 1px 8px;
    border: 1px solid currentColor;
    border-radius: var(--radius-1);
    font-size: var(--text-s);
    font-weight: 700;
    white-space: nowrap;
  }

  .state.open {
    color: var(--good);
  }

  .state.draft,
  .state.closed {
    color: var(--ink-2);
  }
`;
