import {css} from 'lit';

export const meterFaceStyles = css`
  :host {
    display: block;
    container-type: inline-size;
    color: var(--meter-text);
    font-family: var(--font-body);
  }
  .body {
    display: grid;
    gap: var(--space-2);
    padding: var(--space-3);
    background: var(--meter-body);
    border: 1px solid var(--meter-edge);
    border-radius: var(--radius-3);
  }
  .glass {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    grid-template-rows: auto auto 1fr;
    align-items: end;
    gap: 0 var(--space-3);
    min-height: 6.25rem;
    padding: var(--space-2) var(--space-3);
    box-sizing: border-box;
    background: var(--meter-glass);
    color: var(--meter-digits);
    border-radius: var(--radius-2);
    box-shadow: inset 0 2px 5px rgb(0 0 0 / 22%);
  }
  .flags {
    grid-column: 1 / -1;
    align-self: start;
    display: flex;
    align-items: center;
    gap: var(--space-1);
    min-height: 1.5rem;
    font-size: var(--text-s);
    font-weight: 700;
  }
  .remarks {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-3);
    min-height: 1.25rem;
    font-size: var(--text-s);
    font-weight: 700;
  }
  .soft {
    min-block-size: 28px;
    padding: 0 7px;
    font-size: 0.75rem;
    font-weight: 700;
    color: var(--meter-digits);
    background: none;
    border: 1px solid currentColor;
    border-radius: var(--radius-1);
    white-space: nowrap;
  }
  .soft[aria-pressed='true'],
  .soft[aria-expanded='true'] {
    background: var(--meter-digits);
    color: var(--meter-glass);
  }
  .soft:focus-visible {
    outline-color: var(--meter-digits);
  }
  .extremes {
    grid-column: 1 / -1;
    display: flex;
    gap: var(--space-3);
    margin: 0;
    font-family: var(--font-mono);
    font-size: var(--text-s);
  }
  .extremes div {
    display: flex;
    gap: var(--space-1);
  }
  .extremes dt {
    font-weight: 700;
  }
  .extremes dd {
    margin: 0;
  }
  .flags > :first-child {
    margin-inline-end: auto;
  }
  .flag {
    display: inline-flex;
    align-items: center;
    gap: var(--space-1);
  }
  .flag svg {
    inline-size: 1.25rem;
    block-size: 1.25rem;
  }
  .digits {
    font-family: var(--font-mono);
    font-size: 3.5rem;
    font-weight: 700;
    font-variant-numeric: tabular-nums;
    line-height: 1;
    text-align: end;
    letter-spacing: -0.02em;
    white-space: nowrap;
  }
  .digits.blank {
    opacity: 0.42;
  }
  .unit {
    font-family: var(--font-mono);
    font-size: var(--text-l);
    font-weight: 700;
    min-inline-size: 3.6em;
    padding-block-end: 0.35rem;
  }
  .prompt {
    font-weight: 400;
  }
  .leads {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: var(--space-2);
  }
  .leads.one {
    grid-template-columns: 1fr;
  }
  button {
    font: inherit;
    color: inherit;
    cursor: pointer;
  }
  button:focus-visible {
    outline: 3px solid var(--meter-glass);
    outline-offset: 2px;
  }
  .lead {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    align-items: center;
    gap: var(--space-2);
    min-block-size: 44px;
    padding: var(--space-1) var(--space-2);
    text-align: start;
    background: var(--meter-edge);
    border: 2px solid transparent;
    border-radius: var(--radius-2);
  }
  .lead[aria-pressed='true'] {
    border-color: var(--meter-glass);
  }
  .tip {
    display: inline-grid;
    place-items: center;
    inline-size: 1.75rem;
    block-size: 1.75rem;
    border-radius: 50%;
    border: 2px solid var(--meter-text);
    color: var(--paper);
    font-weight: 700;
    font-size: var(--text-s);
    box-sizing: border-box;
  }
  .tip.red {
    background: var(--lead-red);
  }
  .tip.black {
    background: var(--lead-black);
  }
  .tip.clamp {
    color: var(--meter-text);
    border-style: dashed;
  }
  .where {
    display: block;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    font-family: var(--font-mono);
    font-weight: 700;
    font-size: var(--text-m);
    line-height: 1.2;
  }
  .what {
    display: block;
    font-size: 0.75rem;
    line-height: 1.2;
  }
  .keys {
    display: grid;
    grid-template-columns: repeat(5, minmax(0, 1fr));
    gap: 3px;
  }
  .key {
    display: grid;
    justify-items: center;
    align-content: center;
    gap: 2px;
    min-block-size: 40px;
    padding: 2px 0;
    background: transparent;
    border: 1px solid var(--meter-edge);
    border-radius: var(--radius-1);
  }
  .key:hover {
    border-color: var(--meter-text);
  }
  .key[aria-checked='true'] {
    background: var(--meter-glass);
    color: var(--meter-digits);
    border-color: var(--meter-glass);
    font-weight: 700;
  }
  .symbol {
    display: inline-flex;
    align-items: center;
    gap: 1px;
    block-size: 1.2rem;
    font-family: var(--font-mono);
    font-weight: 700;
    font-size: var(--text-m);
    line-height: 1;
  }
  .symbol svg {
    block-size: 0.95rem;
    inline-size: auto;
  }
  .caption {
    font-size: 0.71rem;
    line-height: 1;
    white-space: nowrap;
  }
  .mute {
    display: inline-grid;
    place-items: center;
    min-inline-size: 28px;
    min-block-size: 28px;
    margin: -4px -6px -4px 0;
    padding: 0;
    background: none;
    border: 0;
    border-radius: var(--radius-1);
  }
  .mute:focus-visible {
    outline-color: var(--meter-digits);
  }
  .mute svg {
    inline-size: 1.25rem;
    block-size: 1.25rem;
  }
  .spoken {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (max-width: 760px) {
    .body {
      gap: 6px;
      padding: var(--space-2);
      border-radius: 0;
      border-inline: 0;
    }
    .glass {
      min-height: 4.5rem;
      padding: var(--space-1) var(--space-3);
    }
    /* remarks beside the digits: a row less of the drawing is lost */
    .glass {
      grid-template-columns: minmax(0, 1fr) auto auto;
      grid-template-rows: auto 1fr;
    }
    .remarks {
      grid-column: 1;
      min-height: 0;
      align-self: center;
      font-size: 0.8rem;
      line-height: 1.15;
    }
    .digits {
      font-size: 2.75rem;
    }
    .flags {
      min-height: 1.25rem;
    }
    .key {
      min-block-size: 34px;
      gap: 1px;
    }
  }
  @media (prefers-reduced-motion: no-preference) {
    .tone svg path {
      animation: sounding 700ms ease-in-out infinite alternate;
    }
    @keyframes sounding {
      from {
        opacity: 0.35;
      }
      to {
        opacity: 1;
      }
    }
  }
  @media print {
    .body {
      display: none;
    }
  }
`;
