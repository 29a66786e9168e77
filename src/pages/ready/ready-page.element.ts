import {LitElement, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {mastered, masteryOf, type Mastery} from '../../diagnosis/mastery.ts';
import {labReadiness, neededForTheLab, reviewNext, type Review} from '../../diagnosis/review.ts';
import {skills, type SkillId} from '../../diagnosis/skills.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {judgeCall} from './judge-call.ts';
import {readyPageStyles} from './ready-page.styles.ts';
import {dayOf, isFinished, shownOccasions} from './shown-occasions.ts';

/** Skills that a call shows by how it is worked, whatever is wrong in the unit. */
const byConduct: ReadonlySet<SkillId> = new Set(['meter-safety', 'lock-out', 'reading-a-ladder']);

const nameSetting = 'name on prints';

/** What a student has shown skill by skill, what is missing for the live laboratory, and which call to take next. */
@customElement('rb-ready-page')
export class RbReadyPage extends LitElement {
  static override styles = [sheetStyles, readyPageStyles];

  @state() private mastery: readonly Mastery[] | undefined;
  /** Finished calls that have not been judged yet. */
  @state() private unjudged = 0;
  @state() private calls = 0;
  @state() private name = '';
  @state() private choosing: SkillId | undefined;
  @state() private refusal = '';

  private stopListening: () => void = () => undefined;
  /** Calls that could not be judged: their unit is gone, or has changed since. */
  private readonly given = new Set<string>();

  override connectedCallback(): void {
    super.connectedCallback();
    void this.begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopListening();
  }

  override render() {
    const {mastery} = this;
    if (!mastery) {
      return html`<h1 tabindex="-1">Ready for the lab?</h1>
        <p class="quiet" role="status">Looking through the records…</p>`;
    }
    const {ready, missing} = labReadiness(mastery);
    const needed = neededForTheLab.length;
    return html`
      <h1 tabindex="-1">Ready for the lab?</h1>
      <p class="lead">
        ${
          ready
            ? html`<b>Ready.</b> All ${needed} skills that the live laboratory asks for are shown.`
            : html`<b>Not yet.</b> ${needed - missing.length} of the ${needed} skills that the live
                laboratory asks for are shown.`
        }
        The instructor decides.
      </p>
      <div class="signed">
        <label for="name">Name on the print</label>
        <input id="name" type="text" maxlength="80" .value=${this.name} @change=${this.rename} />
        <button class="button no-print" @click=${() => print()}>Print for the instructor</button>
      </div>
      <div role="status">
        ${
          this.unjudged
            ? html`<p class="note">
                <strong>Still counting.</strong
                >${this.unjudged === 1 ? 'One finished call is' : `${this.unjudged} finished calls are`}
                being gone through; what they show comes in by itself.
              </p>`
            : nothing
        }
        ${this.refusal ? html`<p class="note danger"><strong>No call.</strong>${this.refusal}</p>` : nothing}
      </div>
      ${this.renderNext(mastery)}
      <section aria-labelledby="skills">
        <h2 id="skills">Skill by skill</h2>
        <div class="scroll" tabindex="0" role="group" aria-label="Table, scrolls sideways">
          ${this.renderTable(mastery, missing)}
        </div>
        <p class="small quiet">
          From ${this.calls} finished ${this.calls === 1 ? 'call' : 'calls'} and the wiring tasks on
          this device. A skill counts as shown when it is known with ${Math.round(mastered * 100)} %
          by Bayesian knowledge tracing (Corbett and Anderson, 1995). A call that was found without
          proof, or on which the coach told the reading, speaks against the skills it asked for.
        </p>
      </section>
      <dl class="sign" aria-label="For the instructor to fill in">
        <div>
          <dt>Seen by the instructor</dt>
          <dd></dd>
        </div>
        <div>
          <dt>Date</dt>
          <dd></dd>
        </div>
        <div>
          <dt>Admitted to live work under supervision</dt>
          <dd></dd>
        </div>
      </dl>
    `;
  }

  private renderTable(mastery: readonly Mastery[], missing: readonly SkillId[]) {
    return html`<table>
      <thead>
        <tr>
          <th scope="col">Skill</th>
          <th scope="col">Shown</th>
          <th scope="col">Known</th>
          <th scope="col" class="counts">Right</th>
          <th scope="col">For the lab</th>
        </tr>
      </thead>
      <tbody>
        ${skills.map(({id, title}) => {
          const found = mastery.find(({skill}) => skill === id);
          const shown = found !== undefined && found.known >= mastered;
          const is = shown ? 'Shown' : found ? 'Begun' : 'Not tried';
          return html`<tr class=${shown ? 'shown' : ''}>
            <th scope="row">${title}</th>
            <td>
              <span class="state ${shown ? 'shown' : found ? 'begun' : 'fresh'}">${is}</span>
            </td>
            <td>${found ? this.renderBar(found.known) : ''}</td>
            <td class="number counts">${found ? `${found.right} of ${found.occasions}` : ''}</td>
            <td>
              ${neededForTheLab.includes(id) ? (missing.includes(id) ? html`<b>Missing</b>` : 'Met') : html`<span class="quiet">Not asked</span>`}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  private renderBar(known: number) {
    const percent = Math.round(100 * known);
    return html`<span class="known"
      ><svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect class="whole" width="100" height="8" />
        <rect class="part" width=${percent} height="8" />
        <path d="M${100 * mastered} 0v8" /></svg
      ><span class="number">${percent} %</span></span
    >`;
  }

  private renderNext(mastery: readonly Mastery[]) {
    const [first, ...later] = reviewNext(mastery, dayOf(new Date().toISOString()));
    if (!first)
      return html`<section class="next" aria-labelledby="next">
        <h2 id="next">Nothing is due today</h2>
        <p>Every skill is shown and none is due for review. Take any call to stay in practice.</p>
      </section>`;
    return html`<section class="next no-print" aria-labelledby="next">
      <h2 id="next">Next: ${titleOf(first.skill)}</h2>
      <p>${this.why(first)}</p>
      <p class="row">
        <button
          class="button first"
          ?disabled=${this.choosing !== undefined}
          @click=${() => this.take(first.skill)}
        >
          ${this.choosing === first.skill ? 'Hiding a fault…' : 'Take this call'}
        </button>
        ${later
          .slice(0, 2)
          .map(
            ({skill}) =>
              html`<button
                class="button"
                ?disabled=${this.choosing !== undefined}
                @click=${() => this.take(skill)}
              >
                ${titleOf(skill)}
              </button>`,
          )}
        <a class="button" href="#/hookup">A wiring task</a>
      </p>
    </section>`;
  }

  private why({skill, reason, known}: Review): string {
    const how = byConduct.has(skill)
      ? 'Every call shows it by the way it is worked.'
      : 'The call will ask for it; what is wrong is not told.';
    switch (reason) {
      case 'never tried':
        return `Not tried yet. ${how}`;
      case 'not yet mastered':
        return `Begun, known with ${Math.round(100 * known)} %: the weakest of what you have begun. ${how}`;
      case 'due for review':
        return `Shown some time ago and due for review. ${how}`;
    }
  }

  /** The smallest unit that has a fault for the skill: what is learnt there is the same. */
  private async take(skill: SkillId): Promise<void> {
    this.choosing = skill;
    this.refusal = '';
    try {
      const store = await openAttempts();
      const units = (await desk().units(store)).flatMap(({unit, shipped}) =>
        unit && shipped ? [unit] : [],
      );
      units.sort((a, b) => a.wires.length - b.wires.length);
      const wanted = byConduct.has(skill) ? {difficulty: 'medium' as const} : {skill};
      let reason = '';
      for (const unit of units) {
        try {
          const {id} = await desk().beginCall(store, unit, wanted);
          goTo({page: 'call', attempt: id});
          return;
        } catch (error) {
          reason = messageOf(error);
        }
      }
      this.refusal = reason;
    } catch (error) {
      this.refusal = messageOf(error);
    } finally {
      this.choosing = undefined;
    }
  }

  private readonly rename = async (event: Event): Promise<void> => {
    this.name = (event.target as HTMLInputElement).value.trim();
    await (await openAttempts()).putSetting(nameSetting, this.name).catch(() => undefined);
  };

  private async begin(): Promise<void> {
    const store = await openAttempts();
    this.name = (await store.setting(nameSetting).catch(() => undefined)) ?? '';
    if (this.isConnected)
      this.stopListening = store.onChange(
        ({what}) => void (what !== 'setting' && what !== 'unit' && this.count(store)),
      );
    await this.count(store);
    await this.judge(store);
  }

  private async count(store: AttemptStore): Promise<void> {
    const [heads, hookups] = await Promise.all([store.list(), store.hookups()]).catch(
      () => [[], []] as const,
    );
    this.mastery = masteryOf(shownOccasions(heads, hookups));
    const finished = heads.filter(isFinished);
    this.calls = finished.length;
    this.unjudged = finished.filter(({id, judged}) => !judged && !this.given.has(id)).length;
  }

  /** Calls whose debrief was never read through, or that were imported, are judged now, one after the other. */
  private async judge(store: AttemptStore): Promise<void> {
    const heads = await store.list().catch(() => []);
    for (const head of heads.filter((each) => isFinished(each) && !each.judged)) {
      if (!this.isConnected) return;
      await judgeCall(store, head).catch(() => this.given.add(head.id));
      await this.count(store);
    }
  }
}

const titleOf = (skill: SkillId): string => skills.find(({id}) => id === skill)!.title;

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-ready-page': RbReadyPage;
  }
}
