import {css} from 'lit';

/** Buttons, fields and segmented choices as every bench element wears them. */
export const controlStyles = css`
  :host {
    font-family: var(--font-body);
    font-size: var(--text-m);
    color: var(--ink);
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  [hidden] {
    display: none !important;
  }
  h2,
  h3,
  p,
  dl,
  dd,
  ol,
  ul,
  figure {
    margin: 0;
    padding: 0;
  }
  ol,
  ul {
    list-style: none;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  .button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: var(--space-2);
    min-block-size: 44px;
    padding: var(--space-1) var(--space-3);
    background: var(--paper-raised);
    color: var(--accent);
    border: 1.5px solid var(--accent);
    border-radius: var(--radius-1);
    font-weight: 700;
    line-height: 1.2;
    cursor: pointer;
  }
  .button:hover {
    background: var(--accent-soft);
    color: var(--accent-hover);
    border-color: var(--accent-hover);
  }
  .button.primary {
    background: var(--accent);
    color: var(--on-accent);
  }
  .button.primary:hover {
    background: var(--accent-hover);
  }
  .button.quiet {
    border-color: transparent;
    background: none;
  }
  .button.danger {
    color: var(--danger);
    border-color: var(--danger);
  }
  .button[disabled],
  .button[aria-disabled='true'] {
    color: var(--ink-3);
    border-color: var(--rule);
    background: none;
    cursor: not-allowed;
  }
  .button.primary[disabled] {
    background: var(--paper-sunken);
  }
  .button.small {
    min-block-size: 36px;
    padding-inline: var(--space-2);
    font-size: var(--text-s);
  }
  .field {
    min-block-size: 44px;
    padding: var(--space-1) var(--space-2);
    background: var(--paper-raised);
    border: 1.5px solid var(--rule-strong);
    border-radius: var(--radius-1);
  }
  :focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
  }
  .segments {
    display: inline-flex;
    border: 1.5px solid var(--accent);
    border-radius: var(--radius-1);
    overflow: clip;
    overflow-clip-margin: 6px;
  }
  .segments button {
    min-block-size: 44px;
    min-inline-size: 44px;
    padding: var(--space-1) var(--space-3);
    background: var(--paper-raised);
    color: var(--accent);
    border: 0;
    font-weight: 700;
    cursor: pointer;
  }
  .segments button + button {
    border-inline-start: 1.5px solid var(--accent);
  }
  .segments button:hover {
    background: var(--accent-soft);
  }
  .segments button[aria-pressed='true'],
  .segments button[aria-checked='true'],
  .segments button[aria-selected='true'] {
    background: var(--accent);
    color: var(--on-accent);
  }
  .segments button:focus-visible {
    outline-offset: -4px;
    outline-color: currentColor;
  }
  .refused {
    display: flex;
    gap: var(--space-2);
    padding: var(--space-2) var(--space-3);
    background: var(--danger-soft);
    color: var(--ink);
    border-inline-start: 4px solid var(--danger);
  }
  .mono {
    font-family: var(--font-mono);
    font-variant-numeric: tabular-nums;
  }
  .quiet-text {
    color: var(--ink-2);
    font-size: var(--text-s);
  }
  .visually-hidden {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  dialog {
    color: inherit;
  }
`;
