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

  it('name the places of a class', () => {
    expect(parseRoute('#/class')).toEqual({page: 'class', place: {at: 'desk'}});
    expect(parseRoute('#/class/7/live')).toEqual({
      page: 'class',
      place: {at: 'live', classId: '7'},
    });
    expect(parseRoute('#/class/7/debrief/3')).toEqual({
      page: 'class',
      place: {at: 'debrief', classId: '7', setId: '3'},
    });
    expect(parseRoute('#/class/start?key=a%2Bb')).toEqual({
      page: 'class',
      place: {at: 'desk', key: 'a+b'},
    });
    expect(parseRoute('#/wall?token=t')).toEqual({
      page: 'class',
      place: {at: 'wall', token: 't'},
    });
    expect(parseRoute('#/join/HUM-42')).toEqual({
      page: 'class',
      place: {at: 'join', code: 'HUM-42'},
    });
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
      '#/class/7/elsewhere',
      '#/class/7/debrief',
      '#/join/a/b',
      '#/wall',
      '#/seat/x',
      '#/seat/x/elsewhere',
      '#/join/%E0%A4%A',
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
      fc
        .oneof(
          fc.constantFrom({at: 'desk' as const}, {at: 'seat' as const}),
          fc.record({at: fc.constant('join' as const), code: fc.oneof(fc.constant(''), text)}),
          fc.record({
            at: fc.constantFrom('live' as const, 'records' as const),
            classId: text,
          }),
          fc.record({at: fc.constant('debrief' as const), classId: text, setId: text}),
          fc.record({at: fc.constant('wall' as const), token: text}),
          fc.record({at: fc.constant('desk' as const), key: text}),
          fc.record({at: fc.constant('hide' as const), assignment: text}),
        )
        .map((place) => ({page: 'class' as const, place})),
    );
    fc.assert(fc.property(route, (each) => void expect(parseRoute(hrefOf(each))).toEqual(each)));
  });
});
