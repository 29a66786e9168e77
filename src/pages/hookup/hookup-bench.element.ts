import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Action} from '../../bench/actions.ts';
import {Bench} from '../../bench/bench.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import '../../bench/cautions.element.ts';
import type {RefusedAction} from '../../bench/refused-action.ts';
import type {Unit} from '../../content/unit.ts';
import {operateWaiting} from '../../hookup/operate-waiting.ts';
import '../bench/bench-desk.element.ts';
import type {BenchSettings} from '../bench/remembered.ts';

/**
 * The bench on wires that a student has made, with the breaker open to begin with. Nothing is hidden in it, so it runs
 * in the page itself.
 *
 * @event {{dead: boolean}} circuit-read - A reading was taken; `dead` while no breaker has been closed yet.
 * @event power-on - A breaker was closed.
 */
@customElement('rb-hookup-bench')
export class HookupBench extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    rb-bench-desk {
      display: block;
      block-size: min(46rem, 84vh);
      margin-block-start: var(--space-3);
      border: 1px solid var(--rule-strong);
    }
    @media (max-width: 900px) {
      rb-bench-desk {
        block-size: 56rem;
      }
    }
  `;

  @property({attribute: false}) unit?: Unit;

  @state() private view?: BenchView;
  @state() private refusal?: RefusedAction;
  @state() private settings: BenchSettings = {muted: true, shortcuts: false, view: 'ladder'};

  private bench?: Bench;
  private madeFor?: Unit;
  private hasPower = false;

  protected override willUpdate(): void {
    if (!this.unit || this.madeFor === this.unit) return;
    this.madeFor = this.unit;
    this.hasPower = false;
    this.bench = new Bench({
      unit: this.unit,
      faults: [],
      complaint: 'A board that was just wired.',
      seed: 0,
      operate: operateWaiting,
    });
    this.view = this.bench.view();
  }

  override render() {
    if (!this.view || !this.unit) return nothing;
    return html`<rb-cautions .cautions=${this.view.cautions}></rb-cautions>
      <rb-bench-desk
        .unit=${this.unit}
        layoutProblem="The board above is the connection drawing of your wires."
        .view=${this.view}
        .refusal=${this.refusal}
        .settings=${this.settings}
        @action-asked=${(event: CustomEvent<{action: Action}>) => this.act(event.detail.action)}
        @settings-changed=${(event: CustomEvent<{settings: BenchSettings}>) =>
          (this.settings = event.detail.settings)}
      ></rb-bench-desk>`;
  }

  private act(action: Action): void {
    if (!this.bench) return;
    const result = this.bench.act(action);
    this.refusal = 'refused' in result ? {action, sentence: result.refused} : undefined;
    if ('refused' in result) return;
    this.view = this.bench.view();
    if (action.do === 'read') this.emit('circuit-read', {dead: !this.hasPower});
    if (action.do === 'set' && action.value === 'on' && this.isolates(action.target)) {
      this.hasPower = true;
      this.emit('power-on');
    }
  }

  private isolates(target: string): boolean {
    const [part, control] = target.split('.');
    return (
      this.unit?.parts
        .find(({id}) => id === part)
        ?.controls.some(({id, isolates}) => id === control && isolates === true) ?? false
    );
  }

  private emit(name: string, detail: object = {}): void {
    this.dispatchEvent(new CustomEvent(name, {detail}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-bench': HookupBench;
  }
}
