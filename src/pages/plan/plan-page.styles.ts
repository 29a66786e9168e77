import {css} from 'lit';

export const planPageStyles = css`
  .desk {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 24rem);
    gap: var(--space-5) var(--space-6);
    margin-top: var(--space-5);
  }

  .desk > * {
    min-width: 0;
    border-top: 2px solid var(--ink);
    padding-top: var(--space-3);
  }

  .tools {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: var(--space-3);
    margin-block: var(--space-3);
  }

  .wide {
    grid-column: 1 / -1;
  }

  .levels {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-4);
    border: 0;
  }

  .levels label {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    min-height: 32px;
    font-weight: 400;
  }

  .lines,
  .set,
  .kept {
    border-top: 1.5px solid var(--ink);
    margin-top: var(--space-2);
  }

  .lines li,
  .set li,
  .kept li {
    display: grid;
    align-items: center;
    gap: var(--space-2) var(--space-3);
    max-width: none;
    padding: var(--space-2) 0;
    border-bottom: 1px solid var(--rule);
  }

  .lines li {
    grid-template-columns: minmax(0, 1fr) 7rem;
  }

  .set li {
    grid-template-columns: 1.5rem minmax(0, 1fr) auto;
  }

  .kept li {
    grid-template-columns: minmax(0, 1fr) auto auto;
  }

  .lines .small,
  .set q {
    display: block;
  }

  q {
    color: var(--ink-2);
  }

  .lines .button[aria-pressed='true'] {
    background: var(--accent);
    color: var(--on-accent);
  }

  .number {
    font: 700 var(--text-m) var(--font-mono);
  }

  aside > * + * {
    margin-top: var(--space-3);
  }

  aside > label {
    display: block;
  }

  aside > label + input {
    margin-top: 0;
  }

  textarea {
    margin-top: var(--space-2);
    font: var(--text-xs) / 1.4 var(--font-mono);
    white-space: pre;
    overflow-x: auto;
  }

  aside section {
    padding-top: var(--space-3);
    border-top: 1.5px solid var(--ink);
  }

  aside section .row {
    margin-top: var(--space-2);
  }

  .file {
    position: absolute;
    width: 1px;
    height: 1px;
    min-height: 0;
    opacity: 0;
  }

  .file:focus-visible + label {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
  }

  label.button {
    display: inline-flex;
    margin-top: var(--space-2);
  }

  .sheet {
    display: none;
  }

  @media (min-width: 901px) {
    aside {
      position: sticky;
      top: 0;
      align-self: start;
      max-height: 100vh;
      overflow-y: auto;
      padding-inline: 4px;
    }
  }

  @media (max-width: 900px) {
    .desk {
      grid-template-columns: minmax(0, 1fr);
    }

    /* what is being put together comes first, the long list below it */
    aside {
      order: -1;
    }
  }

  @media (max-width: 480px) {
    .tools {
      grid-template-columns: minmax(0, 1fr);
    }

    .lines li {
      grid-template-columns: minmax(0, 1fr);
    }
  }

  @media print {
    .sheet {
      display: block;
    }

    .sheet table {
      width: 100%;
      margin-top: 6mm;
      border-collapse: collapse;
      font-size: 10pt;
    }

    .sheet th,
    .sheet td {
      padding: 2mm 2mm 2mm 0;
      border-bottom: 1px solid #999;
      text-align: left;
      vertical-align: top;
    }

    .sheet tr {
      break-inside: avoid;
    }
  }
`;
