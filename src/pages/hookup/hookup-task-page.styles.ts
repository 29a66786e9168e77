import {css} from 'lit';

export const hookupTaskPageStyles = css`
  .body > * + *,
  .verdict + .findings {
    margin-top: var(--space-3);
  }
  .hint {
    /* the board must not move while a hint changes under a pointer that is down */
    min-height: 1.6em;
    margin-bottom: var(--space-2);
    color: var(--ink-2);
  }
  .rules {
    margin: var(--space-3) 0;
    padding-left: var(--space-4);
    list-style: disc;
  }
  .rules li {
    overflow-wrap: anywhere;
  }
  rb-unit-diagram {
    display: block;
    block-size: 26rem;
    border: 1px solid var(--rule-strong);
  }
  .findings > li {
    max-width: none;
    padding: var(--space-3) 0;
    border-bottom: 1px solid var(--rule);
  }
  .findings h3 {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    align-items: baseline;
  }
  .findings .no {
    font-family: var(--font-mono);
  }
  rb-hookup-board {
    min-width: 0;
  }
  @media (max-width: 700px) {
    .hint {
      min-height: 3.2em;
    }
  }
`;
