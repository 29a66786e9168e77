import {css} from 'lit';

export const benchDeskStyles = css`
  :host {
    display: block;
    block-size: 100%;
    min-block-size: 0;
  }
  .desk {
    display: grid;
    block-size: 100%;
    min-block-size: 0;
    grid-template:
      'drawing meter' auto
      'drawing tabs' auto
      'drawing panel' minmax(0, 1fr) / minmax(0, 1fr) 24rem;
  }
  rb-drawing-board {
    grid-area: drawing;
  }
  .meter {
    grid-area: meter;
    padding: var(--space-3) var(--space-4) var(--space-2);
    border-inline-start: 1px solid var(--rule-strong);
    background: var(--paper-raised);
  }
  .tabs {
    grid-area: tabs;
    display: flex;
    padding-inline: var(--space-4);
    border-inline-start: 1px solid var(--rule-strong);
    border-block-end: 1px solid var(--rule-strong);
    background: var(--paper-raised);
  }
  .tabs button {
    flex: 1 1 auto;
    min-block-size: 44px;
    padding: 0 var(--space-2);
    background: none;
    border: 0;
    border-block-end: 4px solid transparent;
    color: var(--accent);
    font-weight: 700;
    cursor: pointer;
    white-space: nowrap;
  }
  .tabs button:hover {
    background: var(--accent-soft);
  }
  .tabs button[aria-selected='true'] {
    color: var(--ink);
    border-color: var(--accent);
  }
  .tabs .count {
    font: 400 var(--text-xs) var(--font-mono);
  }
  .naming {
    display: none;
  }
  .panel {
    grid-area: panel;
    display: grid;
    align-content: start;
    gap: var(--space-3);
    min-block-size: 0;
    overflow-y: auto;
    padding: var(--space-3) var(--space-4) var(--space-4);
    border-inline-start: 1px solid var(--rule-strong);
    background: var(--paper-raised);
  }
  @media (max-width: 1000px) and (min-width: 761px) {
    .desk {
      grid-template-columns: minmax(0, 1fr) 22rem;
    }
  }

  /* a phone: the diagram on top, the meter docked below it, the tabs under the thumb */
  @media (max-width: 760px) {
    .desk {
      grid-template:
        'drawing drawing' minmax(0, 1fr)
        'meter meter' auto
        'panel panel' auto
        'tabs naming' auto / minmax(0, 1fr) auto;
    }
    .desk.sheet {
      grid-template:
        'panel panel' minmax(0, 1fr)
        'tabs naming' auto / minmax(0, 1fr) auto;
    }
    .desk.wires .meter,
    .desk.sheet rb-drawing-board,
    .desk.sheet .meter {
      display: none;
    }
    .meter {
      padding: 0;
      border: 0;
    }
    .panel {
      padding: var(--space-2) var(--space-3);
      border: 0;
    }
    /* a caution may lie over its end */
    .desk.sheet .panel {
      padding-block-end: 12rem;
    }
    .desk.probing .panel {
      max-block-size: 46dvh;
      background: var(--meter-body);
      padding: 0;
    }
    .desk.wires .panel > * {
      padding: var(--space-2) var(--space-3);
      background: var(--paper-raised);
    }
    .tabs {
      padding: 0 0 env(safe-area-inset-bottom);
      border: 0;
      border-block-start: 2px solid var(--ink);
    }
    .tabs button {
      flex: 1 1 0;
      min-inline-size: 0;
      min-block-size: 52px;
      padding: 0 2px;
      border-block-end: 0;
      border-block-start: 4px solid transparent;
      font-size: var(--text-s);
    }
    .naming {
      grid-area: naming;
      display: block;
      padding: 0 var(--space-3);
      border: 0;
      border-block-start: 2px solid var(--ink);
      background: var(--accent);
      color: var(--on-accent);
      font-weight: 700;
      font-size: var(--text-s);
      cursor: pointer;
    }
  }

  /* on paper: the drawing alone; the page prints the log below it */
  @media print {
    :host,
    .desk {
      display: block;
      block-size: auto;
    }
    .meter,
    .tabs,
    .naming,
    .panel {
      display: none;
    }
    rb-drawing-board {
      display: block !important;
    }
  }
`;
