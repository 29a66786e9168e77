import type {Page} from 'puppeteer-core';
import {benchScreens} from './bench-screens.ts';
import {hookupScreens} from './hookup-screens.ts';
import {shellScreens} from './shell-screens.ts';

/** One screen of the tutor to take pictures of. */
export interface ScreenToSee {
  /** File name of its pictures. */
  readonly name: string;
  /** Path and hash, relative to the start page. */
  readonly path: string;
  /** Brings the page into the state to be seen: clicks, leads placed, a dialogue opened. */
  readonly prepare?: (page: Page) => Promise<void>;
  /** Take the page to its end, not only the first screenful. */
  readonly wholePage?: boolean;
}

export const screens: readonly ScreenToSee[] = [...shellScreens, ...benchScreens, ...hookupScreens];
