import {css} from 'lit';

export const homePageStyles = css`
  .opening {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
  }

  .opening .lead {
    max-width: 52ch;
  }

  /* What to go on with, or how to begin: the one thing on this sheet that is set in a box. */
  .continue,
  .guide {
    margin-top: var(--space-5);
    border: var(--line) solid var(--ink);
    outline: var(--line) solid var(--ink);
    outline-offset: 3px;
    background: var(--paper-raised);
    padding: var(--space-4) var(--space-5);
  }

  .continue {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: var(--space-3) var(--space-5);
  }

  .continue blockquote {
    margin: 2px 0 4px;
    font-size: var(--text-l);
    font-weight: 700;
    line-height: 1.3;
    overflow-wrap: anywhere;
  }

  .guide ol {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 0 var(--space-5);
    margin: var(--space-4) 0;
  }

  .guide li {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: var(--space-3);
    line-height: 1.4;
  }

  .guide li b {
    display: block;
  }

  .unit {
    display: grid;
    grid-template-columns: minmax(0, 22rem) minmax(0, 1fr) minmax(0, 17.5rem);
    gap: var(--space-4) var(--space-6);
    padding: var(--space-5) 0;
    border-top: 1px solid var(--rule-strong);
  }

  .unit rb-unit-picture {
    --picture-height: 14rem;
  }

  .units > :first-child {
    border-top: 0;
    padding-top: var(--space-3);
  }

  .units > :last-child {
    padding-bottom: 0;
  }

  .unit h3 {
    font-size: 1.375rem;
    line-height: 1.2;
  }

  .unit h3 a {
    color: inherit;
    text-decoration-color: var(--rule-strong);
  }

  .unit .about {
    margin-top: var(--space-2);
    color: var(--ink-2);
  }

  .facts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-4);
    margin-top: var(--space-3);
    font-size: var(--text-s);
  }

  .facts div {
    display: flex;
    gap: 0.4em;
  }

  .facts dt {
    color: var(--ink-3);
  }

  .facts dd {
    font-weight: 700;
  }

  .also {
    margin-top: var(--space-1);
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 var(--space-3);
    font-size: var(--text-s);
  }

  .also a,
  .also button {
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    padding: 0;
  }

  .more {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: 0 var(--space-7);
  }

  .recent {
    border-top: 1px solid var(--rule);
  }

  .recent li {
    max-width: none;
    border-bottom: 1px solid var(--rule);
  }

  .recent a {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 var(--space-4);
    padding: var(--space-2) 0;
    min-height: 44px;
    align-items: center;
    color: inherit;
    text-decoration: none;
  }

  .recent a:hover .what {
    color: var(--accent-hover);
    text-decoration: underline;
  }

  .recent .what {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }

  @media (max-width: 1040px) {
    .unit {
      grid-template-columns: minmax(0, 13rem) minmax(0, 1fr);
    }

    .unit .calls {
      grid-column: 1 / -1;
    }
  }

  /* a button under a text is not a line of it */
  p + p:has(> .button),
  .all {
    margin-top: var(--space-3);
  }

  @media (max-width: 720px) {
    .unit {
      grid-template-columns: minmax(0, 1fr);
      gap: var(--space-3);
    }

    .unit rb-unit-picture {
      --picture-height: 11rem;
    }

    .guide ol,
    .more {
      grid-template-columns: minmax(0, 1fr);
      gap: var(--space-3);
    }

    .continue,
    .guide {
      padding: var(--space-3) var(--space-4);
    }

    .continue {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
