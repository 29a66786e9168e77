import {LitElement, html} from 'lit';
import {customElement} from 'lit/decorators.js';
@customElement('rb-pick-diagram')
export class RbPickDiagram extends LitElement {
  override render() {
    return html``;
  }
}
