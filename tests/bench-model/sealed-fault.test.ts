import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {fromBase64url, toBase64url} from '../../src/bench/base64url.ts';
import {longestComplaint, openSealed, sealFaults} from '../../src/bench/sealed-fault.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {meterFlaws} from '../../src/meter/meter-condition.ts';

const nonce = (fill: number): Uint8Array => new Uint8Array(24).fill(fill);
const hidden = {
  unit: 'split-heat-pump',
  faults: ['HPS:stuck-open'],
  complaint: 'It does not cool.',
};

describe('base64url', () => {
  // RFC 4648 §10, test vectors, without their padding
  test.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('of "%s" is "%s"', (text, encoded) => {
    const bytes = new TextEncoder().encode(text);
    expect(toBase64url(bytes)).toBe(encoded);
    expect(fromBase64url(encoded)).toEqual(bytes);
  });

  test('agrees with Node’s own on any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({maxLength: 200}), (bytes) => {
        const text = toBase64url(bytes);
        return (
          text === Buffer.from(bytes).toString('base64url') &&
          Buffer.from(fromBase64url(text)!).equals(Buffer.from(bytes))
        );
      }),
    );
  });
});

describe('a sealed fault', () => {
  test('opens to what was hidden', () => {
    expect(openSealed(sealFaults(hidden, nonce(1)))).toEqual({hidden});
    const none = {unit: 'practice-panel', faults: [], complaint: 'Überall still – 24 V?'};
    expect(openSealed(sealFaults(none, nonce(2)))).toEqual({hidden: none});
  });

  test('is not readable as text, in any of the usual readings', () => {
    const sealed = sealFaults(hidden, nonce(3));
    const readings = [
      sealed,
      Buffer.from(sealed, 'base64url').toString('latin1'),
      Buffer.from(sealed, 'base64url').toString('utf16le'),
    ];
    for (const text of readings) {
      for (const secret of ['HPS', 'stuck', 'split', 'cool']) expect(text).not.toContain(secret);
    }
    expect(sealed).toMatch(/^[A-Za-z0-9_-]+$/);
  });

  test("keeps what is wrong with the student's own meter, and tells nothing of it by its length", () => {
    const lengths = meterFlaws.map((meter) => {
      const sealed = sealFaults({...hidden, meter}, nonce(9));
      expect(openSealed(sealed)).toEqual({hidden: {...hidden, meter}});
      return sealed.length;
    });
    expect(new Set([...lengths, sealFaults(hidden, nonce(9)).length]).size).toBe(1);
  });

  test('has one length for every fault of every unit, one or two of them', () => {
    for (const unit of shippedUnitIds()) {
      const ids = catalogue(readShippedUnit(unit)).map((fault) => fault.id);
      const lengths = new Set([
        sealFaults({...hidden, unit, faults: []}, nonce(4)).length,
        ...ids.map((id) => sealFaults({...hidden, unit, faults: [id]}, nonce(4)).length),
        ...ids.map((id) => sealFaults({...hidden, unit, faults: [id, ids[0]]}, nonce(4)).length),
      ]);
      expect(lengths.size, unit).toBe(1);
    }
  });

  test('differs all over under another nonce', () => {
    const [a, b] = [sealFaults(hidden, nonce(5)), sealFaults(hidden, nonce(6))];
    const same = [...a].filter((character, i) => character === b[i]).length;
    expect(same / a.length).toBeLessThan(0.1);
  });

  test('damaged anywhere, or cut short, is refused with one reason', () => {
    const sealed = sealFaults(hidden, nonce(7));
    const reason = /^This sealed fault is damaged or cut short\. Ask for the link again/;
    fc.assert(
      fc.property(fc.nat(sealed.length - 1), (at) => {
        const other = sealed[at] === 'A' ? 'B' : 'A';
        const opened = openSealed(sealed.slice(0, at) + other + sealed.slice(at + 1));
        // the last character of base64 may carry bits that are thrown away
        return 'reason' in opened ? reason.test(opened.reason) : at === sealed.length - 1;
      }),
    );
    for (const text of ['', 'x', '!!!', sealed.slice(0, -4), `${sealed}AAAA`, 'zzzz'.repeat(300)]) {
      expect(openSealed(text), text.slice(0, 20)).toEqual({reason: expect.stringMatching(reason)});
    }
  });

  test('does not take a complaint that is too long, or a short nonce', () => {
    const complaint = 'x'.repeat(longestComplaint + 1);
    expect(() => sealFaults({...hidden, complaint}, nonce(8))).toThrow('shorten it to 500');
    expect(() => sealFaults(hidden, new Uint8Array(12))).toThrow('give 24 random ones');
    expect(() =>
      sealFaults({...hidden, faults: Array(60).fill('HPS:stuck-open')}, nonce(8)),
    ).toThrow('hide fewer');
  });
});
