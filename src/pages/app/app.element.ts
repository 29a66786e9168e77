import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {guard} from 'lit/directives/guard.js';
import {keyed} from 'lit/directives/keyed.js';
import {onStoreState, openAttempts} from '../../store/attempts.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {appStyles} from './app.styles.ts';
import {pageOf} from './pages.ts';
import type {Page} from './page.ts';
import {parseRoute} from './router.ts';
import './theme-switch.element.ts';

const navigation = [
  {name: 'home', href: '#/', title: 'Units'},
  {name: 'history', href: '#/history', title: 'History'},
  {name: 'class', href: '#/class', title: 'Class'},
  {name: 'about', href: '#/about', title: 'Safety'},
] as const;

/**
 * The shell: reads the address, fetches its page, sets the document's title, moves the focus to the page's heading, and
 * draws what surrounds every page. A page may give a better title with a `page-title` event (`detail.title`).
 */
@customElement('rb-app')
export class RbApp extends LitElement {
  static override styles = [sheetStyles, appStyles];

  /** Reflected for the styles: the bench takes the whole window. */
  @property({type: Boolean, reflect: true}) wide = false;

  /** Reflected for the styles: the projector's view has no header. */
  @property({type: Boolean, reflect: true}) bare = false;

  @state() private page: Page | undefined;
  @state() private failed = '';
  @state() private sheetTitle = '';
  @state() private notice = '';
  @state() private kept = true;

  private turn = 0;
  private first = true;
  private stopListening: () => void = () => undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('hashchange', this.follow);
    this.stopListening = onStoreState(({notice}) => (this.notice = notice ?? ''));
    void openAttempts().then((store) => (this.kept = store.kept));
    void this.follow();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('hashchange', this.follow);
    this.stopListening();
  }

  override render() {
    return html`
      <header class="no-print">
        <button class="skip button" @click=${this.skip}>Skip to the page</button>
        <a class="name" href="#/">${mark}Rungbench</a>
        <nav aria-label="Main">
          <ul>
            ${navigation.map(
              ({name, href, title}) =>
                html`<li>
                  <a href=${href} aria-current=${this.page?.within === name ? 'page' : nothing}
                    >${title}</a
                  >
                </li>`,
            )}
            <li><rb-theme-switch></rb-theme-switch></li>
          </ul>
        </nav>
      </header>
      <div class="notice no-print" role="status">
        ${this.notice ? html`<p class="note caution"><strong>Not kept.</strong>${this.notice}</p>` : nothing}
      </div>
      <div class="sheet">
        <div class="zones top" aria-hidden="true">
          ${[1, 2, 3, 4, 5, 6].map((zone) => html`<span>${zone}</span>`)}
        </div>
        <div class="zones side" aria-hidden="true">
          ${['A', 'B', 'C', 'D'].map((zone) => html`<span>${zone}</span>`)}
        </div>
        <div class="frame">
          <main id="main" tabindex="-1" @page-title=${this.retitle}>${this.renderPage()}</main>
          ${this.renderTitleBlock()}
        </div>
      </div>
    `;
  }

  private renderPage() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">This page did not load</h1>
        <p class="lead">${this.failed}</p>
        <p class="row">
          <button class="button first" @click=${() => location.reload()}>Reload</button>
          <a class="button" href="#/">Back to the units</a>
        </p>
      </div>`;
    }
    // a page is made anew for each address, never handed another one's data
    return this.page
      ? guard([this.page], () => keyed(this.page, this.page?.render()))
      : html`<p class="loading" role="status">Fetching the sheet…</p>`;
  }

  private renderTitleBlock() {
    return html`<footer>
      <p class="caution">
        Practice for a supervised lab. On real equipment the local code, the manufacturer’s
        instructions and a licensed person decide. <a href="#/about">Safety</a>
      </p>
      <dl class="block">
        <div class="wide">
          <dt>Sheet</dt>
          <dd>${this.sheetTitle}</dd>
        </div>
        <div>
          <dt>Drawn by</dt>
          <dd>Rungbench</dd>
        </div>
        <div>
          <dt>Records</dt>
          <dd>${this.whereKept()}</dd>
        </div>
        <div>
          <dt>Use</dt>
          <dd>Practice only</dd>
        </div>
      </dl>
    </footer>`;
  }

  private whereKept(): string {
    if (this.page?.onServer) return 'On the server';
    return this.kept ? 'On this device' : 'Not kept';
  }

  private readonly follow = async (): Promise<void> => {
    const turn = ++this.turn;
    const page = pageOf(parseRoute(location.hash));
    try {
      await page.load();
      if (turn !== this.turn) return;
      this.failed = '';
      this.page = page;
      this.bare = page.bare ?? false;
      this.wide = this.bare || (page.wide ?? false);
      this.showTitle(page.title);
    } catch {
      if (turn !== this.turn) return;
      this.page = undefined;
      this.wide = this.bare = false;
      this.showTitle('Not loaded');
      this.failed =
        'Its files could not be fetched. Rungbench may have been stopped or updated since you opened it.';
    }
    await this.updateComplete;
    await this.focusHeading(turn);
  };

  /** After a change of page, reading goes on from its heading. At the first page the browser's own start is right. */
  private async focusHeading(turn: number): Promise<void> {
    if (this.first) {
      this.first = false;
      return;
    }
    scrollTo(0, 0);
    const main = this.renderRoot.querySelector('main');
    const page = main?.firstElementChild;
    if (page instanceof LitElement) await page.updateComplete;
    if (turn !== this.turn) return;
    const heading =
      page?.shadowRoot?.querySelector<HTMLElement>('h1[tabindex]') ??
      main?.querySelector<HTMLElement>('h1') ??
      main;
    heading?.focus({preventScroll: true});
  }

  private readonly retitle = (event: CustomEvent<{title: string}>): void =>
    this.showTitle(event.detail.title);

  private showTitle(title: string): void {
    this.sheetTitle = title;
    document.title = `${title} · Rungbench`;
  }

  /** A link to `#main` would be read as a route, so this moves the focus itself. */
  private skip(): void {
    this.renderRoot.querySelector('main')?.focus();
  }
}

const mark = html`<svg viewBox="0 0 32 32" aria-hidden="true">
  <path d="M5 4v24M27 4v24" stroke-width="3" />
  <path d="M5 16h6.5M20.5 16H27" />
  <path class="contact" d="M11.5 10v12M20.5 10v12" />
</svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'rb-app': RbApp;
  }
}
