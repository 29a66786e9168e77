import {expect, fixture, html} from '@open-wc/testing';
import {sendKeys} from '@web/test-runner-commands';
import '../../src/bench/cautions.element.ts';
import type {Cautions} from '../../src/bench/cautions.element.ts';
import '../../src/bench/control-panel.element.ts';
import type {ControlPanel} from '../../src/bench/control-panel.element.ts';
import '../../src/bench/expectation-form.element.ts';
import type {ExpectationForm} from '../../src/bench/expectation-form.element.ts';
import '../../src/bench/pick-list.element.ts';
import type {PickList} from '../../src/bench/pick-list.element.ts';
import {eventFrom, smallUnit, viewOf} from './bench-fixtures.ts';

/** Finds through the shadow roots, as a person sees one page. */
function deep<E extends Element = HTMLElement>(root: ParentNode, selector: string): E {
  const walk = (from: ParentNode): E | undefined => {
    for (const element of from.querySelectorAll('*')) {
      if (element.matches(selector)) return element as E;
      const found = element.shadowRoot && walk(element.shadowRoot);
      if (found) return found;
    }
    return undefined;
  };
  const found = walk(root);
  if (!found) throw new Error(`There is no ${selector}.`);
  return found;
}

const panelWith = (changes = {}, refusal?: ControlPanel['refusal']): Promise<ControlPanel> =>
  fixture<ControlPanel>(
    html`<rb-control-panel
      .unit=${smallUnit}
      .view=${viewOf(changes)}
      .refusal=${refusal}
    ></rb-control-panel>`,
  );

describe('<rb-control-panel>', () => {
  it('is accessible', async () => {
    await expect(await panelWith()).to.be.accessible();
  });

  it('asks to open the disconnect', async () => {
    const panel = await panelWith();
    const asked = eventFrom<object>(panel, 'action-asked');
    deep(panel.renderRoot, 'button[data-value=open]').click();
    expect(await asked).to.deep.equal({
      action: {do: 'set', target: 'DS1.position', value: 'open'},
    });
  });

  it('asks for nothing when the lever is already there', async () => {
    const panel = await panelWith();
    let asked = 0;
    panel.addEventListener('action-asked', () => asked++);
    deep(panel.renderRoot, 'button[data-value=closed]').click();
    expect(asked).to.equal(0);
  });

  it('keeps a number within its limits', async () => {
    const panel = await panelWith();
    const input = deep<HTMLInputElement>(panel.renderRoot, '.stepper input');
    const asked = eventFrom<object>(panel, 'action-asked');
    input.value = '900';
    input.dispatchEvent(new Event('change'));
    expect(await asked).to.deep.equal({
      action: {do: 'set', target: 'plant.suctionPsig', value: 200},
    });
  });

  it('offers the lock once the disconnect is open, and shows the next step', async () => {
    const [disconnect, ...others] = viewOf().controls;
    const panel = await panelWith({controls: [{...disconnect, value: 'open'}, ...others]});
    expect(deep(panel.renderRoot, '.step.now').textContent).to.contain('Hang your lock and tag');
    const asked = eventFrom<object>(panel, 'action-asked');
    deep(panel.renderRoot, '.lock-line button').click();
    expect(await asked).to.deep.equal({action: {do: 'lock', part: 'DS1'}});
  });

  it('shows what was refused beside the control that was moved', async () => {
    const panel = await panelWith(
      {},
      {
        action: {do: 'set', target: 'DS1.position', value: 'closed'},
        sentence: 'DS1 is locked and tagged.',
      },
    );
    const isolation = deep(panel.renderRoot, 'rb-isolation');
    expect(isolation.querySelector('[role=alert]')?.textContent).to.equal(
      'DS1 is locked and tagged.',
    );
  });

  it('takes a cover off', async () => {
    const panel = await panelWith();
    const asked = eventFrom<object>(panel, 'action-asked');
    deep(panel.renderRoot, '[data-enclosure=box]').click();
    expect(await asked).to.deep.equal({action: {do: 'open-cover', enclosure: 'box'}});
  });
});

