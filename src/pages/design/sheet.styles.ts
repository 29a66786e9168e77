import {css} from 'lit';

/**
 * The parts of the visual language that every page sets its text with: headings hung on ruled lines with their number
 * in the margin, copper for what can be acted on, ink for everything else. Adopted by each page's shadow root.
 */
export const sheetStyles = css`
  :host {
    display: block;
  }

  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  figure,
  fieldset {
    margin: 0;
    padding: 0;
  }

  h1 {
    font-size: clamp(1.625rem, 1.3rem + 1.6vw, 2.375rem);
    line-height: 1.1;
    letter-spacing: -0.015em;
    text-wrap: balance;
    overflow-wrap: anywhere;
  }

  h1:focus {
    outline: none;
  }

  h1 + .lead {
    margin-top: var(--space-2);
  }

  h2 {
    font-size: var(--text-xl);
    line-height: 1.2;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }

  h3 {
    font-size: var(--text-l);
    line-height: 1.3;
    text-wrap: balance;
    overflow-wrap: anywhere;
  }

  p,
  li {
    max-width: var(--measure);
  }

  ul,
  ol {
    list-style: none;
  }

  a {
    color: var(--accent);
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }

  a:hover {
    color: var(--accent-hover);
    text-decoration-thickness: 2px;
  }

  :focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
    border-radius: 1px;
  }

  [hidden] {
    display: none !important;
  }

  .lead {
    font-size: var(--text-l);
    color: var(--ink-2);
    line-height: 1.45;
  }

  .quiet {
    color: var(--ink-2);
  }

  .small {
    font-size: var(--text-s);
  }

  .mono {
    font-family: var(--font-mono);
    font-variant-ligatures: none;
    font-size: 0.92em;
  }

  /* A numbered section: a heavy rule, the number hung in the margin. */
  .section {
    display: grid;
    grid-template-columns: 3.25rem minmax(0, 1fr);
    border-top: 2px solid var(--ink);
    padding-top: var(--space-3);
    margin-top: var(--space-6);
  }

  .section > .no {
    font: 700 var(--text-l) / 1.6 var(--font-mono);
    color: var(--ink);
  }

  .section > .body {
    min-width: 0;
  }

  .section > .body > h2 + * {
    margin-top: var(--space-2);
  }

  @media (max-width: 720px) {
    .section {
      grid-template-columns: 2rem minmax(0, 1fr);
      margin-top: var(--space-5);
    }

    .section > .body > :not(h2):not(.keep) {
      margin-left: -2rem;
    }
  }

  /* Something to press. Copper is for acting; plain ink outline for the second choice. */
  button,
  .button {
    font: inherit;
    color: inherit;
    cursor: pointer;
  }

  .button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: var(--space-2);
    min-height: 44px;
    padding: 0.5em 1.1em;
    border: var(--line) solid var(--accent);
    border-radius: var(--radius-1);
    background: transparent;
    color: var(--accent);
    font-weight: 700;
    line-height: 1.2;
    text-decoration: none;
    text-align: center;
  }

  .button:hover {
    background: var(--accent-soft);
    color: var(--accent-hover);
    border-color: var(--accent-hover);
  }

  .button.first {
    background: var(--accent);
    color: var(--on-accent);
  }

  .button.first:hover {
    background: var(--accent-hover);
    border-color: var(--accent-hover);
    color: var(--on-accent);
  }

  .button.danger {
    border-color: var(--danger);
    color: var(--danger);
  }

  .button.danger:hover {
    background: var(--danger-soft);
    color: var(--danger);
    border-color: var(--danger);
  }

  .button[disabled],
  .button[aria-disabled='true'] {
    border-color: var(--rule-strong);
    background: var(--paper-sunken);
    color: var(--ink-3);
    cursor: not-allowed;
  }

  .plain {
    min-height: 44px;
    padding: 0 var(--space-2);
    border: 0;
    background: none;
    color: var(--accent);
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }

  .plain:hover {
    color: var(--accent-hover);
    text-decoration-thickness: 2px;
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
  }

  .stack > * + * {
    margin-top: var(--space-3);
  }

  /* Fields: a ruled line to write on. */
  label,
  .label {
    font-weight: 700;
  }

  input:is([type='text'], [type='search'], [type='number']),
  textarea,
  select {
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

  textarea {
    resize: vertical;
  }

  ::placeholder {
    color: var(--ink-3);
    opacity: 1;
  }

  input:is([type='checkbox'], [type='radio']) {
    width: 22px;
    height: 22px;
    margin: 0;
    accent-color: var(--accent);
    flex: none;
  }

  /* Notes: boxed as on a print, with the word at the head, never colour alone. */
  .note {
    padding: var(--space-3) var(--space-4);
    border: var(--line) solid var(--ink);
    background: var(--paper-raised);
  }

  .note.caution {
    border-color: var(--caution);
    background: var(--caution-soft);
  }

  .note.danger {
    border-color: var(--danger);
    background: var(--danger-soft);
  }

  .note.good {
    border-color: var(--good);
    background: var(--good-soft);
  }

  .note > strong:first-child {
    margin-right: 0.4em;
  }

  .note.caution > strong:first-child {
    color: var(--caution);
  }

  .note.danger > strong:first-child {
    color: var(--danger);
  }

  .note.good > strong:first-child {
    color: var(--good);
  }

  /* An item balloon, as parts are numbered on a drawing. */
  .balloon {
    display: inline-grid;
    place-items: center;
    width: 2rem;
    height: 2rem;
    border: var(--line) solid var(--ink);
    border-radius: 50%;
    font: 700 var(--text-m) / 1 var(--font-mono);
    background: var(--paper-raised);
    flex: none;
  }

  .sr-only {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }

  @media print {
    .no-print {
      display: none !important;
    }
  }
`;
