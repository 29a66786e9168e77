import {html} from 'lit';
import type {Page} from '../app/page.ts';
import type {ClassPlace} from './class-place.ts';

/** The page that shows a place of a class. */
export function classPageOf(place: ClassPlace): Page {
  return {...shownBy(place), onServer: true};
}

function shownBy(place: ClassPlace): Page {
  switch (place.at) {
    case 'desk':
      return {
        title: 'Classes',
        within: 'class',
        load: () => import('./desk-page.element.ts'),
        render: () => html`<rb-class-desk-page .startKey=${place.key}></rb-class-desk-page>`,
      };
    case 'class':
      return {
        title: 'Class',
        within: 'class',
        load: () => import('./class-page.element.ts'),
        render: () => html`<rb-class-page .classId=${place.classId}></rb-class-page>`,
      };
    case 'live':
      return {
        title: 'Live',
        within: 'class',
        wide: true,
        load: () => import('./live-page.element.ts'),
        render: () => html`<rb-class-live-page .classId=${place.classId}></rb-class-live-page>`,
      };
    case 'wall':
      return {
        title: 'Wall',
        bare: true,
        load: () => import('./wall-page.element.ts'),
        render: () => html`<rb-class-wall-page .token=${place.token}></rb-class-wall-page>`,
      };
    case 'records':
      return {
        title: 'Records',
        within: 'class',
        load: () => import('./records-page.element.ts'),
        render: () =>
          html`<rb-class-records-page .classId=${place.classId}></rb-class-records-page>`,
      };
    case 'debrief':
      return {
        title: 'Class debrief',
        within: 'class',
        load: () => import('./class-debrief-page.element.ts'),
        render: () =>
          html`<rb-class-debrief-page
            .classId=${place.classId}
            .setId=${place.setId}
          ></rb-class-debrief-page>`,
      };
    case 'join':
      return {
        title: 'Join a class',
        within: 'class',
        load: () => import('./join-page.element.ts'),
        render: () => html`<rb-class-join-page .code=${place.code}></rb-class-join-page>`,
      };
    case 'seat':
      return {
        title: 'Your class',
        within: 'class',
        load: () => import('./seat-page.element.ts'),
        render: () => html`<rb-class-seat-page></rb-class-seat-page>`,
      };
    case 'hide':
      return {
        title: 'Hide a fault',
        within: 'class',
        load: () => import('./hide-for-page.element.ts'),
        render: () =>
          html`<rb-class-hide-for-page .assignment=${place.assignment}></rb-class-hide-for-page>`,
      };
    case 'wire':
      return {
        title: 'Wiring task',
        within: 'class',
        load: () => import('./wire-page.element.ts'),
        render: () =>
          html`<rb-class-wire-page .assignment=${place.assignment}></rb-class-wire-page>`,
      };
  }
}

/** A call of the class at the bench. */
export function classCallPage(attempt: string): Page {
  return {
    title: 'Service call',
    wide: true,
    load: () => import('./call-page.element.ts'),
    render: () => html`<rb-class-call-page .attemptId=${attempt}></rb-class-call-page>`,
  };
}

/** The debrief of a call of the class. */
export function classDebriefPage(attempt: string): Page {
  return {
    title: 'Debrief',
    onServer: true,
    load: () => import('./call-page.element.ts'),
    render: () => html`<rb-class-call-page .attemptId=${attempt} debrief></rb-class-call-page>`,
  };
}
