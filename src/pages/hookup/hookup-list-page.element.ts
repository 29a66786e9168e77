import {LitElement, css, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import type {HookupResult} from '../../hookup/hookup-result.ts';
import {openAttempts} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {ownTasks} from './known-tasks.ts';
import {shippedTasks} from './shipped-tasks.ts';
import './task-file-opener.element.ts';
import {wiringWords} from './wiring-words.ts';

const levels = {
  1: 'First circuits',
  2: 'Safety chains and mending',
  3: 'Relays, two sources, three phases',
} as const;

/** The wiring tasks, by level, each with how far this device has come with it. */
@customElement('rb-hookup-list-page')
export class HookupListPage extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .tasks li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-4);
        align-items: baseline;
        max-width: none;
        padding: var(--space-3) 0;
        border-bottom: 1px solid var(--rule);
      }
      .tasks a {
        display: inline-flex;
        align-items: center;
        min-height: 32px;
        font-weight: 700;
      }
      .tasks p {
        grid-column: 1 / -1;
      }
      .state {
        font-size: var(--text-s);
        color: var(--ink-2);
      }
    `,
  ];

  @state() private tasks: readonly HookupTask[] | undefined;
  @state() private own: readonly HookupTask[] = [];
  /** Best result of each task on this device. */
  @state() private results = new Map<string, HookupResult>();
  @state() private failed = '';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    return html`
      <h1 tabindex="-1">Wire the safeties yourself</h1>
      <p class="lead">
        Draw the wires, see the ladder of what you have built, and have every combination of its
        switches run. What is wrong is told with the reading that would have found it.
      </p>
      ${this.failed ? html`<p class="note danger"><strong>The tasks did not load.</strong>${this.failed}</p>` : nothing}
      ${!this.tasks && !this.failed ? html`<p class="quiet" role="status">Unrolling the tasks…</p>` : nothing}
      ${([1, 2, 3] as const).map((level) =>
        this.renderTasks(
          `${level}`,
          levels[level],
          this.tasks?.filter((task) => task.level === level) ?? [],
        ),
      )}
      ${this.tasks ? this.renderOwn() : nothing}
    `;
  }

  private renderTasks(no: string, title: string, tasks: readonly HookupTask[]) {
    if (tasks.length === 0) return nothing;
    return html`<section class="section" aria-labelledby="level-${no}">
      <span class="no" aria-hidden="true">${no}</span>
      <div class="body">
        <h2 id="level-${no}">${title}</h2>
        ${this.renderList(tasks)}
      </div>
    </section>`;
  }

  private renderList(tasks: readonly HookupTask[], own = false) {
    return html`<ul class="tasks">
      ${tasks.map((task) => {
        const result = this.results.get(task.id);
        return html`<li>
          <a href=${hrefOf({page: 'hookup-task', task: task.id})}>${task.title}</a>
          <span class="state">${result ? wiringWords(result) : 'Not begun'}</span>
          <p class="small quiet">${task.about}</p>
          ${
            own
              ? html`<p>
                  <button
                    type="button"
                    class="plain"
                    aria-label="Remove from this device: ${task.title}"
                    @click=${() => this.forget(task.id)}
                  >
                    Remove from this device
                  </button>
                </p>`
              : nothing
          }
        </li>`;
      })}
    </ul>`;
  }

  private renderOwn() {
    return html`<section class="section" aria-labelledby="own">
      <span class="no" aria-hidden="true">4</span>
      <div class="body">
        <h2 id="own">Tasks of your own</h2>
        <p class="small quiet">
          A task is one YAML file: parts, switches, rules and one right answer. Begin from a shipped
          one; every mistake in it is told with its line.
        </p>
        ${this.renderList(this.own, true)}
        <rb-task-file-opener></rb-task-file-opener>
      </div>
    </section>`;
  }

  private async forget(id: string): Promise<void> {
    const store = await openAttempts();
    await store.removeTask(id);
    this.own = await ownTasks(store);
  }

  private async fetch(): Promise<void> {
    try {
      const [tasks, store] = await Promise.all([shippedTasks(), openAttempts()]);
      this.tasks = tasks;
      this.own = await ownTasks(store);
      const results = new Map<string, HookupResult>();
      for (const {task, result} of await store.hookups()) {
        const each = JSON.parse(result) as HookupResult;
        const before = results.get(task);
        if (!before || each.grade.points > before.grade.points) results.set(task, each);
      }
      this.results = results;
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-list-page': HookupListPage;
  }
}
