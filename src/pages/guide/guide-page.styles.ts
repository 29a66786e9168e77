import {css} from 'lit';

export const guidePageStyles = css`
  :host {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr);
    min-height: 0;
    min-width: 0;
  }

  .guide {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    align-items: center;
    gap: var(--space-2) var(--space-4);
    padding: var(--space-2) var(--space-4);
    border-bottom: 2px solid var(--ink);
    background: var(--paper-raised);
  }

  .steps {
    display: flex;
    gap: 6px;
  }

  .steps .balloon {
    width: 1.75rem;
    height: 1.75rem;
    font-size: var(--text-s);
    color: var(--ink);
  }

  .steps .done {
    background: var(--ink);
    color: var(--paper-raised);
  }

  .steps .now {
    border-width: 3px;
    border-color: var(--accent);
    color: var(--accent);
  }

  .say {
    min-width: 0;
  }

  .say h1 {
    font-size: var(--text-l);
    letter-spacing: 0;
    line-height: 1.25;
  }

  .say p {
    max-width: 90ch;
    line-height: 1.4;
    overflow-wrap: anywhere;
  }

  .say .hint {
    font-weight: 700;
    color: var(--caution);
  }

  .answers {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: var(--space-2);
    margin-top: var(--space-2);
  }

  .answers .button {
    justify-content: flex-start;
    text-align: left;
    font-weight: 400;
    background: var(--paper-raised);
    padding: 6px 12px;
    line-height: 1.3;
  }

  .answers .button[aria-pressed='true'] {
    font-weight: 700;
    border-width: 3px;
  }

  .because {
    margin-top: var(--space-2);
  }

  .failed {
    padding: var(--space-5);
  }

  rb-bench-page {
    min-height: 0;
    min-width: 0;
  }

  .count,
  .got {
    display: none;
  }

  @media (max-width: 720px) {
    .guide {
      grid-template-columns: minmax(0, 1fr) auto;
      align-items: start;
      gap: 0 var(--space-2);
      padding: var(--space-1) var(--space-3);
      max-height: 46vh;
      overflow-y: auto;
    }

    .steps {
      display: none;
    }

    .count {
      display: inline;
      color: var(--accent);
    }

    .say {
      padding: var(--space-1) 0;
    }

    .say h1 {
      font-size: var(--text-m);
    }

    .say p {
      font-size: var(--text-s);
    }

    .say p.away,
    .of {
      display: none;
    }

    .got {
      display: inline-block;
      min-height: 32px;
      margin-left: var(--space-1);
      padding: 0 var(--space-3);
      border: var(--line) solid var(--accent);
      border-radius: var(--radius-1);
      background: none;
      color: var(--accent);
      font-weight: 700;
    }

    .guide .plain {
      min-height: 36px;
      font-size: var(--text-s);
    }

    .answers {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
