import {css} from 'lit';

/** On paper: black on white, the whole drawing. After all others. */
export const printStyles = css`
  @media print {
    :host {
      --paper: white;
      --paper-raised: white;
      --paper-sunken: white;
      --enclosure: white;
      --part: white;
      --ink: black;
      --ink-2: black;
      --ink-3: #333;
      --focus: black;
      --rule: #999;
      --rule-strong: #333;
      --highlight: #eee;
      --wire-casing: black;
      block-size: auto !important;
      min-block-size: 0;
      overflow: visible;
      break-inside: avoid;
    }
    .frame {
      position: static;
    }
    svg.sheet {
      block-size: auto;
      max-block-size: 92vh;
    }
    .tools {
      display: none;
    }
    .wire-label {
      display: inline;
    }
    .connection .wire .core,
    .connection .wire.cased .core {
      stroke: black;
      stroke-width: 1.6;
    }
    .connection .wire .casing {
      stroke: none;
    }
  }
`;
