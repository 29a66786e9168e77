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

  it('has a key for each of ten functions, and goes from row to row by arrow down', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face></rb-meter-face>`);
    expect(face.renderRoot.querySelectorAll('[role=radio]')).to.have.length(10);
    inside(face, '[data-function=dc-volts]').click();
    await face.updateComplete;
    inside(face, '[data-function=dc-volts]').focus();
    const asked = eventFrom<{function: string}>(face, 'function-chosen');
    await sendKeys({press: 'ArrowDown'});
    expect(await asked).to.deep.equal({function: 'hertz'});
  });

  it('states what a reading is worth, and in words what spoils it', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face .display=${volts('24.31')}></rb-meter-face>`,
    );
    expect(inside(face, '.remarks').textContent).to.contain('±0.27 V AC');
    face.display = {text: 'OL', unit: 'µF', overload: true, hazard: true, charged: true};
    face.function = 'capacitance';
    await face.updateComplete;
    expect(inside(face, '.remarks').textContent).to.contain('Charged: discharge first');
    face.display = {...volts('13.00'), batteryLow: true};
    await face.updateComplete;
    expect(inside(face, '.remarks').textContent).to.contain('Battery low');
  });

  it('asks to keep the last reading, and to keep nothing when pressed again', async () => {
    const face = await fixture<MeterFace>(html`<rb-meter-face></rb-meter-face>`);
    const asked = eventFrom<{keeps: string}>(face, 'keeping-chosen');
    inside(face, '[data-keeps=last]').click();
    expect(await asked).to.deep.equal({keeps: 'last'});
    face.keeps = 'last';
    await face.updateComplete;
    expect(inside(face, '[data-keeps=last]').getAttribute('aria-pressed')).to.equal('true');
    const again = eventFrom<{keeps: string}>(face, 'keeping-chosen');
    inside(face, '[data-keeps=last]').click();
    expect(await again).to.deep.equal({keeps: 'nothing'});
  });

  it('shows the least and the most that it recorded', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face
        keeps="extremes"
        .extremes=${{least: volts('21.30'), most: volts('26.10')}}
      ></rb-meter-face>`,
    );
    expect(inside(face, '.extremes').textContent?.replace(/\s+/g, ' ').trim()).to.equal(
      'Min 21.30 V AC Max 26.10 V AC',
    );
  });

  it('opens the care of the meter, is accessible there, and asks for a new fuse', async () => {
    const face = await fixture<MeterFace>(
      html`<rb-meter-face red="C1.1" black="C1.2"></rb-meter-face>`,
    );
    inside(face, '.care').click();
    await face.updateComplete;
    const care = inside(face, 'rb-meter-care');
    await expect(face).to.be.accessible();
    expect(care.shadowRoot!.querySelector('.bleed')!.textContent).to.contain('C1.1, C1.2');
    const asked = eventFrom<{what: string}>(face, 'renewal-asked');
    care.shadowRoot!.querySelector<HTMLElement>('[data-renew=fuse]')!.click();
    expect(await asked).to.deep.equal({what: 'fuse'});
    await face.updateComplete;
    expect(face.renderRoot.querySelector('rb-meter-care')).to.equal(null);
  });
});
