import {LitElement, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {classMap} from 'lit/directives/class-map.js';
import {controlStyles} from './controls.styles.ts';
import {pickListStyles} from './pick-list.styles.ts';
import {matchingOptions, type PickOption} from './pick-option.ts';

/**
 * A list that is searched by typing: the way to any terminal, wire or part without a pointer.
 *
 * @event {{id: string}} picked - A person picked an option.
 */
@customElement('rb-pick-list')
export class PickList extends LitElement {
  static override styles = [controlStyles, pickListStyles];
  static override shadowRootOptions = {...LitElement.shadowRootOptions, delegatesFocus: true};

  @property() label = '';
  @property() placeholder = '';
  @property({attribute: false}) options: readonly PickOption[] = [];
  /** Id that stands chosen; shown in the field until something is typed. */
  @property() value = '';
  /** Empty the field after each pick, for picking one after the other. */
  @property({type: Boolean}) clears = false;

  @state() private open = false;
  @state() private typed: string | undefined;
  @state() private active = 0;
  @query('input') private input!: HTMLInputElement;

  protected override updated(changed: PropertyValues): void {
    if (changed.has('active' as never) || changed.has('open' as never)) {
      this.renderRoot.querySelector('.option.active')?.scrollIntoView({block: 'nearest'});
    }
  }

  /** Empty the field and show the whole list again. */
  clear(): void {
    this.typed = undefined;
    this.active = 0;
    this.open = false;
  }

  override render() {
    // a closed list of some hundred terminals would be drawn anew at every reading
    const shown = this.open ? this.shown : [];
    return html`
      <label class="label" for="field">${this.label}</label>
      <input
        id="field"
        class="field"
        role="combobox"
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-autocomplete="list"
        aria-expanded=${this.open ? 'true' : 'false'}
        aria-controls="list"
        aria-activedescendant=${this.open && shown[this.active] ? `o${this.active}` : nothing}
        placeholder=${this.placeholder}
        .value=${this.typed ?? this.value}
        @input=${this.onInput}
        @keydown=${this.onKeydown}
        @click=${() => (this.open = true)}
        @blur=${this.onBlur}
      />
      <div id="list" class="list" role="listbox" aria-label=${this.label} ?hidden=${!this.open}>
        ${shown.map((option, at) => this.option(option, at))}
        ${this.open && shown.length === 0 ? html`<div class="none" role="option" aria-disabled="true" aria-selected="false">Nothing here is called that.</div>` : nothing}
      </div>
    `;
  }

  private option(option: PickOption, at: number) {
    return html`<div
      id="o${at}"
      class=${classMap({option: true, active: at === this.active})}
      role="option"
      data-id=${option.id}
      aria-selected=${option.id === this.value ? 'true' : 'false'}
      aria-disabled=${option.barred ? 'true' : 'false'}
      @pointerdown=${(event: Event) => event.preventDefault()}
      @click=${() => this.pick(option)}
    >
      <span class="id">${option.id}</span>
      <span class="text">${option.text}${option.barred ? ` (${option.barred})` : ''}</span>
    </div>`;
  }

  private get shown(): readonly PickOption[] {
    return matchingOptions(this.options, this.typed ?? '');
  }

  private onInput(): void {
    this.typed = this.input.value;
    this.active = 0;
    this.open = true;
  }

  private onKeydown(event: KeyboardEvent): void {
    const shown = this.shown;
    const last = shown.length - 1;
    const moves: Record<string, number> = {
      ArrowDown: Math.min(last, this.active + 1),
      ArrowUp: Math.max(0, this.active - 1),
      PageDown: Math.min(last, this.active + 7),
      PageUp: Math.max(0, this.active - 7),
    };
    const move = moves[event.key];
    if (move !== undefined) {
      event.preventDefault();
      if (this.open) this.active = Math.max(0, move);
      this.open = true;
    } else if (event.key === 'Enter' && this.open) {
      event.preventDefault();
      event.stopPropagation();
      const option = shown[this.active];
      // a key held down picks once
      if (option && !event.repeat) this.pick(option);
    } else if (event.key === 'Escape' && (this.open || this.typed !== undefined)) {
      event.preventDefault();
      event.stopPropagation();
      this.clear();
    }
  }

  private onBlur(): void {
    this.open = false;
    this.typed = undefined;
  }

  private pick(option: PickOption): void {
    if (option.barred) return;
    this.value = this.clears ? '' : option.id;
    this.input.value = this.value;
    this.clear();
    this.dispatchEvent(
      new CustomEvent('picked', {detail: {id: option.id}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-pick-list': PickList;
  }
}