describe('<rb-expectation-form>', () => {
  const form = (): Promise<ExpectationForm> =>
    fixture<ExpectationForm>(
      html`<rb-expectation-form ready .usualVolts=${[24, 120]}></rb-expectation-form>`,
    );

  it('is accessible', async () => {
    await expect(await form()).to.be.accessible();
  });

  it('reads with what was typed, by the Enter key', async () => {
    const element = await form();
    element.focus();
    const asked = eventFrom<object>(element, 'reading-asked');
    await sendKeys({type: '24'});
    await sendKeys({press: 'Enter'});
    expect(await asked).to.deep.equal({expected: {value: 24}});
  });

  it('reads once where the Enter key is held down', async () => {
    const element = await form();
    let read = 0;
    element.addEventListener('reading-asked', () => read++);
    element.focus();
    await sendKeys({down: 'Enter'});
    await sendKeys({down: 'Enter'});
    await sendKeys({up: 'Enter'});
    expect(read).to.equal(1);
  });

  it('reads without an expectation when it is left empty', async () => {
    const element = await form();
    const asked = eventFrom<{expected?: object}>(element, 'reading-asked');
    deep(element.renderRoot, '[type=submit]').click();
    expect((await asked).expected).to.equal(undefined);
  });

  it('says what is wrong with an expectation in another unit, and does not read', async () => {
    const element = await form();
    let read = 0;
    element.addEventListener('reading-asked', () => read++);
    element.focus();
    await sendKeys({type: '12 ohms'});
    await sendKeys({press: 'Enter'});
    await element.updateComplete;
    expect(read).to.equal(0);
    expect(element.renderRoot.querySelector('[role=alert]')?.textContent).to.contain('expect V');
  });

  it('does not read before the leads are down', async () => {
    const element = await fixture<ExpectationForm>(
      html`<rb-expectation-form></rb-expectation-form>`,
    );
    let read = 0;
    element.addEventListener('reading-asked', () => read++);
    element.submit();
    expect(read).to.equal(0);
  });
});

describe('<rb-pick-list>', () => {
  const options = [
    {id: 'K1.A1', text: 'Contactor'},
    {id: 'K1.A2', text: 'Contactor'},
    {id: 'TB1.C', text: '24 V strip', barred: 'cover is on'},
  ];
  const list = (): Promise<PickList> =>
    fixture<PickList>(
      html`<rb-pick-list label="Put the red lead on" .options=${options}></rb-pick-list>`,
    );

  it('is accessible closed and open', async () => {
    const element = await list();
    await expect(element).to.be.accessible();
    element.focus();
    await sendKeys({press: 'ArrowDown'});
    await element.updateComplete;
    await expect(element).to.be.accessible();
  });

  it('picks the second terminal by keyboard alone', async () => {
    const element = await list();
    element.focus();
    const picked = eventFrom<object>(element, 'picked');
    await sendKeys({type: 'k1'});
    await sendKeys({press: 'ArrowDown'});
    await sendKeys({press: 'Enter'});
    expect(await picked).to.deep.equal({id: 'K1.A2'});
  });

  it('picks once where the Enter key is held down', async () => {
    const element = await list();
    element.clears = true;
    element.focus();
    let picked = 0;
    element.addEventListener('picked', () => picked++);
    await sendKeys({press: 'ArrowDown'});
    await sendKeys({down: 'Enter'});
    // who hears it may open the list again for the other lead
    deep(element.renderRoot, 'input').click();
    await sendKeys({down: 'Enter'});
    await sendKeys({up: 'Enter'});
    expect(picked).to.equal(1);
  });

  it('does not pick what is behind a cover', async () => {
    const element = await list();
    element.focus();
    let picked = 0;
    element.addEventListener('picked', () => picked++);
    await sendKeys({type: 'tb1'});
    await sendKeys({press: 'Enter'});
    expect(picked).to.equal(0);
    expect(deep(element.renderRoot, '.option').textContent).to.contain('cover is on');
  });
});

describe('<rb-cautions>', () => {
  it('folds when understood, and unfolds when the caution comes up anew', async () => {
    const live = [{id: 'live', text: 'Line voltage is live here.'}];
    const element = await fixture<Cautions>(html`<rb-cautions .cautions=${live}></rb-cautions>`);
    await expect(element).to.be.accessible();
    deep(element.renderRoot, 'button').click();
    await element.updateComplete;
    expect(element.renderRoot.textContent).to.contain('1 caution in force');
    element.cautions = [];
    await element.updateComplete;
    element.cautions = live;
    await element.updateComplete;
    expect(deep(element.renderRoot, '[data-caution=live]').textContent).to.equal(live[0].text);
  });
});
