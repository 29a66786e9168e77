import {LitElement, css, html, nothing, svg} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {encode} from 'uqr';

/** Modules of white round the code: ISO/IEC 18004 asks for four. */
const quietModules = 4;

/** An address as a QR code, drawn as one path. Always dark on white: many cameras read no other. */
@customElement('rb-qr-code')
export class QrCode extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }

    svg {
      display: block;
      width: 100%;
      height: auto;
    }
  `;

  @property() text = '';
  /** What a screen reader says of it. */
  @property() label = 'QR code';

  override render() {
    if (!this.text) return nothing;
    const {size, data} = encode(this.text, {ecc: 'M', border: quietModules});
    const path = data
      .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])))
      .join('');
    return html`<svg
      viewBox="0 0 ${size} ${size}"
      role="img"
      aria-label=${this.label}
      shape-rendering="crispEdges"
    >
      ${svg`<rect width=${size} height=${size} fill="#fff" /><path d=${path} fill="#000" />`}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-qr-code': QrCode;
  }
}
