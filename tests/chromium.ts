import {execFile} from 'node:child_process';
import {existsSync} from 'node:fs';
import {mkdir, rename, rm, writeFile} from 'node:fs/promises';
import {delimiter, join, resolve} from 'node:path';
import {promisify} from 'node:util';

const run = promisify(execFile);

/** Which browser the tests drive, and how it has to be started. */
export interface ChromiumToRun {
  /** Absolute path of the executable. */
  readonly executablePath: string;
  /** Command-line switches it needs on this machine. */
  readonly args: string[];
  /** Environment to start it in: the unpacked one brings its own libraries and fonts. */
  readonly env: Record<string, string | undefined>;
  /** Where it was found, for the log. */
  readonly origin: 'CHROME_PATH' | 'installed' | 'unpacked';
}

const commonArgs = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
];

/** What a bare machine needs besides: no zygote and no process of its own for each page. */
const unpackedArgs = [
  ...commonArgs,
  '--single-process',
  '--no-zygote',
  '--font-render-hinting=none',
];

/** What the search looks at: a test gives a machine of its own. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly arch: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  exists(path: string): boolean;
}

const thisMachine: Machine = {
  platform: process.platform,
  arch: process.arch,
  env: process.env,
  exists: existsSync,
};

/** Names under which a browser stands in one of the folders of PATH. */
const namesOnPath = ['google-chrome-stable', 'google-chrome', 'chromium', 'chromium-browser'];

function usualPlaces({platform, env}: Machine): readonly string[] {
  switch (platform) {
    case 'linux':
      return [
        ...namesOnPath.map((name) => `/usr/bin/${name}`),
        '/snap/bin/chromium',
        ...(env['PATH'] ?? '')
          .split(':')
          .filter((folder) => folder.startsWith('/'))
          .flatMap((folder) => namesOnPath.map((name) => `${folder}/${name}`)),
      ];
    case 'darwin':
      return [
        '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
        '/Applications/Chromium.app/Contents/MacOS/Chromium',
        '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
      ];
    case 'win32': {
      const programs = env['PROGRAMFILES'] ?? 'C:\\Program Files';
      const programs32 = env['PROGRAMFILES(X86)'] ?? 'C:\\Program Files (x86)';
      const own = env['LOCALAPPDATA'];
      return [
        `${programs}\\Google\\Chrome\\Application\\chrome.exe`,
        `${programs32}\\Google\\Chrome\\Application\\chrome.exe`,
        ...(own ? [`${own}\\Google\\Chrome\\Application\\chrome.exe`] : []),
        `${programs32}\\Microsoft\\Edge\\Application\\msedge.exe`,
      ];
    }
    default:
      return [];
  }
}

/**
 * The Chromium for browser and end-to-end tests: `CHROME_PATH`, else an installed Chrome or Chromium,
 * else the one that comes as a package (Linux x64), unpacked once below node_modules.
 * Throws one sentence saying what to do when there is none.
 */
export async function findChromium(): Promise<ChromiumToRun> {
  return findInstalled(thisMachine) ?? (await unpackedChromium());
}

/**
 * The browser that `CHROME_PATH` names or that is installed; undefined where the packaged one must do.
 *
 * @throws Error where CHROME_PATH names no file, and where there is no browser and none can be unpacked.
 */
export function findInstalled(machine: Machine): ChromiumToRun | undefined {
  const {platform, arch, env, exists} = machine;
  const chosen = env['CHROME_PATH'];
  if (chosen) {
    if (!exists(chosen)) throw new Error(`CHROME_PATH is "${chosen}", but there is no such file.`);
    return {executablePath: chosen, args: commonArgs, env, origin: 'CHROME_PATH'};
  }
  const installed = usualPlaces(machine).find((path) => exists(path));
  if (installed) return {executablePath: installed, args: commonArgs, env, origin: 'installed'};
  if (platform === 'linux' && arch === 'x64') return undefined;
  throw new Error(
    `No Chrome or Chromium found on ${platform} ${arch}: install one, or set CHROME_PATH to its executable.`,
  );
}

async function unpackedChromium(): Promise<ChromiumToRun> {
  const folder = resolve(import.meta.dirname, '../node_modules/.cache/chromium');
  if (!existsSync(folder)) await unpackInto(folder);
  const executablePath = join(folder, 'chromium');
  const env: Record<string, string | undefined> = {
    ...process.env,
    FONTCONFIG_PATH: join(folder, 'fonts'),
  };
  // A bare machine lacks NSS and expat; where the machine has its own, those fit its C library better.
  const startsAsIs = await run(executablePath, ['--version'], {env: env as NodeJS.ProcessEnv}).then(
    () => true,
    () => false,
  );
  if (!startsAsIs) {
    const before = process.env['LD_LIBRARY_PATH'];
    env['LD_LIBRARY_PATH'] = join(folder, 'al2023', 'lib') + (before ? delimiter + before : '');
  }
  return {executablePath, args: unpackedArgs, env, origin: 'unpacked'};
}

/** Unpacks beside the final place and renames, so that two test runs at once never see half a browser. */
async function unpackInto(folder: string): Promise<void> {
  const partial = `${folder}.${process.pid}`;
  await mkdir(partial, {recursive: true});
  const saved = {...process.env};
  // The package unpacks below the temporary folder, and adds its libraries only where it believes to
  // run on a hosted function with a bare system: which a fresh machine is as good as.
  process.env['TMPDIR'] = partial;
  process.env['AWS_LAMBDA_JS_RUNTIME'] = 'nodejs20.x';
  try {
    const {default: chromium} = await import('@sparticuz/chromium');
    await chromium.executablePath();
  } finally {
    for (const name of [
      'TMPDIR',
      'AWS_LAMBDA_JS_RUNTIME',
      'LD_LIBRARY_PATH',
      'FONTCONFIG_PATH',
      'HOME',
    ]) {
      const value = saved[name];
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
  await writeFile(
    join(partial, 'fonts', 'fonts.conf'),
    '<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig>\n' +
      `  <dir>${join(folder, 'fonts', 'fonts')}</dir>\n  <cachedir>${join(folder, 'fonts', 'cache')}</cachedir>\n</fontconfig>\n`,
  );
  await rename(partial, folder).catch(async (error: unknown) => {
    // another run was first: its copy is as good
    if (!existsSync(join(folder, 'chromium'))) throw error;
    await rm(partial, {recursive: true});
  });
}
