import type {School} from './school.ts';

/** The address that others reach this server by: the first that is not this machine's own loopback. */
export function publicAddress({addresses}: School): string {
  return addresses.find((url) => !/\/\/(localhost|127\.|\[::1\])/.test(url)) ?? addresses[0] ?? '';
}

/** What a phone opens to join a class. */
export const joinUrl = (school: School, code: string): string =>
  `${publicAddress(school)}#/join/${code}`;
