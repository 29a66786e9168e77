import {expect, fixture, html} from '@open-wc/testing';
import '../../src/pages/class/class-handover.element.ts';
import type {ClassHandover} from '../../src/pages/class/class-handover.element.ts';
import {signIn, signOut} from '../../src/pages/class/class-api.ts';
import '../../src/pages/class/poll-form.element.ts';
import type {PollForm} from '../../src/pages/class/poll-form.element.ts';
import type {PollReadings} from '../../src/pages/class/poll-readings.element.ts';
import '../../src/pages/class/roster.element.ts';
import type {Roster} from '../../src/pages/class/roster.element.ts';
import '../../src/pages/class/set-form.element.ts';
import type {SetForm} from '../../src/pages/class/set-form.element.ts';
import {chooseFile, deskInPage, inside, textOf, until} from './desk-in-page.ts';

const realFetch = window.fetch;
const sent: {readonly what: string; readonly body: unknown}[] = [];

/** A class server that says yes with these, and keeps what it was sent. */
function server(answers: Readonly<Record<string, unknown>>): void {
  sent.length = 0;
  window.fetch = async (path, request) => {
    const what = `${request?.method} ${String(path).replace('api/', '')}`;
    sent.push({what, body: request?.body ? JSON.parse(String(request.body)) : undefined});
    const known = Object.hasOwn(answers, what);
    return new Response(JSON.stringify(known ? answers[what] : {error: `no ${what} here`}), {
      status: known ? 200 : 404,
    });
  };
}

function choose(host: Element, selector: string, value: string): void {
  const field = inside<HTMLInputElement | HTMLSelectElement>(host, selector);
  field.value = value;
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input'));
}

const button = (host: Element, words: string): HTMLButtonElement =>
  [...(host.shadowRoot?.querySelectorAll<HTMLButtonElement>('button') ?? [])].find((each) =>
    textOf(each).includes(words),
  )!;

afterEach(() => {
  window.fetch = realFetch;
});

describe('<rb-set-form>', () => {
  const form = async (): Promise<SetForm> => {
    deskInPage();
    server({'POST classes/class00001/sets': {id: 'set0000001', title: 'Practice panel'}});
    const element = await fixture<SetForm>(
      html`<rb-set-form .classId=${'class00001'}></rb-set-form>`,
    );
    await until(() => inside<HTMLSelectElement>(element, '#unit').value === 'practice-panel');
    return element;
  };
  const kind = (element: SetForm, words: string): void =>
    [...(element.shadowRoot?.querySelectorAll<HTMLElement>('.kinds label') ?? [])]
      .find((each) => textOf(each).includes(words))
      ?.click();

  it('gives a fault of their own to each, at once, by the rules chosen', async () => {
    const element = await form();
    await expect(element).to.be.accessible();
    const rules = inside(element, 'rb-set-rules');
    choose(rules, 'input[type=number]', '30');
    inside(rules, 'input[type=checkbox]').click();
    await element.updateComplete;
    button(element, 'Open it now').click();
    await until(() => sent.length > 0);
    expect(sent[0].body).to.deep.equal({
      kind: 'different',
      unit: 'practice-panel',
      difficulty: 'medium',
      limitMinutes: 30,
      coach: true,
      debriefWhen: 'named',
      open: true,
    });
  });

  it('asks what is wrong with each student’s own meter, and not for a wiring task', async () => {
    const element = await form();
    const rules = inside(element, 'rb-set-rules');
    choose(rules, 'select', 'broken-lead');
    await element.updateComplete;
    await expect(element).to.be.accessible();
    button(element, 'Open it now').click();
    await until(() => sent.length > 0);
    expect(sent[0].body).to.include({kind: 'different', meterFlaw: 'broken-lead'});
    kind(element, 'A wiring task');
    await element.updateComplete;
    expect(rules.shadowRoot?.querySelector('select')).to.equal(null);
  });

  it('gives the same fault to all only once one is chosen', async () => {
    const element = await form();
    kind(element, 'The same fault for all');
    await until(() => element.shadowRoot?.querySelector('rb-fault-list'));
    expect(button(element, 'Open it now').disabled).to.equal(true);
    const list = inside(element, 'rb-fault-list');
    await until(() => list.shadowRoot?.querySelector('.modes button'));
    choose(list, '#words', 'relay coil open');
    const mode = await until(() => {
      const modes = list.shadowRoot?.querySelectorAll<HTMLElement>('.modes button');
      return modes?.length === 1 && modes[0];
    });
    mode.click();
    await until(() => !button(element, 'Keep it for later').disabled);
    await expect(element).to.be.accessible();
    button(element, 'Keep it for later').click();
    await until(() => sent.length > 0);
    expect(sent[0].body).to.include({kind: 'same', open: false});
    expect(sent[0].body).to.deep.include({faults: ['K1:coil-open']});
  });

  it('lets students hide for each other within the limits chosen', async () => {
    const element = await form();
    kind(element, 'Students hide for each other');
    await element.updateComplete;
    const [easy] =
      element.shadowRoot?.querySelectorAll<HTMLInputElement>('input[name=level]') ?? [];
    easy.click();
    await element.updateComplete;
    button(element, 'Open it now').click();
    await until(() => sent.length > 0);
    expect(sent[0].body).to.deep.include({kind: 'in-pairs', allowed: ['medium', 'hard']});
  });
});

