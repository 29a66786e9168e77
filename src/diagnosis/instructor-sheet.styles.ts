import {css} from 'lit';

export const instructorSheetStyles = css`
  :host {
    display: block;
    line-height: 1.45;
  }
  h1 {
    margin: 0 0 var(--space-4);
    font-size: var(--text-xxl);
    line-height: 1.1;
    letter-spacing: -0.01em;
    outline: none;
  }
  h2 {
    margin: 0 0 var(--space-3);
    font-size: var(--text-xl);
    line-height: 1.2;
  }
  h3 {
    margin: 0 0 var(--space-2);
    font-size: var(--text-m);
  }
  p,
  dl,
  dd,
  ol {
    margin: 0;
  }
  .names {
    display: none;
  }
  .facts {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: var(--space-1) var(--space-4);
    padding-block-end: var(--space-5);
    border-block-end: 2px solid var(--ink);
  }
  .facts dt {
    color: var(--ink-2);
  }
  .facts .fault {
    font-weight: 700;
  }
  section {
    padding-block: var(--space-5);
  }
  section + section {
    border-block-start: 1px solid var(--rule);
  }
  .points {
    display: grid;
    gap: var(--space-4);
    padding-inline-start: 2.2em;
  }
  .points li::marker {
    font-family: var(--font-mono);
    font-weight: 700;
  }
  .points p {
    max-inline-size: 68ch;
  }
  .ask {
    margin-block-start: 2px;
    padding-inline-start: var(--space-3);
    border-inline-start: 4px solid var(--accent);
  }
  .ways {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: var(--space-5) var(--space-6);
    margin-block-start: var(--space-4);
  }
  .way {
    padding-inline-start: 2.2em;
    border-block-start: 1.5px solid var(--ink);
  }
  .way li {
    /* the float of what is left stays in its own step */
    display: flow-root list-item;
    padding-block: 5px;
    border-block-end: 1px solid var(--rule);
    overflow-wrap: anywhere;
  }
  .way li::marker {
    font-family: var(--font-mono);
    font-size: var(--text-s);
  }
  .shown,
  .left {
    font-family: var(--font-mono);
    white-space: nowrap;
  }
  .left {
    float: inline-end;
    padding-inline-start: var(--space-3);
    color: var(--ink-2);
    font-size: var(--text-s);
  }
  em {
    display: block;
    font-style: normal;
    font-weight: 700;
  }
  .quiet {
    padding-block-start: var(--space-2);
    color: var(--ink-2);
    font-size: var(--text-s);
  }
  @media (max-width: 720px) {
    .facts,
    .ways {
      grid-template-columns: minmax(0, 1fr);
    }
    .facts {
      gap: 0;
    }
    .facts dd {
      padding-block-end: var(--space-2);
    }
  }
  @media print {
    h1 {
      margin-block-end: var(--space-3);
    }
    section {
      padding-block: var(--space-4);
    }
    .names {
      display: grid;
      grid-template-columns: 2fr 1fr;
      gap: var(--space-5);
      margin-block-end: var(--space-4);
      color: var(--ink-2);
    }
    .names span {
      border-block-end: 1px solid var(--ink);
      padding-block-end: 2px;
    }
    .points li,
    .way li {
      break-inside: avoid;
    }
    h2,
    h3 {
      break-after: avoid;
    }
    .ways {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      gap: var(--space-5);
    }
  }
`;
