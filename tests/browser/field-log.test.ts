import {expect, fixture, html} from '@open-wc/testing';
import '../../src/bench/field-log.element.ts';
import type {FieldLog} from '../../src/bench/field-log.element.ts';
import {eventFrom, readingEntry} from './bench-fixtures.ts';

const note = {
  index: 1,
  kind: 'note',
  timeMs: 70_000,
  minutes: 3,
  state: 'Cover off',
  text: 'The switch is open.',
  findings: [],
} as const;

const text = (log: FieldLog): string => log.renderRoot.textContent?.replace(/\s+/g, ' ') ?? '';

describe('<rb-field-log>', () => {
  it('is accessible with readings, notes, findings and evidence boxes', async () => {
    const log = await fixture<FieldLog>(
      html`<rb-field-log
        selectable
        .entries=${[readingEntry(0, {findings: [0]}), note]}
        .safety=${[{id: 'x', logIndex: 0, severity: 'danger', text: 'Ohms on a live circuit.'}]}
      ></rb-field-log>`,
    );
    await expect(log).to.be.accessible();
  });

  it('says what to do while it is empty', async () => {
    const log = await fixture<FieldLog>(html`<rb-field-log></rb-field-log>`);
    expect(text(log)).to.contain('Put both leads down');
  });

  it('shows number, time, state, function, leads, expected and read of a reading', async () => {
    const log = await fixture<FieldLog>(
      html`<rb-field-log .entries=${[readingEntry(4)]}></rb-field-log>`,
    );
    const cells = [...log.renderRoot.querySelectorAll('tbody td')].map((cell) =>
      cell.textContent?.replace(/\s+/g, ' ').trim(),
    );
    expect(cells).to.deep.equal([
      '5',
      '1:05',
      'Cover off, power on',
      'Volts AC',
      'RS1.1 BS1.2',
      '24 V',
      // with the arithmetic of its limit of error
      '26.30 V AC ±(1 % of 26.30 + 3 × 0.01) V AC = ±0.29 V AC',
    ]);
  });

  it('shows a dash where the expectation was skipped, and OL where OL was expected', async () => {
    const log = await fixture<FieldLog>(
      html`<rb-field-log
        .entries=${[
          readingEntry(0, {expected: undefined}),
          readingEntry(1, {function: 'ohms', expected: {open: true}}),
        ]}
      ></rb-field-log>`,
    );
    const expected = [...log.renderRoot.querySelectorAll('td.expected')].map((cell) =>
      cell.textContent?.trim(),
    );
    expect(expected).to.deep.equal(['–', 'OL']);
  });

  it('writes a safety finding under the entry that caused it', async () => {
    const log = await fixture<FieldLog>(
      html`<rb-field-log
        .entries=${[readingEntry(0, {findings: [0]})]}
        .safety=${[{id: 'x', logIndex: 0, severity: 'danger', text: 'Ohms on a live circuit.'}]}
      ></rb-field-log>`,
    );
    expect(text(log)).to.contain('Danger Ohms on a live circuit.');
  });

  it('gives the ticked entries in order', async () => {
    const log = await fixture<FieldLog>(
      html`<rb-field-log
        selectable
        .entries=${[readingEntry(0), readingEntry(1), readingEntry(2)]}
        .evidence=${[2]}
      ></rb-field-log>`,
    );
    const changed = eventFrom<{evidence: number[]}>(log, 'evidence-changed');
    log.renderRoot.querySelectorAll<HTMLInputElement>('input[type=checkbox]')[0].click();
    expect(await changed).to.deep.equal({evidence: [0, 2]});
  });

  it('stacks its entries where it is narrow, and keeps every value', async () => {
    const box = await fixture<HTMLElement>(
      html`<div><rb-field-log .entries=${[readingEntry(0)]}></rb-field-log></div>`,
    );
    box.style.width = '360px';
    const log = box.querySelector('rb-field-log')!;
    await log.updateComplete;
    const row = log.renderRoot.querySelector('tbody tr')!;
    expect(getComputedStyle(row).display).to.equal('grid');
    expect(row.scrollWidth).to.be.at.most(360);
    expect(text(log)).to.contain('26.30 V AC');
  });
});
