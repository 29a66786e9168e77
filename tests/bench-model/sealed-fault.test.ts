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
        ...ids
          .slice(1)
          .map((id) => sealFaults({...hidden, unit, faults: [id, ids[0]]}, nonce(4)).length),
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
      sealFaults(
        {...hidden, faults: Array.from({length: 60}, (_, at) => `P${at}:stuck-open`)},
        nonce(8),
      ),
    ).toThrow('hide fewer');
  });
});

test('the same fault twice is not sealed, and a seal that holds it so is refused in words', () => {
  const twice = {...hidden, faults: ['HPS:stuck-open', 'HPS:stuck-open']};
  expect(() => sealFaults(twice, nonce(1))).toThrow('The same fault is given twice.');
  // made when sealing did not yet look
  expect(
    openSealed(
      [
        'BwcHBwcHBwcHBwcHBwcHBwcHBwcHBwcHMwyyNXfcqM5UqfZ_tu-oHAwVF_4V5T4ScvBnIt_BTPFzhZ1rADKjhoiChrXv',
        'SOlgLDzc6_vI07Da8Ny95wFN71e-j0BfCPBCFwIFYxImxJSH4KPdfFsYmGcIPLM-MEr9Ua2EpG1mgdI2iPkjGs_T68WZ',
        'yO1m4N_iHDiWzbXCSsTkixU-GFz6AStpovuEKifbifHDDCruE-jX5S8RAww0pGXB1UjTDXh1yoAFTNt9EVbYdqXC8oze',
        'uqSk6K-dCi_EiZ-gHj1yTDjd804OaOURdfb1rhe96TgV-kHcjfq85wLclYEBb-6blZ8sNzKpHx0P5967H2ecKyIlboDn',
        'TXV1uFMfBM8K-AVZSa5G9LdkLYfnEdBgDN7dN-6CzohWCwOlmeuHfe5LPSZOXEmApQIPeHxEjGu0y3UooVQkC8l7wBxF',
        'KPPnY3PGzRH980AK-L8qcq2gLuu8yP_ntqBDgknKkOzXL2GyEf59RHlca8QrW77swIEzOFNjUg7neIjHZVjSc4LIF4UI',
        'mFR7jiXri-F58nasFazAxzXKzv4JumyTPu4Aapw5QaEm4bHpUSaRX6eycdopAy17YHY33P5wAQQsZDpjQ-Pes916fdAs',
        'QnWJUSo0jZVEC7thYTRxZQyFyRcCcUUzXIinEuz5npsrLWbWW6DqZ9BzBSy1c28M2Vk0amMebgnb1gWqv1zJtJD9ODlG',
      ].join(''),
    ),
  ).toEqual({
    reason:
      'The same fault is hidden twice in this call, so it cannot be begun. Ask for a new link.',
  });
});
