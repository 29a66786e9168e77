import {LitElement, html, nothing, type TemplateResult} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {statedError} from '../meter/accuracy-text.ts';
import {functionNames} from '../meter/function-names.ts';
import type {LogEntry, SafetyFinding} from './bench-view.ts';
import {clockText} from './clock-text.ts';
import {expectationText} from './expectation-text.ts';
import {fieldLogStyles} from './field-log.styles.ts';

/**
 * The field log: every reading, note and thing done, in order. A table where there is room, stacked entries
 * where there is not. Nothing can be taken out of it.
 *
 * @event {{evidence: readonly number[]}} evidence-changed - A person ticked or unticked an entry.
 */
@customElement('rb-field-log')
export class FieldLog extends LitElement {
  static override styles = fieldLogStyles;

  @property({attribute: false}) entries: readonly LogEntry[] = [];
  @property({attribute: false}) safety: readonly SafetyFinding[] = [];
  @property() caption = 'Field log';
  /** Readings can be ticked as evidence. */
  @property({type: Boolean}) selectable = false;
  /** Indices of the entries ticked. */
  @property({attribute: false}) evidence: readonly number[] = [];
  /** Latest entry on top. */
  @property({type: Boolean, attribute: 'newest-first'}) newestFirst = false;
  /** Only readings, as when evidence is chosen. */
  @property({type: Boolean, attribute: 'readings-only'}) readingsOnly = false;

  /** Said where there is nothing to show. */
  @property() empty =
    'Nothing in the log yet. Put both leads down, say what you expect, and read: each reading is written here with its time and what the unit was doing.';

  override render() {
    const kept = this.readingsOnly
      ? this.entries.filter((entry) => entry.kind === 'reading')
      : this.entries;
    if (kept.length === 0) {
      return html`<p class="empty">${this.empty}</p>`;
    }
    const rows = this.newestFirst ? [...kept].reverse() : kept;
    // explicit roles: a stacked table would else lose them in some browsers
    return html`<table role="table">
      <caption>
        ${this.caption}
      </caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">No.</th>
          <th role="columnheader" scope="col">Time</th>
          <th role="columnheader" scope="col">State of the unit</th>
          <th role="columnheader" scope="col">Function</th>
          <th role="columnheader" scope="col">Red, black</th>
          <th role="columnheader" scope="col" class="end">Expected</th>
          <th role="columnheader" scope="col" class="end">Read</th>
          ${this.selectable ? html`<th role="columnheader" scope="col">Evidence</th>` : nothing}
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${repeat(
          rows,
          (entry) => entry.index,
          (entry) => (entry.kind === 'reading' ? this.reading(entry) : this.remark(entry)),
        )}
      </tbody>
    </table>`;
  }

  private reading(entry: LogEntry): TemplateResult {
    const chosen = this.evidence.includes(entry.index);
    const display = entry.display;
    return html`<tr
        role="row"
        class="reading ${chosen ? 'chosen' : ''} ${this.selectable ? 'selectable' : ''}"
      >
        <td role="cell" class="no">${entry.index + 1}</td>
        <td role="cell" class="time">${clockText(entry.timeMs)}</td>
        <td role="cell" class="state">${entry.state}</td>
        <td role="cell" class="function">
          ${entry.function ? functionNames[entry.function].title : ''}
        </td>
        <td role="cell" class="points">${this.points(entry)}</td>
        <td role="cell" class="expected end">${expectationText(entry.expected, entry.function)}</td>
        <td role="cell" class="read end">
          ${display ? html`${display.text} ${display.overload ? '' : display.unit}` : '–'}
          ${display?.tone ? html`<span class="flag tone">tone</span>` : nothing}
          ${display?.hazard ? html`<span class="flag">${display.charged ? 'charged!' : 'live!'}</span>` : nothing}
          ${display?.batteryLow ? html`<span class="flag">battery low</span>` : nothing}
          ${display?.fuseBlew ? html`<span class="flag">fuse blew</span>` : nothing}
          ${display?.climbed ? html`<span class="flag tone">climbed</span>` : nothing}
          ${this.worth(entry)}
        </td>
        ${
          this.selectable
            ? html`<td role="cell" class="pick">
                <label class="choice">
                  <input
                    type="checkbox"
                    aria-label=${`Entry ${entry.index + 1} is evidence`}
                    .checked=${chosen}
                    @change=${() => this.toggle(entry.index)}
                  />
                </label>
              </td>`
            : nothing
        }
      </tr>
      ${this.findings(entry)}`;
  }

  /** The limit of error of a reading, and its arithmetic. */
  private worth({function: fn, display}: LogEntry) {
    const error = fn && display && statedError(fn, display);
    return error
      ? html`<small class="worth"
          ><span class="arithmetic">${error.arithmetic} = </span>${error.limit}</small
        >`
      : nothing;
  }

  private points(entry: LogEntry) {
    if (entry.wire) return html`<span class="mono">${entry.wire}</span> in the clamp`;
    return html`<span class="red"
        ><span class="lead-name red" aria-label="Red">R</span>${entry.red}</span
      >
      <span class="black"
        ><span class="lead-name black" aria-label="Black">B</span>${entry.black}</span
      >`;
  }

  private remark(entry: LogEntry): TemplateResult {
    const span = this.selectable ? 5 : 4;
    return html`<tr role="row" class=${entry.kind}>
        <td role="cell" class="no">${entry.index + 1}</td>
        <td role="cell" class="time">${clockText(entry.timeMs)}</td>
        <td role="cell" class="state">${entry.state}</td>
        <td role="cell" class="text" colspan=${span}>
          ${entry.kind === 'note' ? html`<b>Note:</b> ` : nothing}${entry.hint ? html`<b>Coach:</b> ` : nothing}${entry.text ?? ''}
          ${
            entry.extremes
              ? html`<small class="worth"
                  >Recorded: min ${entry.extremes.least.text} ${entry.extremes.least.unit}, max
                  ${entry.extremes.most.text} ${entry.extremes.most.unit}</small
                >`
              : nothing
          }
        </td>
      </tr>
      ${this.findings(entry)}`;
  }

  private findings(entry: LogEntry) {
    const found = entry.findings
      .map((at) => this.safety[at])
      .filter((finding) => finding !== undefined);
    if (found.length === 0) return nothing;
    return html`<tr role="row" class="found">
      <td role="cell" colspan=${this.selectable ? 8 : 7}>
        ${found.map(
          (finding) =>
            html`<div class="finding ${finding.severity}">
              <b>${finding.severity === 'danger' ? 'Danger' : 'Caution'}</b>
              <span>${finding.text}</span>
            </div>`,
        )}
      </td>
    </tr>`;
  }

  private toggle(index: number): void {
    const evidence = this.evidence.includes(index)
      ? this.evidence.filter((at) => at !== index)
      : [...this.evidence, index].sort((a, b) => a - b);
    this.dispatchEvent(
      new CustomEvent('evidence-changed', {detail: {evidence}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-field-log': FieldLog;
  }
}
