import {html} from 'lit';
import {assignmentOfAttempt} from '../class/class-place.ts';
import {classCallPage, classDebriefPage, classPageOf} from '../class/class-pages.ts';
import type {Page} from './page.ts';
import type {Route} from './router.ts';

/** The page that shows a route. */
export function pageOf(route: Route): Page {
  switch (route.page) {
    case 'home':
      return {
        title: 'Service calls',
        within: 'home',
        load: () => import('../home/home-page.element.ts'),
        render: () => html`<rb-home-page></rb-home-page>`,
      };
    case 'unit':
      return {
        title: 'Unit',
        within: 'home',
        load: () => import('../unit/unit-page.element.ts'),
        render: () => html`<rb-unit-page .unitId=${route.unit}></rb-unit-page>`,
      };
    case 'call':
      if (assignmentOfAttempt(route.attempt)) return classCallPage(route.attempt);
      return {
        title: 'Service call',
        wide: true,
        load: () => import('../bench/bench-page.element.ts'),
        render: () => html`<rb-bench-page .attemptId=${route.attempt}></rb-bench-page>`,
      };
    case 'debrief':
      if (assignmentOfAttempt(route.attempt)) return classDebriefPage(route.attempt);
      return {
        title: 'Debrief',
        within: 'history',
        load: () => import('../bench/debrief-page.element.ts'),
        render: () => html`<rb-debrief-page .attemptId=${route.attempt}></rb-debrief-page>`,
      };
    case 'hide':
      return {
        title: 'Hide a fault',
        within: 'home',
        load: () => import('../hide/hide-page.element.ts'),
        render: () => html`<rb-hide-page .unitId=${route.unit}></rb-hide-page>`,
      };
    case 'handed':
      return {
        title: 'A service call for you',
        load: () => import('../open/handed-page.element.ts'),
        render: () => html`<rb-handed-page .attemptId=${route.attempt}></rb-handed-page>`,
      };
    case 'open':
      return {
        title: 'A service call for you',
        load: () => import('../open/open-page.element.ts'),
        render: () => html`<rb-open-page .sealed=${route.sealed}></rb-open-page>`,
      };
    case 'history':
      return {
        title: 'History',
        within: 'history',
        load: () => import('../history/history-page.element.ts'),
        render: () => html`<rb-history-page></rb-history-page>`,
      };
    case 'guide':
      return {
        title: 'First reading',
        within: 'home',
        wide: true,
        load: () => import('../guide/guide-page.element.ts'),
        render: () => html`<rb-guide-page></rb-guide-page>`,
      };
    case 'hookup':
      return {
        title: 'Wiring tasks',
        within: 'home',
        load: () => import('../hookup/hookup-list-page.element.ts'),
        render: () => html`<rb-hookup-list-page></rb-hookup-list-page>`,
      };
    case 'hookup-task':
      return {
        title: 'Wiring task',
        within: 'home',
        load: () => import('../hookup/hookup-task-page.element.ts'),
        render: () => html`<rb-hookup-task-page .taskId=${route.task}></rb-hookup-task-page>`,
      };
    case 'wired':
      return {
        title: 'What was wired',
        within: 'history',
        load: () => import('../hookup/hookup-debrief-page.element.ts'),
        render: () =>
          html`<rb-hookup-debrief-page .attemptId=${route.attempt}></rb-hookup-debrief-page>`,
      };
    case 'class':
      return classPageOf(route.place);
    case 'ready':
      return {
        title: 'Ready for the lab?',
        within: 'history',
        load: () => import('../ready/ready-page.element.ts'),
        render: () => html`<rb-ready-page></rb-ready-page>`,
      };
    case 'plan':
      return {
        title: 'Plan a set of calls',
        within: 'home',
        load: () => import('../plan/plan-page.element.ts'),
        render: () => html`<rb-plan-page></rb-plan-page>`,
      };
    case 'about':
      return {
        title: 'Safety and about',
        within: 'about',
        load: () => import('../about/about-page.element.ts'),
        render: () => html`<rb-about-page></rb-about-page>`,
      };
    case 'unknown':
      return {
        title: 'No such sheet',
        load: () => import('./unknown-page.element.ts'),
        render: () => html`<rb-unknown-page .hash=${route.hash}></rb-unknown-page>`,
      };
  }
}
