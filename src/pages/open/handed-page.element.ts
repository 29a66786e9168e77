import {html, LitElement} from 'lit';
customElements.define('rb-handed-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">handed-page</h1>`; } });
