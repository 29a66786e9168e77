import {html} from 'lit';

// drawn, because the fonts hold neither sign

/** Done, or as it should be. */
export const tick = html`<svg
  class="mark-sign"
  viewBox="0 0 16 16"
  width="14"
  height="14"
  aria-hidden="true"
>
  <path d="M2 8.5l4 4L14 3.5" fill="none" stroke="currentColor" stroke-width="2.6" />
</svg>`;

/** Broken, or not as it should be. */
export const cross = html`<svg
  class="mark-sign"
  viewBox="0 0 16 16"
  width="14"
  height="14"
  aria-hidden="true"
>
  <path d="M3 3l10 10M13 3L3 13" fill="none" stroke="currentColor" stroke-width="2.6" />
</svg>`;
