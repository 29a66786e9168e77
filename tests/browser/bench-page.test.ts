import {expect, fixture, html} from '@open-wc/testing';
import type {Action} from '../../src/bench/actions.ts';
import type {BenchLink} from '../../src/pages/bench/bench-link.ts';
import '../../src/pages/bench/bench-page.element.ts';
import type {BenchPage} from '../../src/pages/bench/bench-page.element.ts';
import {readingEntry, viewOf} from './bench-fixtures.ts';
import {deskInPage, inside, until} from './desk-in-page.ts';

/** A bench that answers an action when it is let. */
function slowLink(): {link: BenchLink; done: Action[]; answer(): void} {
  const done: Action[] = [];
  let answer = (): void => undefined;
  const link: BenchLink = {
    open: async () => viewOf(),
    act: (action) => {
      done.push(action);
      return new Promise((resolve) => {
        answer = () => resolve({view: viewOf({log: done.map((_, at) => readingEntry(at))})});
      });
    },
    catalogue: async () => [],
    debrief: () => Promise.reject(new Error('not named')),
    close: () => undefined,
  };
  return {link, done, answer: () => answer()};
}

describe('<rb-bench-page>', () => {
  it('takes one reading where Read is pressed again before the bench has answered', async () => {
    const {store} = deskInPage();
    const {id} = await store.begin({
      unit: 'practice-panel',
      unitTitle: 'Practice panel',
      complaint: 'It does not start.',
      sealed: 'sealed',
      seed: 1,
      purpose: 'call',
    });
    const {link, done, answer} = slowLink();
    const page = await fixture<BenchPage>(
      html`<rb-bench-page
        .attemptId=${id}
        .makeLink=${() => link}
        .openStore=${async () => store}
      ></rb-bench-page>`,
    );
    const desk = await until(() => page.shadowRoot!.querySelector('rb-bench-desk'));
    const ask = (): boolean =>
      desk.dispatchEvent(
        new CustomEvent('action-asked', {
          detail: {action: {do: 'read', red: 'S1.1', black: 'S1.2'}},
        }),
      );
    ask();
    ask();
    await until(() => done.length > 0);
    answer();
    await until(() => desk.view?.log.length === 1);
    // the reading that was asked for meanwhile is not waiting behind it
    expect((await store.get(id))!.actions).to.have.length(1);
    ask();
    await until(() => done.length === 2);
    answer();
    await until(() => desk.view?.log.length === 2);
    expect(inside(page, 'rb-call-banner').shadowRoot!.textContent!.trim()).to.equal('');
  });
});
