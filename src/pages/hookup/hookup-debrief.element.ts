import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {skills} from '../../diagnosis/skills.ts';
import {hookupPoints, parMinutes} from '../../hookup/hookup-grade.ts';
import type {HookupResult} from '../../hookup/hookup-result.ts';
import type {WorkLine} from '../../hookup/hookup-work.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

const kinds: Readonly<Record<WorkLine['is'], string>> = {
  wiring: 'Wiring',
  check: 'Verdict',
  reading: 'Reading',
  power: 'Power',
  bench: 'Bench',
  safety: 'Safe practice',
};

/** The debrief of work at a wiring task: points and where they come from, skills, advice, what was done in order. */
@customElement('rb-hookup-debrief')
export class HookupDebrief extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      :host {
        display: block;
      }
      table {
        width: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: var(--space-1) var(--space-2) var(--space-1) 0;
        text-align: left;
        vertical-align: top;
        border-bottom: 1px solid var(--rule);
      }
      th {
        font-weight: 400;
      }
      thead th {
        font-size: var(--text-s);
        color: var(--ink-2);
      }
      .number {
        text-align: right;
        font-variant-numeric: tabular-nums;
        white-space: nowrap;
      }
      tfoot td,
      tfoot th {
        font-weight: 700;
        border-top: 2px solid var(--ink);
      }
      .skills {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-4);
        margin-block: var(--space-2);
      }
      .advice {
        margin-block: var(--space-3);
      }
      details {
        margin-top: var(--space-3);
      }
      summary {
        min-height: 32px;
        padding: var(--space-1) 0;
        cursor: pointer;
      }
      .danger {
        color: var(--danger);
      }
      .good {
        color: var(--good);
      }
    `,
  ];

  @property({attribute: false}) result?: HookupResult;
  @property({attribute: false}) lines: readonly WorkLine[] = [];
  @property() advice = '';
  /** The row of deeds stands open. */
  @property({type: Boolean}) unfolded = false;

  override render() {
    const {result} = this;
    if (!result) return nothing;
    return html`<table class="grade">
        <thead>
          <tr>
            <th scope="col">What counts</th>
            <th scope="col">How it went</th>
            <th scope="col" class="number">Points</th>
          </tr>
        </thead>
        <tbody>
          ${rowsOf(result).map(
            ([term, words, points, of]) =>
              html`<tr>
                <th scope="row">${term}</th>
                <td>${words}</td>
                <td class="number">${points} of ${of}</td>
              </tr>`,
          )}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Together</th>
            <td></td>
            <td class="number">${result.grade.points} of 100</td>
          </tr>
        </tfoot>
      </table>
      <p class="advice">${this.advice}</p>
      ${
        result.occasions.length > 0
          ? html`<p class="small quiet">What it showed of your skills:</p>
              <ul class="skills small">
                ${result.occasions.map(
                  ({skill, right}) =>
                    html`<li class=${right ? 'good' : 'danger'}>
                      ${skills.find(({id}) => id === skill)?.title}: ${right ? 'shown' : 'not yet'}
                    </li>`,
                )}
              </ul>`
          : nothing
      }
      <details ?open=${this.unfolded}>
        <summary>What was done (${this.lines.length})</summary>
        <table class="lines small">
          <thead>
            <tr>
              <th scope="col" class="number">Min</th>
              <th scope="col">Kind</th>
              <th scope="col">Deed</th>
            </tr>
          </thead>
          <tbody>
            ${this.lines.map(
              ({atMinutes, is, text, tone}) =>
                html`<tr>
                  <td class="number">${atMinutes.toFixed(1)}</td>
                  <td>${kinds[is]}</td>
                  <td class=${tone ?? ''}>${mark(tone)}${text}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </details>`;
  }
}

/** A tone is told in words as well as in colour. */
function mark(tone: WorkLine['tone']): string {
  return tone === 'danger' ? 'Danger: ' : tone === 'caution' ? 'Mind: ' : '';
}

function rowsOf({
  counts,
  grade,
  rightFirstTime,
  wiresNeeded,
}: HookupResult): [string, string, number, number][] {
  const times = (n: number): string => (n === 0 ? 'never' : n === 1 ? 'once' : `${n} times`);
  return [
    [
      'Right the first time',
      rightFirstTime
        ? 'yes'
        : counts.solved
          ? `no: Corrections ${counts.corrections}`
          : counts.checks > 0
            ? `not right yet: Corrections ${counts.corrections}`
            : 'not checked yet',
      grade.outcome,
      hookupPoints.outcome,
    ],
    [
      'Unsafe energisings',
      `Times energised ${counts.energisings}; of these on unsafe wires ${times(counts.unsafeEnergisings)}`,
      grade.safety,
      hookupPoints.safety,
    ],
    [
      'Continuity before power',
      `${counts.deadReadings} ${counts.deadReadings === 1 ? 'reading' : 'readings'} on the dead circuit${counts.unreadEnergisings > 0 ? `; energised without one ${times(counts.unreadEnergisings)}` : ''}`,
      grade.continuity,
      hookupPoints.continuity,
    ],
    ['Wires', `${counts.wiresUsed} used, ${wiresNeeded} needed`, grade.wires, hookupPoints.wires],
    [
      'Minutes',
      `${Math.round(counts.minutes)}; full points within ${Math.round(parMinutes(wiresNeeded))}`,
      grade.minutes,
      hookupPoints.minutes,
    ],
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-debrief': HookupDebrief;
  }
}
