import {expect, fixture, html} from '@open-wc/testing';
import type {LiveRow} from '../../src/classroom/protocol/instructor-messages.ts';
import {signOut} from '../../src/pages/class/class-api.ts';
import '../../src/pages/class/desk-page.element.ts';
import type {ClassDeskPage} from '../../src/pages/class/desk-page.element.ts';
import '../../src/pages/class/join-page.element.ts';
import type {JoinPage} from '../../src/pages/class/join-page.element.ts';
import {keptSeat, leaveSeat} from '../../src/pages/class/kept-seat.ts';
import '../../src/pages/class/live-page.element.ts';
import type {LivePage} from '../../src/pages/class/live-page.element.ts';
import {stageText, stuckText} from '../../src/pages/class/live-words.ts';
import '../../src/pages/class/student-poll.element.ts';
import type {StudentPollCard} from '../../src/pages/class/student-poll.element.ts';
import {inside, textOf, until} from './desk-in-page.ts';

type Answer = {readonly status?: number; readonly body: unknown; readonly retryAfter?: number};

const realFetch = window.fetch;
const realSocket = window.WebSocket;
const asked: {readonly what: string; readonly body: unknown; readonly csrf: string | null}[] = [];

/** A class server of ready answers, by method and path. */
function server(answers: Readonly<Record<string, Answer>>): void {
  asked.length = 0;
  window.fetch = async (path, request) => {
    const what = `${request?.method} ${String(path).replace('api/', '')}`;
    const headers = new Headers(request?.headers);
    asked.push({
      what,
      body: request?.body ? JSON.parse(String(request.body)) : undefined,
      csrf: headers.get('x-csrf'),
    });
    const {status = 200, body, retryAfter} = answers[what] ?? {status: 404, body: 'nothing here'};
    return new Response(JSON.stringify(body), {
      status,
      headers: retryAfter ? {'retry-after': String(retryAfter)} : {},
    });
  };
}

function write(page: Element, selector: string, text: string): void {
  inside<HTMLInputElement>(page, selector).value = text;
}

const signed = {body: {name: 'Ada Field', csrf: 'token-against-forgery'}};
const roster = [
  {id: 'student001', name: 'Antonia', joined: false},
  {id: 'student002', name: 'Ben', joined: true},
];

afterEach(async () => {
  server({'POST sign-out': {body: {}}});
  await signOut();
  window.fetch = realFetch;
  window.WebSocket = realSocket;
  localStorage.removeItem('rungbench-instructor');
  leaveSeat();
  history.replaceState(null, '', location.pathname + location.search);
});

describe('<rb-class-desk-page>', () => {
  const desk = async (): Promise<ClassDeskPage> => {
    const page = await fixture<ClassDeskPage>(html`<rb-class-desk-page></rb-class-desk-page>`);
    await until(() => !textOf(page).includes('Asking the class server'));
    return page;
  };
  const form = (page: Element) => inside(page, 'rb-sign-in-form');

  it('says how to get a class server where there is none', async () => {
    server({});
    const page = await desk();
    expect(textOf(page)).to.contain('npm start');
    await expect(page).to.be.accessible();
  });

  it('makes the first account only with the same passphrase twice', async () => {
    server({
      'GET hello': {body: {rungbench: 'class server', firstStart: true, addresses: []}},
      'POST first-start': signed,
      'GET classes': {body: []},
    });
    const page = await desk();
    await expect(page).to.be.accessible();
    write(form(page), '#key', 'key');
    write(form(page), '#name', 'Ada Field');
    write(form(page), '#passphrase', 'four cold copper coils');
    write(form(page), '#again', 'four cold copper coil');
    inside<HTMLButtonElement>(form(page), 'button.first').click();
    await until(() => textOf(page).includes('differ'));
    expect(asked.some(({what}) => what === 'POST first-start')).to.equal(false);
    write(form(page), '#again', 'four cold copper coils');
    inside<HTMLButtonElement>(form(page), 'button.first').click();
    await until(() => textOf(page).includes('No class yet'));
    await expect(page).to.be.accessible();
  });

  it('says for how long a locked sign-in stays locked', async () => {
    server({
      'GET hello': {body: {rungbench: 'class server', firstStart: false, addresses: []}},
      'POST sign-in': {status: 429, body: {error: 'Too many tries.'}, retryAfter: 30},
    });
    const page = await desk();
    write(form(page), '#name', 'Ada Field');
    write(form(page), '#passphrase', 'wrong wrong wrong');
    inside<HTMLButtonElement>(form(page), 'button.first').click();
    await until(() => textOf(page).includes('Too many tries. Try again in 30 s.'));
  });

  it('sends the token against forged requests with what changes something', async () => {
    server({
      'GET hello': {body: {rungbench: 'class server', firstStart: false, addresses: []}},
      'POST sign-in': signed,
      'GET classes': {body: []},
      'POST classes': {status: 409, body: {error: 'There is a class of that name.'}},
    });
    const page = await desk();
    write(form(page), '#name', 'Ada Field');
    write(form(page), '#passphrase', 'four cold copper coils');
    inside<HTMLButtonElement>(form(page), 'button.first').click();
    await until(() => page.shadowRoot?.querySelector('.new'));
    write(page, '#name', 'Controls lab');
    inside<HTMLButtonElement>(page, '.new button').click();
    await until(() => textOf(page).includes('There is a class of that name.'));
    expect(asked.find(({what}) => what === 'POST classes')?.csrf).to.equal('token-against-forgery');
  });
});

