import {expect, test} from 'vitest';
import {lanAddresses} from '../../src/server/lan-addresses.ts';
import {readSettings} from '../../src/server/settings.ts';

test('the data folder is ./data unless an argument or a variable says otherwise; the argument goes first', () => {
  expect(readSettings([], {}, '/school').dataFolder).toBe('/school/data');
  expect(readSettings([], {RUNGBENCH_DATA: '/elsewhere'}, '/school').dataFolder).toBe('/elsewhere');
  expect(readSettings(['--data', 'x'], {RUNGBENCH_DATA: '/y'}, '/school').dataFolder).toBe(
    '/school/x',
  );
});

test('an address of another database than Postgres is refused with a way out', () => {
  expect(() => readSettings([], {DATABASE_URL: 'mysql://x'}, '/')).toThrow(/postgres:\/\//);
  expect(readSettings([], {POSTGRES_URL: 'postgres://x/y'}, '/').postgres).toBe('postgres://x/y');
});

test('a proxy’s headers are believed only when asked for', () => {
  expect(readSettings([], {}, '/').trustProxy).toBe(false);
  expect(readSettings(['--trust-proxy', 'loopback'], {}, '/').trustProxy).toBe('loopback');
  expect(readSettings([], {RUNGBENCH_TRUST_PROXY: '1'}, '/').trustProxy).toBe(true);
});

test('an address for people ends in a slash, and is an address', () => {
  const settings = readSettings(['--public-url', 'https://school.example'], {}, '/');
  expect(settings.publicUrl).toBe('https://school.example/');
  expect(() => readSettings(['--public-url', 'school'], {}, '/')).toThrow(/http/);
});

test('addresses for phones: the network’s own, IPv4 first, never loopback or link-local', () => {
  const face = (family: 'IPv4' | 'IPv6', address: string, internal = false) =>
    ({family, address, internal, netmask: '', mac: '', cidr: null, scopeid: 0}) as never;
  expect(
    lanAddresses({
      lo: [face('IPv4', '127.0.0.1', true)],
      eth: [face('IPv6', 'fe80::1'), face('IPv6', '2001:db8::7'), face('IPv4', '192.0.2.7')],
      odd: [face('IPv4', '169.254.3.3')],
    }),
  ).toEqual(['192.0.2.7', '[2001:db8::7]']);
});
