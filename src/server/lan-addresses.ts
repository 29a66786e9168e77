import {networkInterfaces} from 'node:os';

/** Addresses of this machine that others on the same network may reach; IPv4 first, since it is short to type. */
export function lanAddresses(interfaces = networkInterfaces()): string[] {
  const all = Object.values(interfaces).flatMap((each) => each ?? []);
  const reachable = all.filter(
    // addresses that a machine gives itself (link-local) reach nobody when there is a network
    ({internal, address}) =>
      !internal && !address.startsWith('169.254.') && !address.startsWith('fe80:'),
  );
  const of = (family: string): string[] =>
    reachable.filter((each) => each.family === family).map(({address}) => address);
  return [...of('IPv4'), ...of('IPv6').map((address) => `[${address}]`)];
}
