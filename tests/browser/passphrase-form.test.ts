import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/class/passphrase-form.element.ts';
import type {PassphraseForm} from '../../src/pages/class/passphrase-form.element.ts';
import {inside, textOf, until} from './desk-in-page.ts';

const realFetch = window.fetch;
afterEach(() => {
  window.fetch = realFetch;
});

/** A server that answers with this, and what it was sent. */
function server(status: number, answer: unknown): unknown[] {
  const sent: unknown[] = [];
  window.fetch = async (path, request) => {
    if (String(path).endsWith('passphrase')) sent.push(JSON.parse(String(request?.body)));
    return new Response(JSON.stringify(answer), {status});
  };
  return sent;
}

async function filled(): Promise<PassphraseForm> {
  const form = await fixture<PassphraseForm>(html`<rb-passphrase-form></rb-passphrase-form>`);
  inside<HTMLDetailsElement>(form, 'details').open = true;
  inside<HTMLInputElement>(form, '#current').value = 'lamp relay ladder seven';
  inside<HTMLInputElement>(form, '#fresh').value = 'heron pliers gravel nine';
  await expect(form).to.be.accessible();
  inside<HTMLButtonElement>(form, 'button').click();
  return form;
}

describe('<rb-passphrase-form>', () => {
  it('sends the old one and the new one, and says that other devices are signed out', async () => {
    const sent = server(200, {});
    const form = await filled();
    await until(() => textOf(form).includes('Changed.'));
    expect(sent).to.deep.equal([
      {current: 'lamp relay ladder seven', passphrase: 'heron pliers gravel nine'},
    ]);
    expect(inside<HTMLInputElement>(form, '#fresh').value).to.equal('');
  });

  it('says why it was not changed', async () => {
    server(403, {error: 'The passphrase until now is another one.'});
    const form = await filled();
    await until(() => textOf(form).includes('another one'));
  });
});
