import {expect, fixture, html} from '@open-wc/testing';
import {LitElement} from 'lit';
import {customElement, property} from 'lit/decorators.js';

@customElement('probe-tip')
class ProbeTip extends LitElement {
  @property({type: Number}) volts = 0;

  override render() {
    return html`<output>${this.volts} V</output>`;
  }
}

describe('the browser that runs the element tests', () => {
  it('renders again when a decorated property changes', async () => {
    const tip = await fixture<ProbeTip>(html`<probe-tip .volts=${24}></probe-tip>`);
    expect(tip.shadowRoot?.textContent).to.equal('24 V');
    tip.volts = 27;
    await tip.updateComplete;
    expect(tip.shadowRoot?.textContent).to.equal('27 V');
  });
});