describe('<rb-roster>', () => {
  const detail = {
    id: 'class00001',
    name: 'Controls lab',
    code: 'HUM-42K',
    open: true,
    students: 1,
    createdAt: 0,
    joinUrl: '',
    roster: [{id: 'student001', name: 'Antonia', joined: true}],
  };
  const added = {
    ...detail,
    roster: [...detail.roster, {id: 'student002', name: 'Ben', joined: false}],
  };

  it('takes names from a CSV file, to be looked over before they are added', async () => {
    server({'POST classes/class00001/students': added});
    const roster = await fixture<Roster>(html`<rb-roster .detail=${detail}></rb-roster>`);
    chooseFile(
      inside<HTMLInputElement>(roster, 'input[type=file]'),
      'class.csv',
      'name,group\nBen,2\n',
    );
    await until(() => inside<HTMLTextAreaElement>(roster, '#names').value.includes('Ben'));
    expect(sent).to.deep.equal([]);
    button(roster, 'Add to the roster').click();
    await until(() => textOf(roster).includes('One name added.'));
    expect(sent[0].body).to.deep.equal({text: 'name,group\nBen,2\n'});
    await expect(roster).to.be.accessible();
  });

  it('erases a student only after a second press that says what goes', async () => {
    server({'DELETE students/student001': {...detail, roster: []}});
    const roster = await fixture<Roster>(html`<rb-roster .detail=${detail}></rb-roster>`);
    button(roster, 'Change').click();
    await until(() => button(roster, 'Erase…'));
    await expect(roster).to.be.accessible();
    button(roster, 'Erase…').click();
    await until(() => textOf(roster).includes('Everything kept of this student goes'));
    expect(sent).to.deep.equal([]);
    button(roster, 'Erase').click();
    await until(() => textOf(roster).includes('Nobody yet'));
  });
});

