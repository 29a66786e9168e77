import {css} from 'lit';

export const drawingBoardStyles = css`
  :host {
    display: grid;
    grid-template-rows: auto auto minmax(0, 1fr) auto;
    min-block-size: 0;
    min-inline-size: 0;
  }
  .bar {
    grid-row: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
    padding: var(--space-2) var(--space-4);
  }
  .hint {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    font-weight: 700;
  }
  .tip {
    display: inline-grid;
    place-items: center;
    inline-size: 1.6rem;
    block-size: 1.6rem;
    border-radius: 50%;
    color: var(--paper);
    font-size: var(--text-s);
  }
  .tip.red {
    background: var(--lead-red);
  }
  .tip.black {
    background: var(--lead-black);
  }
  .bar .list {
    margin-inline-start: auto;
  }
  .table {
    min-block-size: 0;
    overflow-y: auto;
    padding: 0 var(--space-4) var(--space-4);
    background: var(--paper-raised);
  }
  .refused {
    grid-row: 2;
  }
  .table,
  rb-unit-diagram {
    grid-row: 3;
  }
  rb-unit-diagram {
    min-block-size: 0;
    block-size: 100%;
  }
  rb-observations {
    grid-row: 4;
  }
  @media (max-width: 760px) {
    .bar {
      flex-wrap: nowrap;
      padding: var(--space-1) var(--space-2);
      gap: var(--space-2);
      font-size: var(--text-s);
    }
    .bar .segments button {
      padding-inline: var(--space-2);
    }
    .wide,
    .segments .wide {
      display: none;
    }
  }
  @media (min-width: 761px) {
    .bar .list,
    .narrow {
      display: none;
    }
  }

  /* on paper: the drawing alone; the page prints the log below it */
  @media print {
    :host {
      display: block;
      block-size: auto;
    }
    .bar,
    .table {
      display: none;
    }
    rb-unit-diagram {
      display: block !important;
      block-size: auto;
    }
  }
`;
