import {css} from 'lit';

/** Sizes go with the window: what fills a laptop fills a projector, and is read from the back of the room. */
export const wallPageStyles = css`
  :host {
    --step: clamp(15px, min(1.75vw, 2.8vh), 44px);
    /* What must be read from the back of the room: 4 % of the height, read at 8 m on a picture 1.2 m high. */
    --far: calc(1.45 * var(--step));
    display: grid;
    grid-template: auto auto minmax(0, 1fr) / minmax(0, 1fr);
    min-height: 0;
    height: 100%;
    background: var(--paper-raised);
    font-size: var(--step);
    line-height: 1.25;
  }

  p,
  li {
    max-width: none;
  }

  .alone {
    grid-row: 1 / -1;
    align-self: center;
    justify-self: center;
    padding: var(--space-5);
    text-align: center;
  }

  header {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto calc(6.2 * var(--step));
    gap: 0 calc(1.2 * var(--step));
    align-items: center;
    padding: calc(0.5 * var(--step)) calc(0.9 * var(--step));
    border-bottom: 3px solid var(--ink);
  }

  h1 {
    font-size: calc(1.7 * var(--step));
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    line-clamp: 2;
    overflow: hidden;
  }

  .join {
    text-align: right;
    font-size: var(--far);
  }

  .join > span {
    display: block;
    overflow-wrap: anywhere;
  }

  .code {
    display: block;
    font: 700 calc(3.6 * var(--step)) / 1.05 var(--font-mono);
    font-variant-ligatures: none;
    letter-spacing: 0.06em;
    white-space: nowrap;
  }

  .lost:not(:empty) {
    padding: 4px var(--space-4);
    background: var(--caution-soft);
    border-bottom: 2px solid var(--caution);
  }

  .body {
    grid-row: 3;
    display: grid;
    grid-template-columns: minmax(14em, 1fr) minmax(0, 3fr);
    min-height: 0;
  }

  .body.whole {
    grid-template-columns: minmax(0, 1fr);
  }

  .progress:focus-visible {
    outline-offset: -3px;
  }

  .progress {
    min-height: 0;
    overflow: auto;
    padding: calc(0.6 * var(--step)) calc(0.8 * var(--step));
    border-right: 2px solid var(--ink);
  }

  .counts {
    font-size: var(--far);
  }

  .counts li {
    padding: 0.1em 0;
  }

  .counts b {
    display: inline-block;
    min-width: 1.3em;
    font-size: 1.5em;
    font-variant-numeric: tabular-nums;
  }

  /* The names need the room: the counts stand in two short lines. */
  .counts.short {
    font-size: 1.15em;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.8em;
  }

  .counts.short b {
    min-width: 0;
    font-size: 1.2em;
  }

  .marks {
    display: flex;
    flex-wrap: wrap;
    gap: 0.35em;
    margin-top: 0.8em;
  }

  /* The shape tells the stage, not a colour: hollow, half, full, dashed. */
  .mark {
    display: inline-block;
    flex: none;
    width: 1em;
    height: 1em;
    border: 0.13em solid var(--ink);
    border-radius: 50%;
  }

  .marks .mark {
    width: 1.5em;
    height: 1.5em;
  }

  .mark.working,
  .working > .mark {
    background: linear-gradient(90deg, var(--accent) 50%, transparent 50%);
  }

  .mark.finished,
  .finished > .mark {
    background: var(--good);
    box-shadow: inset 0 0 0 0.1em var(--paper-raised);
  }

  .mark.away,
  .away > .mark {
    border-style: dashed;
    border-color: var(--ink-3);
  }

  /* As large as the number of names allows. */
  .names {
    margin-top: 0.6em;
    font-size: clamp(
      var(--step) * 0.6,
      (100vh - 9.5 * var(--step)) / var(--count, 15) / 1.56,
      var(--far)
    );
    border-top: 2px solid var(--ink);
  }

  .names li {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    gap: 0.45em;
    align-items: center;
    padding: 0.12em 0;
    border-bottom: 1px solid var(--rule);
  }

  .names .name {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }

  .names .how {
    font-size: 0.85em;
    font-variant-numeric: tabular-nums;
  }

  .names .away {
    color: var(--ink-2);
  }

  .main {
    display: grid;
    grid-template-rows: auto auto minmax(0, 1fr);
    min-width: 0;
    min-height: 0;
    padding: calc(0.6 * var(--step)) calc(0.8 * var(--step));
  }

  .title {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: baseline;
    gap: 0 1em;
  }

  h2,
  .title p,
  .most {
    font-size: var(--far);
  }

  .most {
    padding-top: 0.2em;
  }

  .most .place {
    margin-right: 0.8em;
    white-space: nowrap;
  }

  .most b {
    font-family: var(--font-mono);
  }

  .title select {
    width: auto;
    max-width: 100%;
    font-size: 1em;
  }

  .empty {
    align-self: center;
    grid-row: 1 / -1;
    padding: 1em;
    font-size: 1.9em;
    color: var(--ink-2);
    text-align: center;
    text-wrap: balance;
  }

  .poll {
    grid-row: 1 / -1;
    display: flex;
    flex-direction: column;
    gap: 0.2em;
    min-height: 0;
    overflow: auto;
    /* --fit: how much larger than that a short question may be, set by the page. */
    font-size: calc(var(--far) * var(--fit, 1));
  }

  .poll h2 {
    font-size: 1.3em;
    line-height: 1.15;
    text-wrap: balance;
  }

  .readings li {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: center;
    gap: 0 1em;
    padding: 0.05em 0;
    border-bottom: 1px solid var(--rule);
  }

  .glass {
    font: 700 1.05em / 1.3 var(--font-mono);
    font-variant-ligatures: none;
  }

  .was {
    color: var(--ink-2);
    font-weight: 400;
    text-decoration: line-through;
    text-decoration-thickness: 1px;
  }

  .is {
    margin-left: 0.6em;
  }

  .answers {
    display: grid;
    gap: 0.3em;
  }

  .answers li {
    display: grid;
    grid-template-columns: 1.8em minmax(0, 1fr) minmax(0, 7em) 1.6em;
    gap: 0.6em;
    align-items: center;
    padding: 0.1em 0.4em;
    border: 2px solid transparent;
    border-bottom-color: var(--rule);
  }

  .answers .right {
    border-color: var(--good);
  }

  .tick {
    color: var(--good);
  }

  .letter {
    display: grid;
    place-items: center;
    width: 1.6em;
    height: 1.6em;
    border: 2px solid var(--ink);
    border-radius: 50%;
    font: 700 0.85em/1 var(--font-mono);
  }

  .count {
    text-align: right;
    font-variant-numeric: tabular-nums;
  }

  progress {
    appearance: none;
    width: 100%;
    height: 0.8em;
    border: 1px solid var(--ink);
    background: none;
  }

  progress::-webkit-progress-bar {
    background: none;
  }

  progress::-webkit-progress-value {
    background: var(--accent);
  }

  progress::-moz-progress-bar {
    background: var(--accent);
  }

  @media (max-width: 720px) {
    :host {
      display: block;
      overflow: auto;
    }

    header {
      grid-template-columns: minmax(0, 1fr) 6.5rem;
    }

    h1 {
      grid-column: 1 / -1;
    }

    .join {
      text-align: left;
    }

    .body {
      display: block;
    }

    .progress {
      border-right: 0;
      border-bottom: 2px solid var(--ink);
    }

    .main {
      display: block;
    }

    rb-heat-map {
      height: 70vw;
    }

    .answers li {
      grid-template-columns: 1.8em minmax(0, 1fr) 1.6em;
    }

    progress {
      display: none;
    }
  }
`;
