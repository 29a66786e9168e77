import {html, LitElement} from 'lit';
customElements.define('rb-open-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">open-page</h1>`; } });