describe('<rb-poll-form>', () => {
  it('asks with the unit as it stands, a change, and where the meter stands', async () => {
    deskInPage();
    server({'POST classes/class00001/polls': {id: 'poll000001'}});
    const form = await fixture<PollForm>(
      html`<rb-poll-form .classId=${'class00001'}></rb-poll-form>`,
    );
    await until(() => form.shadowRoot?.querySelector('#fault option[value="K1:coil-open"]'));
    await expect(form).to.be.accessible();
    choose(form, '#question', 'the relay’s coil breaks?');
    const answers =
      form.shadowRoot?.querySelectorAll<HTMLInputElement>('.answers input[type=text]') ?? [];
    for (const [index, text] of ['The lamp goes out', 'Nothing'].entries()) {
      answers[index].value = text;
      answers[index].dispatchEvent(new Event('input'));
    }
    inside(form, 'input[name=right]').click();
    choose(form, '#fault', 'K1:coil-open');
    await form.updateComplete;
    const readings = form.shadowRoot!.querySelector<PollReadings>('rb-poll-readings')!;
    choose(readings, '.watch select[aria-label^=Red]', 'LT1.1');
    await form.updateComplete;
    await readings.updateComplete;
    choose(readings, '.watch select[aria-label^=Black]', 'LT1.2');
    await form.updateComplete;
    button(form, 'Ask the class').click();
    await until(() => sent.length > 0);
    const body = sent[0].body as {actions: {do: string}[]};
    expect(body).to.deep.include({
      question: 'the relay’s coil breaks?',
      answers: ['The lamp goes out', 'Nothing'],
      right: 0,
      unit: 'practice-panel',
      change: {fault: 'K1:coil-open'},
      watch: [{function: 'ac-volts', red: 'LT1.1', black: 'LT1.2'}],
    });
    expect(body.actions.at(-1)?.do).to.equal('wait');
  });

  /** Asks about moving the first control whose target begins so, to the value that `to` chooses; gives what was sent. */
  async function asked(begins: string, to: (field: HTMLSelectElement) => string) {
    deskInPage();
    server({'POST classes/class00001/polls': {id: 'poll000001'}});
    const form = await fixture<PollForm>(
      html`<rb-poll-form .classId=${'class00001'}></rb-poll-form>`,
    );
    await until(() => form.shadowRoot?.querySelector('#fault option[value="K1:coil-open"]'));
    choose(form, '#question', 'this is moved?');
    const answers =
      form.shadowRoot?.querySelectorAll<HTMLInputElement>('.answers input[type=text]') ?? [];
    for (const [index, text] of ['The lamp goes out', 'Nothing'].entries()) {
      answers[index].value = text;
      answers[index].dispatchEvent(new Event('input'));
    }
    const readings = form.shadowRoot!.querySelector<PollReadings>('rb-poll-readings')!;
    choose(readings, '.watch select[aria-label^=Red]', 'LT1.1');
    await form.updateComplete;
    await readings.updateComplete;
    choose(readings, '.watch select[aria-label^=Black]', 'LT1.2');
    choose(form, '#change', 'control');
    await form.updateComplete;
    // nothing has been moved yet: there is nothing to ask
    expect(button(form, 'Ask the class').disabled).to.equal(true);
    const target = [...inside<HTMLSelectElement>(form, '#target').options].find(({value}) =>
      value.startsWith(begins),
    )!.value;
    choose(form, '#target', target);
    await form.updateComplete;
    const value = to(inside<HTMLSelectElement>(form, '#value'));
    choose(form, '#value', value);
    await form.updateComplete;
    await expect(form).to.be.accessible();
    button(form, 'Ask the class').click();
    await until(() => sent.length > 0);
    const {change} = sent[0].body as {change: {actions: unknown[]}};
    return {target, value, actions: change.actions};
  }

  it('asks what happens when a control is moved to another choice', async () => {
    const {target, value, actions} = await asked(
      'DS1.',
      ({options}) => [...options].find(({selected}) => !selected)!.value,
    );
    expect(actions).to.deep.equal([
      {do: 'set', target, value},
      {do: 'wait', seconds: 60},
    ]);
  });

  it('asks what happens when a control is moved to a number', async () => {
    const {target, actions} = await asked('plant.', () => '7');
    expect(actions[0]).to.deep.equal({do: 'set', target, value: 7});
  });
});

describe('<rb-class-handover>', () => {
  const handover = () =>
    fixture<ClassHandover>(
      html`<rb-class-handover
        .unitId=${'practice-panel'}
        .faults=${['K1:coil-open']}
      ></rb-class-handover>`,
    );

  it('is not there, and asks no server, where no instructor has signed in', async () => {
    // other test pages share this browser's storage, and an instructor may be signed in there just now
    const {getItem} = Storage.prototype;
    Storage.prototype.getItem = () => null;
    try {
      server({});
      const element = await handover();
      expect(textOf(element).trim()).to.equal('');
      expect(sent).to.deep.equal([]);
    } finally {
      Storage.prototype.getItem = getItem;
    }
  });

  it('gives what is hidden to a class in one press', async () => {
    const who = {name: 'Ada Field', csrf: 'token'};
    server({
      'POST sign-in': who,
      'GET signed-in': who,
      'POST sign-out': {},
      'GET classes': [
        {
          id: 'class00001',
          name: 'Controls lab',
          code: 'HUM-42K',
          open: true,
          students: 3,
          createdAt: 0,
        },
      ],
      'POST classes/class00001/sets': {id: 'set0000001', class: 'class00001'},
    });
    await signIn('Ada Field', 'four cold copper coils');
    const element = await handover();
    await until(() => button(element, 'Give it to the class'));
    await expect(element).to.be.accessible();
    button(element, 'Give it to the class').click();
    await until(() => textOf(element).includes('The class has it'));
    expect(sent.at(-1)?.body).to.deep.equal({
      kind: 'same',
      unit: 'practice-panel',
      faults: ['K1:coil-open'],
      coach: false,
      debriefWhen: 'named',
      open: true,
    });
    await signOut();
  });
});
