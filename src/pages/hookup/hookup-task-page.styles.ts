import {css} from 'lit';

export const hookupTaskPageStyles = css`
  .body > * + *,
  .verdict + .findings {
    margin-top: var(--space-3);
  }
  summary {
    min-height: 32px;
    padding: var(--space-1) 0;
    cursor: pointer;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--space-2) var(--space-3);
    margin: var(--space-4) 0 var(--space-2);
  }
  .bar label {
    display: grid;
    gap: 2px;
    font-size: var(--text-s);
  }
  .bar select {
    width: auto;
    max-width: 13rem;
  }
  .hint {
    min-height: 1.5em;
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
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--text-s);
  }
  th,
  td {
    padding: var(--space-1) var(--space-2);
    text-align: left;
    border-bottom: 1px solid var(--rule);
  }
  tr.chosen td {
    background: var(--highlight);
  }
  .wide {
    overflow-x: auto;
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
  .grade {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
    gap: var(--space-3);
    margin-top: var(--space-3);
  }
  .grade dt {
    font-size: var(--text-s);
    color: var(--ink-2);
  }
  .grade dd {
    font-weight: 700;
  }
  rb-hookup-board,
  .board-wrap {
    min-width: 0;
  }
`;
