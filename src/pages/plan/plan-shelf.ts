import {html} from 'lit';
import {repeat} from 'lit/directives/repeat.js';
import {
  complaintsOf,
  key,
  planLines,
  type PlanFilter,
  type PlanLine,
  type PlannedCall,
} from '../../diagnosis/call-set.ts';
import {sections} from '../../diagnosis/fault-section.ts';
import {difficulties} from '../../faults/difficulty.ts';
import type {ListedUnit} from '../desk/desk.ts';
import {levelTitles, sentence, valueOf} from './plan-words.ts';

/** More lines than this are not read by anybody; the search narrows them. */
const mostShown = 60;

/** The catalogue of a unit to choose calls from. */
export interface Shelf {
  readonly units: readonly ListedUnit[];
  readonly unitId: string;
  /** Lines of the unit chosen; absent while they are fetched. */
  readonly here?: readonly PlanLine[];
  /** Share of the work where they are worked out. */
  readonly share?: number;
  readonly filter: PlanFilter;
  readonly calls: readonly PlannedCall[];
  readonly on: {
    unit(id: string): void;
    filter(change: PlanFilter): void;
    toggle(line: PlanLine): void;
  };
}

/** Filters and the faults that they leave, the quickest to find first. */
export const planShelf = (shelf: Shelf) => html`${filters(shelf)} ${faults(shelf)}`;

function filters({units, unitId, here, filter, on}: Shelf) {
  return html`<div class="tools">
    <div>
      <label for="unit">Unit</label>
      <select id="unit" @change=${(event: Event) => on.unit(valueOf(event))}>
        ${units.map(({id, title}) => html`<option value=${id} ?selected=${id === unitId}>${title}</option>`)}
      </select>
    </div>
    <div>
      <label for="section">Section</label>
      <select id="section" @change=${(event: Event) => on.filter({section: valueOf(event)})}>
        <option value="">All sections</option>
        ${sections.map((id) => html`<option value=${id} ?selected=${id === filter.section}>${sentence(id)}</option>`)}
      </select>
    </div>
    <div class="wide">
      <label for="notices">The customer notices</label>
      <select id="notices" @change=${(event: Event) => on.filter({complaint: valueOf(event)})}>
        <option value="">Anything</option>
        ${complaintsOf(here ?? []).map(
          ({complaint, faults}) =>
            html`<option value=${complaint} ?selected=${complaint === filter.complaint}>
              ${complaint} (${faults})
            </option>`,
        )}
      </select>
    </div>
    <div class="wide">
      <label for="words">Search</label>
      <input
        id="words"
        type="search"
        placeholder="K1, capacitor, open…"
        .value=${filter.words ?? ''}
        @input=${(event: Event) => on.filter({words: valueOf(event)})}
      />
    </div>
    <fieldset class="wide levels">
      <legend class="sr-only">How hard</legend>
      ${[undefined, ...difficulties].map(
        (level) =>
          html`<label>
            <input
              type="radio"
              name="level"
              .checked=${filter.difficulty === level}
              @change=${() => on.filter({difficulty: level})}
            />
            ${level ? levelTitles[level] : 'All levels'}
          </label>`,
      )}
    </fieldset>
  </div>`;
}

function faults(shelf: Shelf) {
  const {here, share, filter} = shelf;
  if (share !== undefined)
    return html`<p role="status">
      Trying every fault of this unit once: ${Math.round(100 * share)} %.
      <progress max="1" .value=${share}></progress>
    </p>`;
  if (!here) return html`<p class="quiet" role="status">Fetching the catalogue…</p>`;
  const found = planLines(here, filter);
  return html`<p class="small quiet" role="status">
      ${found.length} ${found.length === 1 ? 'fault' : 'faults'}, the quickest to find
      first${found.length > mostShown ? `; the first ${mostShown} are shown` : ''}.
    </p>
    <ul class="lines" aria-label="Faults">
      ${repeat(found.slice(0, mostShown), key, (line) => planLine(line, shelf))}
    </ul>`;
}

function planLine(line: PlanLine, {calls, on}: Shelf) {
  const chosen = calls.some((call) => key(call) === key(line));
  return html`<li>
    <div>
      <b>${line.name}</b>
      <span class="small quiet">
        ${levelTitles[line.difficulty]} · ${line.readings}
        ${line.readings === 1 ? 'reading' : 'readings'}, ${line.minutes} min ·
        ${sentence(line.section)} ·
        ${line.lookAlikes === 0 ? 'no other fault' : line.lookAlikes === 1 ? 'one other fault' : `${line.lookAlikes} others`}
        with these words
      </span>
      <q class="small">${line.complaint}</q>
    </div>
    <button
      class="button"
      aria-pressed=${chosen ? 'true' : 'false'}
      aria-label="${chosen ? 'In the set' : 'Add'}: ${line.name}"
      @click=${() => on.toggle(line)}
    >
      ${chosen ? 'In the set' : 'Add'}
    </button>
  </li>`;
}
