import {LitElement, html, nothing} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {Poll} from '../../classroom/protocol/poll.ts';
import type {
  HeatMap,
  Wall,
  WallAnswer,
  WallProgress,
  WallRequest,
} from '../../classroom/protocol/wall-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {ClassSocket} from './class-socket.ts';
import {displayText} from './display-text.ts';
import './heat-map.element.ts';
import {heatText} from './heat-marks.ts';
import './qr-code.element.ts';
import {wallPageStyles} from './wall-page.styles.ts';

const stageWord: Readonly<Record<WallProgress['stage'], string>> = {
  away: 'not here',
  waiting: 'waiting',
  working: 'at work',
  finished: 'finished',
};
const stages = ['working', 'finished', 'waiting', 'away'] as const;

/** How large the text of a poll is tried, 1 being what is read from the back of the room. */
const fits = [1.4, 1.25, 1.1, 1, 0.9, 0.8, 0.7];

/** The places that the class has read most, in letters that are read from the back of the room. */
const busiest = (heat: HeatMap) => {
  const places = heatText(heat, 4).split(', ').filter(Boolean);
  return places.map((each) => {
    const [place, count] = each.split(' ');
    return html`<span class="place">${place} <b>${count}×</b></span> `;
  });
};

/** The class on the wall: the code to join by, how far it is, where it has probed, the question put to all. */
@customElement('rb-class-wall-page')
export class WallPage extends LitElement {
  static override styles = [sheetStyles, wallPageStyles];

  @property() token = '';

  @state() private wall: Wall | undefined;
  @state() private lost = '';
  @state() private ended = '';
  @state() private chosenUnit = '';

  @query('.poll') private poll!: HTMLElement | null;

