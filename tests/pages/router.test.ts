import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {hrefOf, parseRoute} from '../../src/pages/app/router.ts';
import type {Route} from '../../src/pages/app/router.ts';

describe('addresses', () => {
  it('lead home from nothing, a bare hash and the root', () => {
    for (const hash of ['', '#', '#/']) expect(parseRoute(hash)).toEqual({page: 'home'});
  });

  it('name a unit, an attempt or a sealed fault', () => {
    expect(parseRoute('#/unit/practice-panel')).toEqual({page: 'unit', unit: 'practice-panel'});
    expect(parseRoute('#/call/abc')).toEqual({page: 'call', attempt: 'abc'});
    expect(parseRoute('#/open/x_-9')).toEqual({page: 'open', sealed: 'x_-9'});
  });

  it('that lead nowhere are unknown, never an error', () => {
    for (const hash of [
      '#main',
      '#/nowhere',
      '#/unit',
      '#/unit/',
      '#/unit/a/b',
      '#/history/x',
      '#/open/%E0%A4%A',
      '#/constructor/x',
      '#/__proto__',
    ]) {
      expect(parseRoute(hash)).toEqual({page: 'unknown', hash});
    }
  });

  it('written from any route read as the same route', () => {
    const text = fc.string({minLength: 1, unit: 'grapheme'});
    const route: fc.Arbitrary<Exclude<Route, {page: 'unknown'}>> = fc.oneof(
      fc.constantFrom(...(['home', 'history', 'guide', 'about'] as const)).map((page) => ({page})),
      fc.record({page: fc.constantFrom('unit' as const, 'hide' as const), unit: text}),
      fc.record({
        page: fc.constantFrom('call' as const, 'debrief' as const, 'handed' as const),
        attempt: text,
      }),
      fc.record({page: fc.constant('open' as const), sealed: text}),
    );
    fc.assert(fc.property(route, (each) => void expect(parseRoute(hrefOf(each))).toEqual(each)));
  });
});
