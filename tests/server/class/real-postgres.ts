import {execFileSync, spawn, type ChildProcess} from 'node:child_process';
import {chownSync, mkdtempSync, rmSync} from 'node:fs';
import {createServer} from 'node:net';
import {tmpdir, userInfo} from 'node:os';
import {join} from 'node:path';

/** A Postgres of its own for a test: a fresh cluster in a temporary folder, on a free port of this machine. */
export interface RealPostgres {
  readonly url: string;
  stop(): Promise<void>;
}

const has = (command: string): boolean => {
  try {
    execFileSync('which', [command], {stdio: 'ignore'});
    return true;
  } catch {
    return false;
  }
};

/** Why no Postgres can be started here; undefined where it can. */
export function whyNoPostgres(): string | undefined {
  if (!has('initdb') || !has('postgres')) return 'Postgres (initdb, postgres) is not installed';
  if (userInfo().uid === 0 && (!has('setpriv') || nobody() === undefined)) {
    return 'Postgres does not run as root and there is no other user to run it as';
  }
  return undefined;
}

function nobody(): {uid: number; gid: number} | undefined {
  try {
    const id = (flag: string): number =>
      Number(execFileSync('id', [flag, 'nobody'], {encoding: 'utf8'}));
    return {uid: id('-u'), gid: id('-g')};
  } catch {
    return undefined;
  }
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const {port} = server.address() as {port: number};
      server.close(() => resolve(port));
    });
  });

export async function startPostgres(): Promise<RealPostgres> {
  const folder = mkdtempSync(join(tmpdir(), 'postgres-'));
  const data = join(folder, 'cluster');
  const as = userInfo().uid === 0 ? nobody() : undefined;
  if (as) chownSync(folder, as.uid, as.gid);
  // Postgres refuses to run as root
  const command = (name: string, args: string[]): [string, string[]] =>
    as
      ? ['setpriv', [`--reuid=${as.uid}`, `--regid=${as.gid}`, '--clear-groups', name, ...args]]
      : [name, args];
  const options = {cwd: folder, env: {...process.env, HOME: folder, LC_ALL: 'C'}};
  execFileSync(
    ...command('initdb', ['-D', data, '-U', 'school', '-A', 'trust', '-E', 'UTF8', '--no-sync']),
    {
      ...options,
      stdio: 'ignore',
    },
  );
  const port = await freePort();
  const server: ChildProcess = spawn(
    ...command('postgres', [
      '-D',
      data,
      '-p',
      String(port),
      '-c',
      'listen_addresses=127.0.0.1',
      '-k',
      folder,
      '-c',
      'fsync=off',
    ]),
    {...options, stdio: ['ignore', 'ignore', 'pipe']},
  );
  await new Promise<void>((resolve, reject) => {
    let said = '';
    server.stderr!.on('data', (data: Buffer) => {
      said += data.toString();
      if (said.includes('ready to accept connections')) resolve();
    });
    server.once('exit', () => reject(new Error(said)));
  });
  return {
    url: `postgres://school@127.0.0.1:${port}/postgres`,
    stop: () =>
      new Promise((resolve) => {
        server.removeAllListeners('exit');
        server.once('exit', () => {
          rmSync(folder, {recursive: true, force: true});
          resolve();
        });
        server.kill('SIGINT');
      }),
  };
}
