import type {Page} from 'puppeteer-core';
import type {Joined} from '../../src/classroom/protocol/rest.ts';
import {firstStartKey} from './class-harness.ts';
import {assignmentOf, joinAs, names, type SchoolToSee} from './class-for-pictures.ts';
import {Person} from './person.ts';

/** One screen of a class to take pictures of. */
export interface ClassScreen {
  readonly name: string;
  readonly path: string | ((school: SchoolToSee) => string | Promise<string>);
  /** Who looks: signed in, or joined under a name. Absent: nobody. */
  readonly as?: 'instructor' | 'novice' | ((school: SchoolToSee) => Promise<Joined>);
  readonly prepare?: (person: Person, school: SchoolToSee) => Promise<void>;
  /** The server says no, which the browser notes in its console. */
  readonly refused?: boolean;
  readonly wholePage?: boolean;
}

interface FirstStartScreen {
  readonly name: string;
  readonly path: string;
  readonly prepare: (person: Person) => Promise<void>;
}

const [longName, unbroken] = names;

/** A student of a class, at a device of their own. */
const studentOf =
  (which: 'full' | 'mixed' | 'asked' | 'answered', name: string) =>
  (school: SchoolToSee): Promise<Joined> =>
    joinAs(school.at, school[which], name);

const sees =
  (text: string, selector: string) =>
  (person: Person): Promise<void> =>
    person.sees(text, selector);

const attempt = (assignment: string): string => encodeURIComponent(`class.${assignment}`);

/** On a server that nobody has an account on yet. */
export const firstStartScreens: readonly FirstStartScreen[] = [
  {
    name: 'class-first-start',
    path: `#/class/start?key=${firstStartKey}`,
    prepare: sees('First start', 'h1'),
  },
  {
    name: 'class-first-start-by-hand',
    path: '#/class',
    prepare: async (person) => {
      await person.sees('First start', 'h1');
      await person.write('#key', 'something else');
      await person.write('#name', 'Ada Field');
      await person.write('#passphrase', 'four cold copper coils');
      await person.write('#again', 'four cold cooper coils');
      await person.press('Make the account');
      await person.find('.note.danger');
    },
  },
];

