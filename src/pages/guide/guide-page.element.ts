import {html, LitElement} from 'lit';
customElements.define('rb-guide-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">guide-page</h1>`; } });
