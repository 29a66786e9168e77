import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/bench/help-dialog.element.ts';
import type {HelpDialog} from '../../src/pages/bench/help-dialog.element.ts';

describe('<rb-help-dialog>', () => {
  const opened = async (): Promise<HelpDialog> => {
    const element = await fixture<HelpDialog>(html`<rb-help-dialog></rb-help-dialog>`);
    element.show();
    return element;
  };

  it('teaches the voltage-drop test: the load running, one lead on each side of what is closed', async () => {
    const element = await opened();
    const method = [...element.shadowRoot!.querySelectorAll('dt')].find(
      ({textContent}) => textContent === 'Voltage drop',
    );
    const says = method!.nextElementSibling!.textContent!.replace(/\s+/g, ' ');
    expect(says).to.match(/Let the load run/);
    expect(says).to.match(/one lead on each side/);
    expect(says).to.match(/With the load off there is no drop/);
  });

  it('begins at its top on a small screen, whatever comes first to be pressed', async () => {
    const element = await opened();
    const dialog = element.shadowRoot!.querySelector('dialog')!;
    dialog.style.maxHeight = '200px';
    dialog.close();
    element.show();
    expect(dialog.scrollHeight).to.be.greaterThan(dialog.clientHeight);
    expect(dialog.scrollTop).to.equal(0);
  });

  it('says with the ways to read that two of them are live work, and who comes first', async () => {
    const element = await opened();
    const care = element.shadowRoot!.querySelector('.care')!.textContent!;
    expect(care).to.match(/live work/);
    expect(care).to.match(/licensed person/);
    await expect(element).to.be.accessible();
  });
});
