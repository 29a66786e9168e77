import {html} from 'lit';
import type {TemplateResult} from 'lit';
import type {Route} from './router.ts';

/** How one route is shown. Its code is fetched when it is first needed, so that the first view stays small. */
export interface Page {
  /** Title of the document and of the sheet; a page may say a better one with a `page-title` event. */
  readonly title: string;
  /** Which entry of the header's navigation it belongs to. */
  readonly within?: 'home' | 'history' | 'about';
  /** Takes the whole window, without the sheet's frame. */
  readonly wide?: boolean;
  load(): Promise<unknown>;
  render(): TemplateResult;
}

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
      return {
        title: 'Service call',
        wide: true,
        load: () => import('../bench/bench-page.element.ts'),
        render: () => html`<rb-bench-page .attemptId=${route.attempt}></rb-bench-page>`,
      };
    case 'debrief':
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
