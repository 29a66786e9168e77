import {html, LitElement} from 'lit';
customElements.define('rb-unit-page', class extends LitElement { override render() { return html`<h1 tabindex="-1">unit-page</h1>`; } });
