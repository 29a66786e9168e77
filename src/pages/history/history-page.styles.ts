import {css} from 'lit';

export const historyPageStyles = css`
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    justify-content: space-between;
    gap: var(--space-4);
  }

  .file {
    position: absolute;
    width: 1px;
    height: 1px;
    opacity: 0;
  }

  .file:focus-visible + label {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
  }

  .calls {
    margin-top: var(--space-5);
    border-top: 2px solid var(--ink);
  }

  .head,
  .calls li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 9.5rem 5rem 11rem 15.5rem;
    gap: 2px var(--space-4);
    max-width: none;
  }

  .head {
    margin-top: var(--space-5);
    font-size: var(--text-s);
    color: var(--ink-2);
    padding-bottom: 4px;
  }

  .head + .calls {
    margin-top: 0;
  }

  .calls li {
    align-items: center;
    padding: var(--space-2) 0;
    border-bottom: 1px solid var(--rule);
  }

  .what {
    min-width: 0;
    overflow-wrap: anywhere;
  }

  .what .complaint {
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    line-clamp: 2;
    overflow: hidden;
    color: var(--ink-2);
    line-height: 1.4;
  }

  .result {
    font-weight: 700;
  }

  .result.good {
    color: var(--good);
  }

  .result.wrong {
    color: var(--danger);
  }

  .number {
    font-variant-numeric: tabular-nums;
  }

  .do {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    align-items: center;
    gap: 0 var(--space-2);
  }

  .do :is(a, button) {
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    padding: 0 6px;
  }

  .do a {
    font-weight: 700;
  }

  .do .delete {
    color: var(--danger);
  }

  .empty {
    margin-top: var(--space-5);
    border-top: 2px solid var(--ink);
    padding-top: var(--space-4);
  }

  dialog {
    max-width: min(30rem, calc(100vw - 2rem));
    padding: var(--space-5);
    border: 2px solid var(--ink);
    border-radius: var(--radius-1);
    background: var(--paper-raised);
    color: var(--ink);
    box-shadow: var(--shadow);
  }

  dialog::backdrop {
    background: rgb(10 17 26 / 55%);
  }

  .label {
    display: none;
    font-weight: 400;
    color: var(--ink-2);
  }

  @media (max-width: 1000px) {
    .head {
      display: none;
    }

    .head + .calls {
      margin-top: var(--space-4);
    }

    .calls li {
      display: flex;
      flex-wrap: wrap;
      padding: var(--space-3) 0 var(--space-1);
      gap: 2px var(--space-4);
    }

    .what,
    .do {
      flex: 1 0 100%;
    }

    .do {
      justify-content: flex-start;
      margin-left: -6px;
    }
  }
`;