/** The pages of a class, in the states that an instructor, a student and the projector meet. */
export const classScreens: readonly ClassScreen[] = [
  {name: 'class-sign-in', path: '#/class', prepare: sees('Sign in', 'h1')},
  {
    name: 'class-sign-in-refused',
    refused: true,
    path: '#/class',
    prepare: async (person) => {
      await person.write('#name', 'Ada Field');
      await person.write('#passphrase', 'not the right words');
      await person.press('Sign in', 'button');
      await person.find('.note.danger');
    },
  },
  {name: 'class-desk', path: '#/class', as: 'instructor', prepare: sees('lab', '.classes')},
  {name: 'class-desk-empty', path: '#/class', as: 'novice', prepare: sees('No class yet', '.note')},
  {
    name: 'class-page',
    path: ({full}) => `#/class/${full.id}`,
    as: 'instructor',
    wholePage: true,
    prepare: sees(unbroken, '.names'),
  },
  {
    name: 'class-page-changing',
    path: ({full}) => `#/class/${full.id}`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.press(`Change ${unbroken}`, 'button');
      await person.press('Erase…');
      await person.find('.change .danger');
      await person.press('Delete the class');
      await person.find('.last .danger');
    },
  },
  {
    name: 'class-page-empty',
    path: ({bare}) => `#/class/${bare.id}`,
    as: 'instructor',
    wholePage: true,
    prepare: sees('Nobody yet', 'p'),
  },
  {
    name: 'class-page-missing',
    refused: true,
    path: '#/class/nosuchclass00',
    as: 'instructor',
    prepare: sees('cannot', 'h1'),
  },
  ...(['The same fault', 'A fault of their own', 'Students hide', 'A wiring task'] as const).map(
    (kind, index): ClassScreen => ({
      name: `class-set-form-${['same', 'different', 'in-pairs', 'hookup'][index]}`,
      path: ({bare}) => `#/class/${bare.id}`,
      as: 'instructor',
      wholePage: true,
      prepare: async (person) => {
        await person.press('Give the class something to do');
        await person.press(kind, 'label');
        await person.find(
          index === 0 ? '.modes button' : index === 3 ? '#task:enabled' : '#unit:enabled',
        );
      },
    }),
  ),
  {
    name: 'class-hide-on-unit',
    path: '#/hide/split-heat-pump',
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.write('#words', 'HPS contact stuck open');
      await person.sees('1 fault on 1 line', '.count');
      await person.pressOn('.modes button');
      await person.sees('For a class', 'label');
    },
  },
  {
    name: 'class-live',
    path: ({full}) => `#/class/${full.id}/live`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.sees('of 15 here', '.sum');
      await person.sees('Right', 'td');
    },
  },
  {
    name: 'class-live-opened',
    path: ({full}) => `#/class/${full.id}/live`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.press(longName, 'button');
      await person.sees('HPS.1', 'table');
    },
  },
  {
    name: 'class-live-hint',
    path: ({full}) => `#/class/${full.id}/live`,
    as: 'instructor',
    prepare: async (person) => {
      await person.press('Hint for all');
      await person.find('dialog[open]');
    },
  },
  {
    name: 'class-live-asking',
    path: ({full}) => `#/class/${full.id}/live`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.press('What will happen if…', 'button');
      await person.find('#question');
    },
  },
  {
    name: 'class-live-asked',
    path: ({asked}) => `#/class/${asked.id}/live`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person) => {
      await person.press('What will happen if…', 'button');
      await person.sees('answered', '.box p[role=status]');
    },
  },
  {
    name: 'class-live-empty',
    path: ({bare}) => `#/class/${bare.id}/live`,
    as: 'instructor',
    prepare: sees('roster is empty', '.note'),
  },
  {
    name: 'class-wall-code',
    path: ({wall}) => `#/wall?token=${wall.bare}`,
    prepare: sees('-', '.code'),
  },
  {
    name: 'class-wall-heat',
    path: ({wall}) => `#/wall?token=${wall.full}`,
    prepare: async (person) => {
      await person.find('.heat circle');
    },
  },
  {
    name: 'class-wall-names',
    path: ({full}) => `#/class/${full.id}/live`,
    as: 'instructor',
    prepare: async (person, {wall}) => {
      await person.press('Names on', 'label');
      await person.page.goto(new URL(`#/wall?token=${wall.full}`, person.page.url()).href);
      await person.sees(longName, '.names');
      await person.find('.heat circle');
    },
  },
  {
    name: 'class-wall-poll',
    path: ({wall}) => `#/wall?token=${wall.asked}`,
    prepare: sees('What will happen', '.asks'),
  },
  {
    name: 'class-wall-answer',
    path: ({wall}) => `#/wall?token=${wall.answered}`,
    prepare: sees('What was done', '.foot'),
  },
  {
    name: 'class-wall-stopped',
    path: '#/wall?token=a-token-that-no-wall-has-any-more',
    prepare: sees('stopped', 'h1'),
  },
  {name: 'class-join', path: '#/join', prepare: sees('Join a class', 'h1')},
  {
    name: 'class-join-wrong',
    refused: true,
    path: '#/join/AAAA-AAAA',
    prepare: async (person) => {
      await person.find('.note.danger');
    },
  },
  {
    name: 'class-join-names',
    path: ({full}) => `#/join/${full.code}`,
    wholePage: true,
    prepare: sees(unbroken, '.names'),
  },
  {
    name: 'class-join-again',
    path: ({full}) => `#/join/${full.code}`,
    prepare: async (person) => {
      await person.press(longName, 'button');
      await person.sees('has joined already', 'h1');
    },
  },
  {
    name: 'class-join-no-names',
    path: ({bare}) => `#/join/${bare.code}`,
    prepare: sees('There are no names yet', 'p'),
  },
  {
    name: 'class-seat',
    path: '#/seat',
    as: studentOf('mixed', 'Kwame'),
    wholePage: true,
    prepare: sees('Hide a fault', '.items'),
  },
  {
    name: 'class-seat-poll',
    path: '#/seat',
    as: studentOf('asked', 'Jo'),
    wholePage: true,
    prepare: async (person) => {
      await person.press('Everything stops', 'button');
    },
  },
  {
    name: 'class-seat-answer',
    path: '#/seat',
    as: studentOf('answered', 'Ben'),
    wholePage: true,
    prepare: sees('right', '.answers'),
  },
  {
    name: 'class-seat-taken',
    path: '#/seat',
    as: studentOf('full', 'Kwame'),
    prepare: async (person, {at, full}) => {
      await person.sees('Kwame', 'h1');
      await at.connect((await joinAs(at, full, 'Kwame')).token);
      await person.sees('You went on elsewhere', 'h1');
    },
  },
  {name: 'class-seat-nobody', path: '#/seat', prepare: sees('No class', 'h1')},
  {
    name: 'class-call',
    path: async ({at, full}) => `#/call/${attempt(await assignmentOf(at, full, longName, 'call'))}`,
    as: studentOf('full', longName),
    prepare: async (person) => {
      await person.find('rb-meter-face');
    },
  },
  {
    name: 'class-call-told',
    path: async ({at, full}) => `#/call/${attempt(await assignmentOf(at, full, 'Ben', 'call'))}`,
    as: studentOf('full', 'Ben'),
    prepare: async (person) => {
      await person.sees('Follow the yellow wire', '.told');
      await person.find('rb-meter-face');
    },
  },
  {
    name: 'class-call-debrief',
    path: async ({at, full}) =>
      `#/debrief/${attempt(await assignmentOf(at, full, 'Dana Whitfield', 'call'))}`,
    as: studentOf('full', 'Dana Whitfield'),
    wholePage: true,
    prepare: sees('Right', 'h1'),
  },
  {
    name: 'class-hide-for',
    path: async ({at, mixed}) => `#/seat/${await assignmentOf(at, mixed, 'Mina', 'hide')}/hide`,
    as: studentOf('mixed', 'Mina'),
    wholePage: true,
    prepare: async (person) => {
      await person.pressOn('.modes button');
    },
  },
  {
    name: 'class-wire',
    path: async ({at, mixed}) => `#/seat/${await assignmentOf(at, mixed, 'Noor', 'hookup')}/wire`,
    as: studentOf('mixed', 'Noor'),
    wholePage: true,
    prepare: async (person) => {
      await person.find('rb-hookup-task-page');
      await person.sees('left', 'rb-time-left span').catch(() => undefined);
    },
  },
  {
    name: 'class-debrief',
    path: ({full, closed}) => `#/class/${full.id}/debrief/${closed.id}`,
    as: 'instructor',
    wholePage: true,
    prepare: sees('Safety', 'h2#safety'),
  },
  {
    name: 'class-debrief-nothing',
    path: async ({at, bare}) => {
      const set = await at.get<{id: string}>('POST', `/classes/${bare.id}/sets`, {
        kind: 'same',
        unit: 'practice-panel',
        faults: ['W8:open'],
      });
      return `#/class/${bare.id}/debrief/${set.id}`;
    },
    as: 'instructor',
    prepare: sees('Safety', 'h2#safety'),
  },
  {
    name: 'class-records',
    path: ({full}) => `#/class/${full.id}/records`,
    as: 'instructor',
    wholePage: true,
    prepare: sees(unbroken, 'th'),
  },
  {
    name: 'class-records-erase',
    path: ({full}) => `#/class/${full.id}/records`,
    as: 'instructor',
    wholePage: true,
    prepare: async (person, {full}) => {
      await (
        await person.find('#student')
      ).evaluate((it, id) => {
        (it as HTMLSelectElement).value = id;
        it.dispatchEvent(new Event('change'));
      }, full.roster[1].id);
      await person.press('Erase…');
      await person.sees('Erase', '.note.danger');
    },
  },
  {
    name: 'class-records-empty',
    path: ({bare}) => `#/class/${bare.id}/records`,
    as: 'instructor',
    prepare: sees('Gradebook', 'h2'),
  },
];

/** Makes the device the one of whoever looks, and opens the screen anew. */
export async function enter(page: Page, screen: ClassScreen, school: SchoolToSee): Promise<void> {
  const {as, path} = screen;
  if (as === 'instructor' || as === 'novice') {
    const [name, value] = (as === 'novice' ? school.novice : school.at.cookie).split('=');
    await page.setCookie({name, value, url: `${school.at.url}/api`});
    await page.evaluate("localStorage.setItem('rungbench-instructor', 'yes')");
  } else if (as) {
    const {token, name, className} = await as(school);
    const seat = JSON.stringify({token, name, className});
    await page.evaluate(`localStorage.setItem('rungbench-seat', ${JSON.stringify(seat)})`);
  }
  const place = typeof path === 'string' ? path : await path(school);
  await page.goto(new URL(place, `${school.at.url}/`).href, {waitUntil: 'load'});
  await page.reload({waitUntil: 'load'});
}
