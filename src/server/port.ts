import {createServer} from 'node:net';

/** Where the tutor answers unless `PORT` says otherwise. */
export const usualPort = 4173;

const highestPort = 65_535;

/** Addresses that `localhost` stands for. A browser may try either, so a port must be free on both. */
const loopbacks = ['127.0.0.1', '::1'];

/** The port asked for by the environment variable `PORT`, or the usual one. Throws one sentence if it is no port. */
export function wantedPort(setting: string | undefined): number {
  if (setting === undefined || setting.trim() === '') return usualPort;
  const port = Number(setting);
  if (!Number.isInteger(port) || port < 1 || port > highestPort) {
    throw new Error(`PORT is "${setting}", but a port is a whole number from 1 to ${highestPort}.`);
  }
  return port;
}

/** Whether a server could listen on this port of this machine now. Throws where it may not at all (a privileged port). */
export async function isFree(port: number): Promise<boolean> {
  for (const host of loopbacks) {
    if (!(await canListen(port, host))) return false;
  }
  return true;
}

function canListen(port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(false);
      // a machine without IPv6 (or IPv4) has nobody on that address either
      else if (error.code === 'EADDRNOTAVAIL' || error.code === 'EAFNOSUPPORT') resolve(true);
      else if (error.code === 'EACCES') {
        reject(new Error(`This user may not listen on port ${port}: set PORT to one above 1023.`));
      } else reject(error);
    });
    probe.listen({port, host}, () => probe.close(() => resolve(true)));
  });
}

/**
 * Listens on the first free port from `first` on, trying at most `tries` of them, and returns it. `listen`
 * binds one port; `onTaken` hears of each one passed over and the next that will be tried. Throws one
 * sentence when all are taken.
 */
export async function listenOnFreePort(
  first: number,
  listen: (port: number) => Promise<unknown>,
  onTaken: (taken: number, next: number) => void,
  tries = 20,
): Promise<number> {
  const last = Math.min(first + tries - 1, highestPort);
  for (let port = first; port <= last; port++) {
    if ((await isFree(port)) && (await bound(port, listen))) return port;
    if (port < last) onTaken(port, port + 1);
  }
  throw new Error(`Ports ${first} to ${last} are all taken: set PORT to a free one.`);
}

/** False when somebody took the port between the probe and the listening. */
async function bound(port: number, listen: (port: number) => Promise<unknown>): Promise<boolean> {
  try {
    await listen(port);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') return false;
    throw error;
  }
}
