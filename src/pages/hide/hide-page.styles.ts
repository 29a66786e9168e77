import {css} from 'lit';

export const hidePageStyles = css`
  .desk {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 22rem);
    gap: var(--space-6);
    align-items: start;
    margin-top: var(--space-5);
    border-top: 2px solid var(--ink);
    padding-top: var(--space-4);
  }

  .ways {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-4);
    border: 0;
    margin-bottom: var(--space-3);
  }

  .ways label {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    min-height: 44px;
  }

  .hidden {
    position: sticky;
    top: var(--space-4);
    border: var(--line) solid var(--ink);
    background: var(--paper-raised);
  }

  .hidden > * {
    padding: var(--space-3) var(--space-4);
  }

  .hidden > * + * {
    border-top: 1px solid var(--rule-strong);
  }

  .hidden h2 {
    font-size: var(--text-l);
  }

  .chosen li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: var(--space-2);
    max-width: none;
    line-height: 1.35;
    overflow-wrap: anywhere;
  }

  .chosen li + li {
    margin-top: var(--space-2);
    border-top: 1px solid var(--rule);
    padding-top: var(--space-2);
  }

  .hidden textarea {
    display: block;
    min-height: 6rem;
    margin-top: var(--space-1);
  }

  .hand {
    display: grid;
    gap: var(--space-2);
  }

  .hand .button {
    width: 100%;
  }

  .hidden h2:focus {
    outline: none;
  }

  .bar {
    display: none;
  }

  @media (max-width: 960px) {
    .desk {
      grid-template-columns: minmax(0, 1fr);
    }

    .hidden {
      position: static;
      scroll-margin-top: var(--space-4);
    }

    .bar {
      position: sticky;
      bottom: 0;
      grid-row: 2;
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: var(--space-3);
      margin: 0 calc(-1 * var(--space-4));
      padding: var(--space-2) var(--space-4);
      border-top: 2px solid var(--ink);
      background: var(--paper-raised);
      line-height: 1.3;
    }

    .bar span {
      min-width: 0;
      overflow: hidden;
      display: -webkit-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 2;
      line-clamp: 2;
    }

    .bar .button {
      flex: none;
    }

    .hidden {
      grid-row: 3;
    }
  }
`;
