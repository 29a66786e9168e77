import {html, nothing} from 'lit';
import {repeat} from 'lit/directives/repeat.js';
import {key, type CallSet, type PlannedCall} from '../../diagnosis/call-set.ts';
import type {Difficulty} from '../../faults/difficulty.ts';
import {valueOf} from './plan-words.ts';

/** A usual class hour. */
export const usualCalls = 10;

/** The set that is being put together, and what can be done with it. */
export interface PlannedSet {
  readonly heading: string;
  readonly calls: readonly PlannedCall[];
  readonly levels: Readonly<Record<Difficulty, number>>;
  readonly canFill: boolean;
  readonly links?: readonly string[];
  readonly kept: readonly CallSet[];
  readonly said: string;
  readonly refusal: string;
  nameOf(call: PlannedCall): string;
  readonly on: {
    title(text: string): void;
    change(calls: readonly PlannedCall[]): void;
    fill(): void;
    links(): void;
    keep(): void;
    save(): void;
    copy(links: readonly string[]): void;
    open(set: CallSet): void;
    forget(set: CallSet): void;
    file(event: Event): void;
  };
}

/** The set, its buttons, its links, and the sets that are kept. */
export function planSet(set: PlannedSet) {
  const {heading, calls, canFill, links, said, refusal, nameOf, on} = set;
  const {easy, medium, hard} = set.levels;
  return html`
    <h2 id="set">The set</h2>
    <label for="title">Title</label>
    <input
      id="title"
      type="text"
      maxlength="80"
      placeholder="Week 3, safeties"
      .value=${heading}
      @input=${(event: Event) => on.title(valueOf(event))}
    />
    <p class="small quiet" role="status">
      ${calls.length}
      ${calls.length === 1 ? 'call' : 'calls'}${calls.length ? `: ${easy} easy, ${medium} medium, ${hard} hard` : ''}.
    </p>
    <ol class="set">
      ${repeat(
        calls,
        key,
        (call, i) =>
          html`<li>
            <span class="number">${i + 1}</span>
            <span><b>${nameOf(call)}</b><q class="small">${call.complaint}</q></span>
            <button
              class="plain"
              aria-label="Take out: ${nameOf(call)}"
              @click=${() => on.change(calls.filter((each) => each !== call))}
            >
              Take out
            </button>
          </li>`,
      )}
    </ol>
    <p class="row">
      <button
        class="button first"
        ?disabled=${calls.length >= usualCalls || !canFill}
        @click=${on.fill}
      >
        Fill up to ${usualCalls}
      </button>
      <button class="button" ?disabled=${!calls.length} @click=${on.links}>Make the links</button>
      <button class="button" ?disabled=${!calls.length} @click=${() => print()}>Print</button>
      <button class="button" ?disabled=${!calls.length} @click=${on.keep}>Keep</button>
      <button class="button" ?disabled=${!calls.length} @click=${on.save}>Save as a file</button>
    </p>
    <p class="small quiet">
      Filling up takes from the unit and the filters chosen under Faults, evenly by section.
    </p>
    <div role="status">
      ${said ? html`<p class="note good"><strong>Done.</strong>${said}</p>` : nothing}
      ${refusal ? html`<p class="note danger"><strong>Not done.</strong>${refusal}</p>` : nothing}
    </div>
    ${links ? linkList(links, on) : nothing} ${keptSets(set)}
  `;
}

function linkList(links: readonly string[], on: PlannedSet['on']) {
  return html`<section aria-labelledby="links">
    <h3 id="links">Links</h3>
    <p class="small quiet">
      One line a call. Whoever opens one gets the unit and the complaint; what is hidden cannot be
      read in it.
    </p>
    <textarea
      readonly
      rows="6"
      aria-labelledby="links"
      .value=${links.join('\n')}
      @focus=${(event: Event) => (event.target as HTMLTextAreaElement).select()}
    ></textarea>
    <p class="row"><button class="button" @click=${() => on.copy(links)}>Copy all</button></p>
  </section>`;
}

function keptSets({kept, on}: PlannedSet) {
  return html`<section aria-labelledby="kept">
    <h3 id="kept">Kept on this device</h3>
    ${
      kept.length
        ? html`<ul class="kept">
            ${kept.map(
              (set) =>
                html`<li>
                  <span>${set.title || 'Without a title'}, ${set.calls.length} calls</span>
                  <button class="plain" @click=${() => on.open(set)}>
                    Open<span class="sr-only">: ${set.title}</span>
                  </button>
                  <button class="plain" @click=${() => on.forget(set)}>
                    Delete<span class="sr-only">: ${set.title}</span>
                  </button>
                </li>`,
            )}
          </ul>`
        : html`<p class="small quiet">
            None. A set that is kept tells its faults to whoever opens this page on this device.
          </p>`
    }
    <input class="file" type="file" id="file" accept=".json,application/json" @change=${on.file} />
    <label class="button" for="file">Open a set from a file…</label>
  </section>`;
}
