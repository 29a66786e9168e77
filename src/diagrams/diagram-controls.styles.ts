import {css} from 'lit';

/** What stands in front of a drawing: the view’s buttons, and that a drawing is on its way. */
export const controlStyles = css`
  .tools {
    position: absolute;
    inset-block-end: 10px;
    inset-inline-end: 10px;
    display: flex;
    gap: 4px;
    padding: 2px;
    background: var(--paper-raised);
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius-2);
  }
  .tools select {
    max-inline-size: 6em;
    min-block-size: 34px;
    border: 0;
    border-radius: var(--radius-1);
    background: var(--paper-raised);
    color: var(--ink);
    font: 700 var(--text-s) / 1 var(--font-body);
  }
  .tools button {
    min-inline-size: 34px;
    min-block-size: 34px;
    padding: 0 8px;
    border: 0;
    border-radius: var(--radius-1);
    background: none;
    color: var(--ink);
    font: 700 var(--text-s) / 1 var(--font-body);
    cursor: pointer;
  }
  .tools button:hover {
    background: var(--accent-soft);
  }
  .tools button:focus-visible,
  .tools select:focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 1px;
  }
  .empty {
    display: grid;
    align-content: center;
    justify-items: center;
    gap: var(--space-3);
    block-size: 100%;
    margin: 0;
    padding: var(--space-5);
    box-sizing: border-box;
    color: var(--ink);
    text-align: center;
  }
  .empty p {
    margin: 0;
    max-inline-size: 44ch;
    font-weight: 700;
  }
  .empty .note {
    color: var(--ink-2);
    font-weight: 400;
  }
  .progress {
    inline-size: min(220px, 60%);
    block-size: 6px;
    border-radius: 3px;
    background:
      linear-gradient(var(--accent), var(--accent)) 0 0 / 40% 100% no-repeat,
      var(--accent-soft);
    animation: to-and-fro 1.6s ease-in-out infinite alternate;
  }
  @keyframes to-and-fro {
    to {
      background-position:
        100% 0,
        0 0;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    .progress {
      animation: none;
    }
  }

  @media (max-width: 640px) {
    .tools {
      gap: 0;
      inset-block-end: 4px;
      inset-inline-end: 4px;
    }
    .tools select {
      max-inline-size: 4.6em;
    }
    .tools button {
      padding: 0 4px;
    }
  }
  @media (pointer: coarse) {
    .tools button {
      min-inline-size: 44px;
      min-block-size: 44px;
    }
    .tools select {
      min-block-size: 44px;
    }
  }
`;
