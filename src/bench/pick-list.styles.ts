import {css} from 'lit';

export const pickListStyles = css`
  :host {
    display: block;
    position: relative;
  }
  .label {
    display: block;
    margin-block-end: var(--space-1);
    font-size: var(--text-s);
    color: var(--ink-2);
  }
  :host([quiet-label]) .label {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  input {
    inline-size: 100%;
  }
  .list {
    position: absolute;
    z-index: 20;
    inset-inline: 0;
    inset-block-start: 100%;
    max-block-size: min(19rem, 44vh);
    margin-block-start: 2px;
    overflow-y: auto;
    background: var(--paper-raised);
    border: 1.5px solid var(--rule-strong);
    border-radius: var(--radius-1);
    box-shadow: var(--shadow);
  }
  :host([upward]) .list {
    inset-block: auto 100%;
    margin-block: 0 2px;
  }
  :host([inline]) .list {
    position: static;
    box-shadow: none;
  }
  @media (max-width: 760px) {
    .list {
      position: static;
      max-block-size: 11rem;
      box-shadow: none;
    }
  }
  .option {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-2);
    min-block-size: 40px;
    align-content: center;
    padding: var(--space-1) var(--space-3);
    border-block-end: 1px solid var(--rule);
    cursor: pointer;
  }
  .option .id {
    font-family: var(--font-mono);
    font-weight: 700;
  }
  .option .text {
    color: var(--ink-2);
    font-size: var(--text-s);
  }
  .option.active {
    background: var(--accent-soft);
    box-shadow: inset 4px 0 0 var(--accent);
  }
  .option[aria-disabled='true'] {
    cursor: not-allowed;
  }
  .option[aria-disabled='true'] .id {
    font-weight: 400;
    color: var(--ink-2);
  }
  .none {
    padding: var(--space-3);
    color: var(--ink-2);
  }
`;
