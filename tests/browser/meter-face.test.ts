import {expect, fixture, html} from '@open-wc/testing';
import {sendKeys} from '@web/test-runner-commands';
import '../../src/meter/meter-face.element.ts';
import type {MeterFace} from '../../src/meter/meter-face.element.ts';
import {eventFrom, volts} from './bench-fixtures.ts';

const inside = (face: MeterFace, selector: string): HTMLElement => {
  const found = face.renderRoot.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`The meter shows no ${selector}.`);
  return found;
};

describe('<rb-meter-face>', () => {
  it('is accessible with a reading, a hazard and a tone on its glass', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face
        .function=${'continuity'}
        .display=${{text: '0.1', unit: 'Ω', value: 0.1, overload: false, tone: true, hazard: true}}
        red="K1.1"
        black="K1.3"
      ></rb-meter-face>`,
    );
    await expect(face).to.be.accessible();
  });

  it('shows digits and unit, and says them with where the leads are', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face .display=${volts('24.31')} red="TB1.R" black="TB1.C"></rb-meter-face>`,
    );
    expect(inside(face, '.digits').textContent?.trim()).to.equal('24.31');
    expect(inside(face, '.unit').textContent).to.equal('V AC');
    expect(inside(face, '[role=status]').textContent).to.equal(
      '24.31 V AC. red on TB1.R, black on TB1.C',
    );
  });

  it('shows no digits before anything is read', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face></rb-meter-face>`);
    expect(inside(face, '.digits').textContent).to.not.match(/\d/);
    expect(inside(face, '[role=status]').textContent).to.equal('');
  });

  it('asks for a function when a key is pressed, and only then', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face></rb-meter-face>`);
    let chosen = 0;
    face.addEventListener('function-chosen', () => chosen++);
    face.function = 'ohms';
    await face.updateComplete;
    expect(chosen).to.equal(0);
    const asked = eventFrom<{function: string}>(face, 'function-chosen');
    inside(face, '[data-function=dc-volts]').click();
    expect(await asked).to.deep.equal({function: 'dc-volts'});
  });

  it('moves the selector with the arrow keys, one stop in the tab order', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face></rb-meter-face>`);
    inside(face, '[data-function=ac-volts]').focus();
    const asked = eventFrom<{function: string}>(face, 'function-chosen');
    await sendKeys({press: 'ArrowRight'});
    expect(await asked).to.deep.equal({function: 'dc-volts'});
    expect(face.renderRoot.querySelectorAll('.key[tabindex="0"]')).to.have.length(1);
  });

  it('tells which lead is in hand by word, not by colour alone', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face next="black"></rb-meter-face>`);
    expect(inside(face, '[data-lead=black]').textContent).to.contain('in hand');
    expect(inside(face, '[data-lead=red]').textContent).to.not.contain('in hand');
  });

  it('shows the clamp instead of leads on clamp amps', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face .function=${'clamp-amps'} clamp="W12"></rb-meter-face>`,
    );
    expect(face.renderRoot.querySelector('[data-lead]')).to.equal(null);
    expect(face.renderRoot.textContent).to.contain('W12');
  });
});
