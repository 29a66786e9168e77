import {createReadStream, createWriteStream, existsSync} from 'node:fs';
import {readdir, rename, rm, stat, utimes} from 'node:fs/promises';
import {join} from 'node:path';
import {pipeline} from 'node:stream/promises';
import {constants, createBrotliCompress, createGzip} from 'node:zlib';

/** What the built app is made from, relative to the root of the project. */
const sources = [
  'src',
  'content',
  'public',
  'index.html',
  'vite.config.ts',
  'package-lock.json',
  'tsconfig.json',
];

/** Smaller files gain nothing from compression. */
const smallestToCompressBytes = 1024;

/** Newest change in milliseconds of a file, or of a folder and all in it; 0 where there is none. */
async function newestChange(path: string): Promise<number> {
  if (!existsSync(path)) return 0;
  const entry = await stat(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  const inside = await Promise.all(
    (await readdir(path)).map((name) => newestChange(join(path, name))),
  );
  // the folder's own time counts too: it moves when a file goes away
  return Math.max(entry.mtimeMs, ...inside);
}

/** Whether the build in `dist` is missing, or older than anything it is made from. */
export async function isStale(root: string): Promise<boolean> {
  const built = join(root, 'dist', 'index.html');
  if (!existsSync(built)) return true;
  const builtAt = (await stat(built)).mtimeMs;
  const changes = await Promise.all(sources.map((source) => newestChange(join(root, source))));
  return Math.max(...changes) > builtAt;
}

/**
 * Builds the app into `dist` and lays compressed copies beside its text files. The build is made beside
 * and moved into place, so that a server or a second build never meets half of one.
 */
export async function build(root: string): Promise<void> {
  const startedAt = new Date();
  const outDir = join(root, `dist.${process.pid}`);
  const vite = await import('vite');
  try {
    await vite.build({
      root,
      configFile: join(root, 'vite.config.ts'),
      logLevel: 'warn',
      build: {outDir, emptyOutDir: true},
    });
    await compressBelow(outDir);
    // dated by its start: a source changed while it ran makes it stale
    await utimes(join(outDir, 'index.html'), startedAt, startedAt);
    await rm(join(root, 'dist'), {recursive: true, force: true});
    await rename(outDir, join(root, 'dist'));
  } finally {
    await rm(outDir, {recursive: true, force: true});
  }
}

async function compressBelow(folder: string): Promise<void> {
  for (const entry of await readdir(folder, {withFileTypes: true})) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await compressBelow(path);
    else if (/\.(js|css|html|svg|json|webmanifest)$/.test(entry.name)) {
      if ((await stat(path)).size < smallestToCompressBytes) continue;
      // quality 7 of 11: within a few per cent of the smallest, and the build stays quick
      const brotli = createBrotliCompress({params: {[constants.BROTLI_PARAM_QUALITY]: 7}});
      await Promise.all([
        pipeline(createReadStream(path), brotli, createWriteStream(`${path}.br`)),
        pipeline(createReadStream(path), createGzip(), createWriteStream(`${path}.gz`)),
      ]);
    }
  }
}
