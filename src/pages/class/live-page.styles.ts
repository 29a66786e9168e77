import {css} from 'lit';

export const livePageStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
    height: 100%;
    background: var(--paper-raised);
  }

  .standing {
    padding: var(--space-5) var(--space-4);
  }

  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 2px var(--space-5);
    padding: var(--space-2) var(--space-4);
    border-bottom: 2px solid var(--ink);
  }

  header .crumbs {
    margin: 0;
    max-width: 22rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }

  h1 {
    font-size: var(--text-xl);
  }

  .tools {
    margin-left: auto;
    gap: var(--space-1) var(--space-3);
  }

  .lost {
    max-width: none;
    padding: 6px var(--space-4);
    border-width: 0 0 2px;
  }

  .said {
    padding: 0 var(--space-4);
  }

  .desk {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    flex: 1;
    min-height: 0;
  }

  .desk.two {
    grid-template-columns: minmax(0, 1fr) minmax(22rem, 30rem);
  }

  .rows {
    overflow: auto;
    padding: 0 var(--space-4) var(--space-4);
  }

  .rows:focus-visible {
    outline-offset: -3px;
  }

  .rows > .note,
  .rows > .quiet {
    margin-top: var(--space-4);
  }

  table {
    table-layout: fixed;
    border-top: 0;
    font-size: var(--text-s);
  }

  thead th {
    position: sticky;
    top: 0;
    background: var(--paper-raised);
    font-size: 0.75rem;
  }

  thead th:nth-child(1) {
    width: 24%;
  }

  thead th:nth-child(2) {
    width: 9%;
  }

  thead th:nth-child(4) {
    width: 8.5%;
  }

  thead th:nth-child(5),
  thead th:nth-child(6),
  thead th:nth-child(8) {
    width: 6%;
  }

  thead th:nth-child(7) {
    width: 8%;
  }

  thead th:nth-child(9) {
    width: 11%;
  }

  tbody th,
  tbody td {
    padding-block: 3px;
    vertical-align: middle;
    line-height: 1.25;
  }

  .desk.two :is(td, th).doing,
  .desk.two :is(td, th):nth-child(5),
  .desk.two :is(td, th):nth-child(8) {
    display: none;
  }

  .desk.two thead th:nth-child(1) {
    width: 40%;
  }

  .desk.two thead :is(th:nth-child(2), th:nth-child(4), th:nth-child(6), th:nth-child(7)) {
    width: 12%;
  }

  .name {
    min-height: 28px;
    padding: 0;
    font-weight: 700;
    text-align: left;
    line-height: 1.2;
    color: var(--ink);
    overflow-wrap: anywhere;
  }

  .away .name {
    font-weight: 400;
    color: var(--ink-2);
  }

  tr.needs > * {
    background: var(--caution-soft);
  }

  tr.needs > :first-child {
    box-shadow: inset 4px 0 0 var(--caution);
    padding-left: 10px;
  }

  tr:not(.needs) > :first-child {
    padding-left: 10px;
  }

  tr.opened > * {
    border-bottom: 2px solid var(--ink);
  }

  .why {
    display: block;
    font-weight: 400;
    color: var(--ink);
  }

  .why b {
    color: var(--caution);
  }

  .doing {
    overflow-wrap: anywhere;
  }

  td.doing {
    max-height: 2.5em;
    overflow: hidden;
  }

  .safety .danger {
    color: var(--danger);
  }

  .safety .caution {
    color: var(--caution);
    white-space: nowrap;
  }

  @media (max-width: 860px) {
    :host {
      display: block;
      overflow: auto;
    }

    .desk,
    .desk.two {
      display: block;
    }

    .tools {
      margin-left: 0;
    }

    .rows {
      overflow: visible;
    }

    table,
    tbody,
    tbody th,
    .desk.two tbody th {
      display: block;
      width: auto;
    }

    thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }

    tbody tr {
      display: grid;
      grid-template-columns: repeat(3, minmax(0, 1fr));
      border-bottom: 1px solid var(--rule-strong);
    }

    tbody tr > th {
      grid-column: 1 / -1;
    }

    tbody td,
    tbody th,
    .desk.two td.doing,
    .desk.two td:nth-child(5),
    .desk.two td:nth-child(8) {
      display: block;
      border: 0;
      padding: 2px 8px 4px 10px;
      text-align: left;
    }

    td.number {
      text-align: left;
    }

    tr.needs {
      background: var(--caution-soft);
      box-shadow: inset 4px 0 0 var(--caution);
    }

    tr.needs > :first-child {
      box-shadow: none;
    }

    tbody td.doing {
      grid-column: 2 / -1;
      max-height: none;
    }

    tbody td:empty,
    .desk.two tbody td:empty {
      display: none;
    }

    td::before {
      content: attr(data-label);
      display: block;
      font-size: 0.75rem;
      color: var(--ink-2);
    }

    .name {
      min-height: 44px;
    }
  }
`;