  private readonly refit = (): void => this.requestUpdate();
  private socket: ClassSocket<WallRequest, WallAnswer> | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('resize', this.refit);
    // letters of another width come when the font does
    document.fonts.addEventListener('loadingdone', this.refit);
    this.socket = new ClassSocket<WallRequest, WallAnswer>('api/socket/wall', {
      opened: () => this.socket?.send({is: 'join', token: this.token}),
      heard: (answer) => {
        this.lost = '';
        if (answer.is === 'wall') this.wall = answer.wall;
      },
      lost: ({sentence, final}) => {
        this.lost = sentence || 'No connection to the class. Trying again by itself.';
        if (final) this.ended = sentence || 'This wall is no longer the one of the class.';
      },
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('resize', this.refit);
    document.fonts.removeEventListener('loadingdone', this.refit);
    this.socket?.close();
  }

  override render() {
    const {wall} = this;
    if (this.ended) {
      return html`<div class="alone">
        <h1 tabindex="-1">The wall has stopped</h1>
        <p role="alert">${this.ended} Open it again from the class’s page.</p>
      </div>`;
    }
    if (!wall) {
      return html`<div class="alone">
        <h1 tabindex="-1">Wall view</h1>
        <p role="status">${this.lost || 'One moment.'}</p>
      </div>`;
    }
    const poll = wall.poll && wall.poll.state !== 'over' ? wall.poll : undefined;
    return html`
      <header>
        <h1 tabindex="-1">${wall.className}</h1>
        <p class="join">
          <span>${wall.joinUrl.replace(/^https?:\/\//, '').replace(/\/?#.*$/, '')}</span>
          <b class="code"><span class="sr-only">Code </span>${wall.code}</b>
        </p>
        <rb-qr-code .text=${wall.joinUrl} label="QR code to join"></rb-qr-code>
      </header>
      <div role="status" class="lost">${this.lost}</div>
      <div class="body ${poll || !wall.progress.length ? 'whole' : ''}">
        ${
          poll || !wall.progress.length
            ? nothing
            : html`<section class="progress" tabindex="0" aria-label="How far the class is">
                ${this.renderProgress(wall)}
              </section>`
        }
        <section class="main">${poll ? this.renderPoll(poll) : this.renderHeat(wall)}</section>
      </div>
    `;
  }

  private renderProgress({progress, names}: Wall) {
    const counts = stages
      .map((stage) => ({stage, count: progress.filter((each) => each.stage === stage).length}))
      .filter(({count}) => count > 0);
    return html`
      <ul class="counts ${names ? 'short' : ''}">
        ${counts.map(({stage, count}) => html`<li><b>${count}</b> ${stageWord[stage]}</li>`)}
      </ul>
      ${
        names
          ? html`<ul class="names">
              ${progress.map(
                ({name, stage, readings}) =>
                  html`<li class=${stage}>
                    <span class="mark" aria-hidden="true"></span>
                    <span class="name">${name}</span>
                    <span class="how"
                      >${stage === 'working' || stage === 'finished' ? html`${readings}<span class="sr-only"> readings, ${stageWord[stage]}</span>` : stageWord[stage]}</span
                    >
                  </li>`,
              )}
            </ul>`
          : html`<div class="marks" aria-hidden="true">
              ${[...progress]
                .sort((a, b) => stages.indexOf(b.stage) - stages.indexOf(a.stage))
                .reverse()
                .map(({stage}) => html`<span class="mark ${stage}"></span>`)}
            </div>`
      }
    `;
  }

  private renderHeat({heat}: Wall) {
    const shown = heat.find(({unit}) => unit === this.chosenUnit) ?? heat[0];
    if (!shown) {
      return html`<p class="empty">
        Open the address above, or scan the code. Where the class puts its leads appears here.
      </p>`;
    }
    return html`
      <div class="title">
        <h2>Where you have measured</h2>
        ${
          heat.length > 1
            ? html`<select
                aria-label="Unit"
                @change=${(event: Event) => (this.chosenUnit = (event.target as HTMLSelectElement).value)}
              >
                ${heat.map(({unit, title}) => html`<option value=${unit} ?selected=${unit === shown.unit}>${title}</option>`)}
              </select>`
            : html`<p>${shown.title}</p>`
        }
      </div>
      <p class="most">${busiest(shown)}</p>
      <rb-heat-map .heat=${shown}></rb-heat-map>
    `;
  }

  /** Few names are set larger than many; so is a short question, and a long one as large as it fits. */
  protected override updated(): void {
    this.style.setProperty('--count', String(this.wall?.progress.length ?? 1));
    const {poll} = this;
    for (const fit of poll ? fits : []) {
      poll?.style.setProperty('--fit', String(fit));
      if (poll && poll.scrollHeight <= poll.clientHeight) break;
    }
  }

  private renderPoll(poll: Poll) {
    const shown = poll.state === 'shown';
    const most = Math.max(1, ...(poll.counts ?? []));
    return html`<div class="poll">
      <p class="asks">What will happen if…</p>
      <h2>${poll.question}</h2>
      <ul class="readings">
        ${poll.readings.map(
          ({text, before, after}) =>
            html`<li>
              <span>${text}</span>
              <span class="glass">
                <span class=${after ? 'was' : ''}>${displayText(before)}</span
                >${after ? html`<b class="is"><span class="sr-only">then </span>${displayText(after)}</b>` : nothing}
              </span>
            </li>`,
        )}
      </ul>
      <ol class="answers">
        ${poll.answers.map((answer, index) => {
          const count = poll.counts?.[index];
          return html`<li class=${shown && poll.right === index ? 'right' : ''}>
            <span class="letter">${String.fromCharCode(65 + index)}</span>
            <span class="text"
              >${answer}${shown && poll.right === index ? html`<b class="tick"> Right</b>` : nothing}</span
            >
            ${count === undefined ? nothing : html`<progress aria-hidden="true" max=${most} value=${count}></progress><b class="count">${count}</b>`}
          </li>`;
        })}
      </ol>
      <p class="foot" role="status">
        ${shown ? html`<b>What was done:</b> ${poll.changed}` : html`<b>${poll.committed}</b> answered. Choose on your device.`}
      </p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-wall-page': WallPage;
  }
}
