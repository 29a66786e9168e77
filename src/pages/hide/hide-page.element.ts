import {html, LitElement} from 'lit';
customElements.define('rb-hide-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">hide-page</h1>`; } });
