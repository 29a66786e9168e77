import {css} from 'lit';

export const benchPageStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    block-size: 100%;
    min-block-size: 0;
    background: var(--paper);
  }
  rb-bench-desk {
    flex: 1;
  }
  .standing {
    grid-row: 1 / -1;
    display: grid;
    align-content: center;
    justify-items: center;
    gap: var(--space-3);
    padding: var(--space-6) var(--space-4);
    text-align: center;
  }
  .standing h1 {
    margin: 0;
    font-size: var(--text-xl);
  }
  .standing p {
    max-inline-size: 36rem;
    line-height: 1.5;
  }
  .standing .row {
    display: flex;
    flex-wrap: wrap;
    justify-content: center;
    gap: var(--space-2);
  }
  a.button {
    text-decoration: none;
  }
  .top-buttons {
    display: flex;
    gap: var(--space-2);
  }
  .confirm {
    inline-size: min(28rem, calc(100vw - 2rem));
    padding: var(--space-5);
    background: var(--paper-raised);
    border: 2px solid var(--ink);
    border-radius: var(--radius-1);
    line-height: 1.5;
  }
  .confirm h2 {
    font-size: var(--text-l);
    margin-block-end: var(--space-2);
  }
  .confirm form {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    margin-block-start: var(--space-4);
  }
  .confirm::backdrop {
    background: rgb(10 14 18 / 45%);
  }
  .print-log {
    display: none;
  }
  @media (max-width: 760px) {
    .top-buttons {
      display: none;
    }
    /* the drawing keeps its room while a caution is read; the tabs stay free */
    :host {
      position: relative;
      --caution-position: absolute;
      --caution-bottom: calc(54px + env(safe-area-inset-bottom));
    }
    /* the guide says what to do; the call's own head would say it again */
    :host([guided]) rb-call-strip {
      display: none;
    }
  }
  @media print {
    :host {
      display: block;
      block-size: auto;
    }
    rb-cautions,
    rb-call-banner,
    .top-buttons {
      display: none;
    }
    .print-log {
      display: block;
      padding-block-start: var(--space-4);
    }
  }
`;