describe('<rb-class-join-page>', () => {
  const join = async (code = ''): Promise<JoinPage> => {
    const page = await fixture<JoinPage>(
      html`<rb-class-join-page .code=${code}></rb-class-join-page>`,
    );
    if (code)
      await until(
        () => page.shadowRoot?.querySelector('.names') ?? textOf(page).includes('Not joined'),
      );
    return page;
  };

  it('takes the code from a QR code’s address and asks who one is', async () => {
    server({'GET join/HUM-42K': {body: {className: 'Controls lab', roster}}});
    const page = await join('HUM-42K');
    expect(textOf(page)).to.contain('Who are you?');
    await expect(page).to.be.accessible();
  });

  it('says so for a code that no class has', async () => {
    server({'GET join/HUM-42K': {status: 404, body: {error: 'No class has this code.'}}});
    const page = await join('HUM-42K');
    expect(textOf(page)).to.contain('No class has this code.');
    await expect(page).to.be.accessible();
  });

  it('takes a seat that is free at once, and keeps nothing but who sits there', async () => {
    server({
      'GET join/HUM-42K': {body: {className: 'Controls lab', roster}},
      'POST join': {
        body: {
          token: 't'.repeat(30),
          student: 'student001',
          name: 'Antonia',
          className: 'Controls lab',
        },
      },
    });
    const page = await join('HUM-42K');
    inside(page, '.names button').click();
    await until(() => location.hash === '#/seat');
    expect(keptSeat()).to.deep.equal({
      token: 't'.repeat(30),
      name: 'Antonia',
      className: 'Controls lab',
    });
  });

  it('asks before it takes a seat over from another device', async () => {
    server({'GET join/HUM-42K': {body: {className: 'Controls lab', roster}}});
    const page = await join('HUM-42K');
    page.shadowRoot?.querySelectorAll<HTMLElement>('.names button')[1].click();
    await until(() => textOf(page).includes('Ben has joined already'));
    expect(asked.some(({what}) => what === 'POST join')).to.equal(false);
    await expect(page).to.be.accessible();
  });
});

const row = (more: Partial<LiveRow>): LiveRow => ({
  student: 'student001',
  name: 'Antonia',
  online: true,
  assignment: 'assignment1',
  title: 'Split heat pump',
  kind: 'call',
  stage: 'working',
  doing: 'TB2.Y to TB2.C, 24.31 V AC',
  readings: 4,
  minutes: 12,
  suspects: 17,
  suspectsAtStart: 240,
  stuckMs: 130_000,
  hints: 1,
  safety: {danger: 0, caution: 1},
  needs: '',
  ...more,
});

