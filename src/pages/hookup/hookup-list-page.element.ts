import {LitElement, css, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import {resumeSession, type HookupSession} from '../../hookup/hookup-session.ts';
import {openAttempts} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {sessionName, shippedTasks} from './shipped-tasks.ts';

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
  @state() private sessions = new Map<string, HookupSession>();
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
      ${([1, 2, 3] as const).map((level) => this.renderLevel(level))}
    `;
  }

  private renderLevel(level: 1 | 2 | 3) {
    const tasks = this.tasks?.filter((task) => task.level === level) ?? [];
    if (tasks.length === 0) return nothing;
    return html`<section class="section" aria-labelledby="level-${level}">
      <span class="no" aria-hidden="true">${level}</span>
      <div class="body">
        <h2 id="level-${level}">${levels[level]}</h2>
        <ul class="tasks">
          ${tasks.map(
            (task) =>
              html`<li>
                <a href=${hrefOf({page: 'hookup-task', task: task.id})}>${task.title}</a>
                <span class="state">${stateWords(this.sessions.get(task.id))}</span>
                <p class="small quiet">${task.about}</p>
              </li>`,
          )}
        </ul>
      </div>
    </section>`;
  }

  private async fetch(): Promise<void> {
    try {
      const [tasks, store] = await Promise.all([shippedTasks(), openAttempts()]);
      this.tasks = tasks;
      const kept = await Promise.all(
        tasks.map(async (task) => {
          const text = await store.setting(sessionName(task.id)).catch(() => undefined);
          return [task.id, text ? resumeSession(task, text) : undefined] as const;
        }),
      );
      this.sessions = new Map(
        kept.filter((each): each is [string, HookupSession] => each[1] !== undefined),
      );
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

function stateWords(session: HookupSession | undefined): string {
  if (!session) return 'Not begun';
  if (!session.solved) return `${session.wires.length} wires so far`;
  return session.corrections === 0
    ? 'Right the first time'
    : `Right after ${session.corrections} correction${session.corrections > 1 ? 's' : ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-list-page': HookupListPage;
  }
}
