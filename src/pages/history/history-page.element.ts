import {html, LitElement} from 'lit';
customElements.define('rb-history-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">history-page</h1>`; } });