describe('the live view', () => {
  it('says how far a student is', () => {
    expect(stageText(row({}))).to.equal('Working');
    expect(stageText(row({online: false}))).to.equal('Away');
    expect(stageText(row({stage: 'new', online: false}))).to.equal('Not here');
    expect(stageText(row({stage: 'named', verdict: 'equivalent'}))).to.equal('Right');
    expect(stuckText(59_000)).to.equal('under 1 min');
    expect(stuckText(125_000)).to.equal('2 min');
  });

  it('shows fifteen students at 1280 px in the order in which they come, and nothing lies outside', async () => {
    server({
      'GET signed-in': signed,
      'GET classes/class00001': {
        body: {
          id: 'class00001',
          name: 'Controls lab',
          code: 'HUM-42K',
          open: true,
          students: 15,
          createdAt: 0,
          joinUrl: '',
          roster,
        },
      },
      'GET classes/class00001/sets': {body: []},
    });
    localStorage.setItem('rungbench-instructor', 'yes');
    const made: {onopen?: () => void; onmessage?: (event: {data: string}) => void}[] = [];
    const said: string[] = [];
    window.WebSocket = class {
      constructor() {
        made.push(this as never);
      }
      send(text: string): void {
        said.push(text);
      }
      close(): void {
        said.push('closed');
      }
    } as unknown as typeof WebSocket;
    const frame = await fixture<HTMLElement>(
      html`<div class="frame">
        <rb-class-live-page .classId=${'class00001'}></rb-class-live-page>
      </div>`,
    );
    frame.style.width = '1280px';
    frame.style.height = '740px';
    const page = frame.firstElementChild as LivePage;
    await until(() => made.length > 0);
    made[0].onopen?.();
    expect(JSON.parse(said[0])).to.deep.equal({is: 'watch', class: 'class00001'});
    const rows = Array.from({length: 15}, (_, index) =>
      row({
        student: `student${String(index).padStart(3, '0')}`,
        name:
          index === 0
            ? 'Antonia Bartholomew-Featherstonehaugh de la Vega y Mendoza'
            : `Student ${index}`,
        needs: index === 0 ? 'stuck for 12 min; one dangerous act' : '',
        safety: {danger: index === 0 ? 1 : 0, caution: 2},
      }),
    );
    made[0].onmessage?.({data: JSON.stringify({is: 'live', class: 'class00001', rows})});
    await until(() => page.shadowRoot?.querySelectorAll('tbody tr').length === 15);
    const names = [...(page.shadowRoot?.querySelectorAll('.name') ?? [])].map((each) =>
      textOf(each).trim(),
    );
    expect(names).to.deep.equal(rows.map(({name}) => name));
    const box = inside(page, '.rows');
    expect(box.scrollWidth).to.be.at.most(box.clientWidth);
    expect(textOf(page)).to.contain('1 needs help');
    await expect(page).to.be.accessible();

    inside<HTMLButtonElement>(page, '.name').click();
    expect(JSON.parse(said[1])).to.deep.equal({is: 'follow', assignment: 'assignment1'});
    await until(() => page.shadowRoot?.querySelector('rb-followed-log'));
    await expect(page).to.be.accessible();
    frame.remove();
    expect(said.at(-1)).to.equal('closed');
  });
});

describe('<rb-student-poll>', () => {
  const poll = {
    id: 'poll000001',
    question: 'the wire comes off?',
    answers: ['The relay drops out', 'Nothing'],
    unit: 'practice-panel',
    state: 'open' as const,
    readings: [],
    committed: 0,
  };

  it('commits to one answer, and only when it is pressed', async () => {
    const card = await fixture<StudentPollCard>(
      html`<rb-student-poll .poll=${poll}></rb-student-poll>`,
    );
    const told: unknown[] = [];
    card.addEventListener('answer-committed', (event) => told.push((event as CustomEvent).detail));
    expect(inside<HTMLButtonElement>(card, '.first').disabled).to.equal(true);
    card.shadowRoot?.querySelectorAll<HTMLElement>('.answers button')[1].click();
    await card.updateComplete;
    expect(told).to.deep.equal([]);
    inside(card, '.first').click();
    expect(told).to.deep.equal([{poll: 'poll000001', answer: 1}]);
    await expect(card).to.be.accessible();
  });

  it('offers nothing to press once committed, and the counts once the change is made', async () => {
    const card = await fixture<StudentPollCard>(
      html`<rb-student-poll
        .poll=${{...poll, mine: 1, state: 'shown', counts: [3, 2], right: 0, changed: 'Wire W20: open'}}
      ></rb-student-poll>`,
    );
    expect(card.shadowRoot?.querySelector('button')).to.equal(null);
    expect(textOf(card)).to.match(/The relay drops out\s*Right/);
    expect(textOf(card)).to.contain('Wire W20: open');
    await expect(card).to.be.accessible();
  });
});
