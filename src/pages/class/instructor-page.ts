import {LitElement, html, type TemplateResult} from 'lit';
import {state} from 'lit/decorators.js';
import type {SignedIn} from '../../classroom/protocol/rest.ts';
import {ApiError, sentenceOf, signedIn} from './class-api.ts';
import {classHref} from './class-place.ts';
import {focusSoon} from './focus-soon.ts';
import './sign-in-form.element.ts';

/**
 * A page that only an instructor sees: asks who is signed in, shows the sign-in form where nobody is, then loads.
 * A sign-in that ran out while the page was open leads back to the form, and from there to the same page.
 */
export abstract class InstructorPage extends LitElement {
  @state() protected who: SignedIn | undefined;
  @state() private stands: 'asking' | 'signed-out' | 'in' | 'failed' = 'asking';
  @state() private failure = '';

  /** Fetches what the page shows. */
  protected abstract load(): Promise<void>;
  protected abstract renderPage(): TemplateResult;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.enter();
  }

  override render(): TemplateResult {
    switch (this.stands) {
      case 'asking':
        return html`<h1 tabindex="-1" class="sr-only">Class</h1>
          <p class="quiet standing" role="status">Asking the class server…</p>`;
      case 'signed-out':
        return html`<rb-sign-in-form
          class="standing"
          @signed-in=${this.signedIn}
        ></rb-sign-in-form>`;
      case 'failed':
        return html`<div class="stack standing">
          <h1 tabindex="-1">This page of the class cannot be shown</h1>
          <p class="lead" role="alert">${this.failure}</p>
          <p class="row">
            <button class="button first" @click=${this.enter}>Try again</button>
            <a class="button" href=${classHref({at: 'desk'})}>Your classes</a>
          </p>
        </div>`;
      case 'in':
        return this.renderPage();
    }
  }

  /** Runs something that asks the server; gives the sentence to show where it said no, empty where it went well. */
  protected async attempt(work: () => Promise<unknown>): Promise<string> {
    try {
      await work();
      return '';
    } catch (error) {
      if (error instanceof ApiError && error.status === 401) this.stands = 'signed-out';
      return sentenceOf(error);
    }
  }

  protected retitle(title: string): void {
    this.dispatchEvent(
      new CustomEvent('page-title', {detail: {title}, bubbles: true, composed: true}),
    );
  }

  private readonly signedIn = async (): Promise<void> => {
    await this.enter();
    await focusSoon(this, 'h1');
  };

  private readonly enter = async (): Promise<void> => {
    try {
      this.who = await signedIn();
      if (!this.who) {
        this.stands = 'signed-out';
        return;
      }
      await this.load();
      // the heading that the keyboard stood at goes with what was shown while the server was asked
      const held = this.renderRoot.querySelector(':focus');
      this.stands = 'in';
      if (held) void focusSoon(this, 'h1');
    } catch (error) {
      if (error instanceof ApiError && error.status === 401) this.stands = 'signed-out';
      else {
        this.failure = sentenceOf(error);
        this.stands = 'failed';
      }
    }
  };
}
