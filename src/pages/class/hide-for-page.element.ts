import {css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Desk, DeskItem} from '../../classroom/protocol/student-messages.ts';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../hide/fault-list.element.ts';
import {faultLines, type FaultSiteLine} from '../hide/fault-shelf.ts';
import {sentenceOf} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {StudentPage} from './student-page.ts';
import type {StudentLine} from './student-line.ts';

/** A student hides a fault for another, within what the instructor allows. The choice goes to the server and is forgotten here. */
@customElement('rb-class-hide-for-page')
export class HideForPage extends StudentPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      :host {
        --line-notice-gap: var(--space-4);
      }

      .chosen {
        position: sticky;
        bottom: 0;
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2) var(--space-4);
        align-items: center;
        margin-top: var(--space-4);
        padding: var(--space-3) 0;
        border-top: 2px solid var(--ink);
        background: var(--paper-raised);
      }

      rb-fault-list {
        margin-top: var(--space-4);
      }

      @media (max-width: 560px) {
        .chosen {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property() assignment = '';

  @state() private unit: Unit | undefined;
  @state() private lines: readonly FaultSiteLine[] = [];
  @state() private fault = '';
  @state() private refusal = '';
  @state() private failed = '';
  @state() private busy = false;

  protected readonly joiningTitle = 'Hide a fault';
  private asked = false;

  protected override updated(): void {
    const item = this.item;
    if (item && !this.asked) {
      this.asked = true;
      void this.fetch(item);
    }
  }

  protected renderDesk(_desk: Desk, line: StudentLine) {
    const {item} = this;
    return html`${this.renderNotice(line)} ${item ? this.renderItem(item) : this.renderNotThere()}`;
  }

  private get item(): DeskItem | undefined {
    return this.itemOf(this.assignment, 'hide');
  }

  private renderItem(item: DeskItem) {
    if (item.stage === 'done') {
      return html`<div class="stack">
        <h1 tabindex="-1">Hidden</h1>
        <p class="lead">The lid is closed. ${item.forName ?? 'The other'} has the call now.</p>
        <p class="row"><a class="button first" href=${classHref({at: 'seat'})}>To your desk</a></p>
      </div>`;
    }
    return html`
      <p class="crumbs"><a href=${classHref({at: 'seat'})}>Your desk</a></p>
      <h1 tabindex="-1">Hide a fault for ${item.forName ?? 'another student'}</h1>
      <p class="lead">
        In the <b>${this.unit?.title ?? item.title}</b>. Choose one that can be found: hiding well
        and finding well are both graded.
      </p>
      ${this.failed ? html`<p class="note danger" role="alert"><strong>Not possible.</strong>${this.failed}</p>` : nothing}
      ${
        this.unit
          ? html`<rb-fault-list
              .unit=${this.unit}
              .lines=${this.lines}
              .chosen=${this.fault ? [this.fault] : []}
              @fault-toggled=${(event: CustomEvent<{fault: string}>) =>
                (this.fault = this.fault === event.detail.fault ? '' : event.detail.fault)}
            ></rb-fault-list>`
          : nothing
      }
      ${!this.unit && !this.failed ? html`<p class="quiet" role="status">Fetching what may be hidden…</p>` : nothing}
      <div class="chosen">
        <span
          >${this.fault ? this.nameOf(this.fault) : html`<span class="quiet">Nothing chosen yet.</span>`}</span
        >
        <button class="button first" ?disabled=${!this.fault || this.busy} @click=${this.hide}>
          Close the lid
        </button>
      </div>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not hidden.</strong>${this.refusal}</p>` : nothing}
      </div>
    `;
  }

  private nameOf(fault: string): string {
    const modes = this.lines.flatMap(({modes}) => modes);
    return modes.find((mode) => mode.fault === fault)?.name ?? fault;
  }

  private readonly hide = async (): Promise<void> => {
    const {line} = this.watch;
    if (!line || !this.fault) return;
    this.busy = true;
    this.refusal = '';
    try {
      await line.ask({is: 'hide', assignment: this.assignment, fault: this.fault});
      this.fault = '';
      goTo({page: 'class', place: {at: 'seat'}}, {replace: true});
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  };

  private async fetch(item: DeskItem): Promise<void> {
    const {line} = this.watch;
    if (!line || item.stage === 'done') return;
    try {
      const [told, unit, catalogue] = await Promise.all([
        line.ask({is: 'choices', assignment: item.assignment}),
        desk().unit(await openAttempts(), item.unit),
        desk().catalogue({shipped: item.unit}),
      ]);
      const allowed = told.what === 'choices' ? new Set(told.lines.map(({id}) => id)) : new Set();
      this.lines = faultLines(
        unit,
        catalogue.filter(({id}) => allowed.has(id)),
      );
      this.unit = unit;
    } catch (error) {
      this.failed = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-hide-for-page': HideForPage;
  }
}
