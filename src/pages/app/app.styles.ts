import {css} from 'lit';

/** The sheet that every page is set on: frame, zone marks along its edge, title block in the corner. */
export const appStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 100vh;
    min-height: 100dvh;
    background-color: var(--paper);
  }

  .skip {
    position: absolute;
    left: var(--space-4);
    top: -6rem;
    z-index: 10;
    background: var(--paper-raised);
  }

  .skip:focus {
    top: var(--space-2);
  }

  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 0 var(--space-5);
    width: 100%;
    max-width: 1360px;
    margin: 0 auto;
    padding: var(--space-2) clamp(var(--space-3), 2.5vw, var(--space-6));
  }

  .name {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    min-height: 44px;
    color: var(--ink);
    font-size: var(--text-l);
    font-weight: 700;
    letter-spacing: -0.01em;
    text-decoration: none;
  }

  .name svg {
    width: 28px;
    height: 28px;
    flex: none;
    fill: none;
    stroke: currentColor;
    stroke-width: 2.4;
  }

  .name svg .contact {
    stroke: var(--accent);
    stroke-width: 3;
  }

  nav ul {
    display: flex;
    align-items: center;
    gap: 0 var(--space-4);
  }

  nav a {
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    padding: 0 2px;
    color: var(--ink);
    text-decoration: none;
    border-bottom: 3px solid transparent;
    border-top: 3px solid transparent;
  }

  nav a:hover {
    color: var(--accent-hover);
    border-bottom-color: var(--rule-strong);
  }

  nav a[aria-current='page'] {
    font-weight: 700;
    border-bottom-color: var(--accent);
  }

  .notice {
    width: 100%;
    max-width: 1360px;
    margin: 0 auto var(--space-2);
    padding: 0 clamp(var(--space-3), 2.5vw, var(--space-6));
  }

  .notice p {
    max-width: none;
  }

  /* The sheet: a thin trim line, a heavy border line inside it, as on any print. */
  .sheet {
    position: relative;
    display: flex;
    flex: 1;
    flex-direction: column;
    width: calc(100% - 2 * clamp(0px, 2.5vw, 32px));
    max-width: 1296px;
    margin: 0 auto clamp(0px, 2.5vw, 28px);
    padding: 22px;
    background: var(--paper-raised);
    border: 1px solid var(--rule-strong);
  }

  .frame {
    display: flex;
    flex: 1;
    flex-direction: column;
    border: 2px solid var(--ink);
  }

  main {
    flex: 1;
    padding: clamp(var(--space-4), 3vw, 40px);
    padding-bottom: var(--space-7);
  }

  main:focus {
    outline: none;
  }

  .zones {
    position: absolute;
    display: flex;
    font: 400 0.6875rem/22px var(--font-mono);
    color: var(--ink-3);
    text-align: center;
    user-select: none;
  }

  .zones span {
    flex: 1;
  }

  .zones.top {
    inset: 0 22px auto 22px;
    height: 22px;
  }

  .zones.side {
    inset: 22px auto 22px 0;
    width: 22px;
    flex-direction: column;
  }

  .zones.side span {
    display: grid;
    place-items: center;
  }

  .zones.top span + span {
    border-left: 1px solid var(--rule-strong);
  }

  .zones.side span + span {
    border-top: 1px solid var(--rule-strong);
  }

  /* The title block: bottom right corner, sharing the frame's lines. */
  footer {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 34rem);
    align-items: end;
  }

  .caution {
    padding: var(--space-4) clamp(var(--space-4), 3vw, 40px);
    font-size: var(--text-s);
    color: var(--ink-2);
    max-width: 56ch;
  }

  .block {
    display: grid;
    grid-template-columns: 1.15fr 1fr 1fr;
    border: solid var(--ink);
    border-width: 2px 0 0 2px;
    font-size: var(--text-s);
  }

  .block > div {
    min-width: 0;
    padding: 6px 10px 8px;
    border: 0 solid var(--ink);
  }

  .block dt {
    font-size: 0.75rem;
    color: var(--ink-3);
    line-height: 1.3;
  }

  .block dd {
    font-weight: 700;
    line-height: 1.3;
    overflow-wrap: anywhere;
  }

  .block .wide {
    grid-column: 1 / -1;
    border-bottom-width: 1px;
  }

  .block .wide dd {
    font-size: var(--text-l);
  }

  .block > div:not(.wide) + div {
    border-left-width: 1px;
  }

  /* The bench needs all the room there is, and never more: it scrolls inside itself. */
  @media screen {
    :host([wide]) {
      height: 100vh;
      height: 100dvh;
      overflow: hidden;
    }

    :host([wide]) :is(.sheet, .frame, main) {
      min-height: 0;
    }

    :host([wide]) main {
      display: grid;
      grid-template-rows: minmax(0, 1fr);
      grid-template-columns: minmax(0, 1fr);
    }
  }

  :host([wide]) .sheet {
    width: 100%;
    max-width: none;
    margin: 0;
    padding: 0;
    border-width: 1px 0 0;
  }

  :host([wide]) .frame {
    border: 0;
  }

  :host([wide]) main {
    padding: 0;
  }

  :host([wide]) :is(.zones, footer),
  :host([bare]) :is(header, .notice) {
    display: none;
  }

  :host([wide]) :is(header, .notice) {
    max-width: none;
    padding-left: var(--space-4);
    padding-right: var(--space-4);
  }

  :host([wide]) header {
    padding-top: 0;
    padding-bottom: 0;
  }

  .loading {
    color: var(--ink-2);
  }

  @media (max-width: 860px) {
    .sheet {
      padding: 0;
      border-width: 1px 0 0;
      width: 100%;
      margin: 0;
    }

    .frame {
      border: 0;
    }

    .zones {
      display: none;
    }

    main {
      padding-bottom: var(--space-6);
    }

    footer {
      grid-template-columns: minmax(0, 1fr);
    }

    .block {
      border-left-width: 0;
      border-bottom-width: 2px;
    }
  }

  @media (max-width: 480px) {
    header {
      gap: 0 var(--space-2);
      padding: 0 var(--space-3);
      flex-wrap: nowrap;
    }

    .name svg {
      display: none;
    }

    nav ul {
      gap: 0 clamp(3px, 2.2vw, var(--space-3));
    }

    .name {
      font-size: clamp(1rem, 4.4vw, var(--text-l));
    }

    .block {
      grid-template-columns: 1fr 1fr 1fr;
    }
  }

  @media print {
    :host {
      display: block;
    }

    header,
    .notice,
    .zones,
    .caution {
      display: none;
    }

    .sheet,
    .frame {
      display: block;
      width: auto;
      max-width: none;
      margin: 0;
      padding: 0;
      border: 0;
    }

    main {
      padding: 0;
    }

    footer {
      display: block;
      margin-top: var(--space-5);
    }

    .block {
      border-width: 2px;
      margin-left: auto;
      width: 60%;
      break-inside: avoid;
    }
  }
`;
