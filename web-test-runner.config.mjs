import {mkdir, writeFile, readFile} from 'node:fs/promises';
import {readdirSync} from 'node:fs';
import {fileURLToPath} from 'node:url';
import {esbuildPlugin} from '@web/dev-server-esbuild';
import {defaultReporter} from '@web/test-runner';
import {chromeLauncher} from '@web/test-runner-chrome';
import {tsImport} from 'tsx/esm/api';

const {findChromium} = await tsImport('./tests/chromium.ts', import.meta.url);
const chromium = await findChromium();

/** What Vite does with imports that are not scripts, for tests that load the modules one by one. */
const importsAsVite = {
  name: 'imports-as-vite',
  resolveMimeType(context) {
    if (isTextImport(context) || isScriptImport(context, '.json')) return 'js';
  },
  async serve(context) {
    if (!isTextImport(context)) return;
    const text = await readFile(
      fileURLToPath(new URL(`.${context.path}`, import.meta.url)),
      'utf8',
    );
    return {body: `export default ${JSON.stringify(text)};`, type: 'js'};
  },
  transform(context) {
    if (isScriptImport(context, '.json')) return `export default ${context.body};`;
    if (context.path.endsWith('.ts') && context.body.includes('import.meta.glob'))
      return context.body.replace(globCall, (_, pattern, options) =>
        lazyImports(context.path, pattern, options.includes("'?raw'") ? '?raw' : ''),
      );
  },
};

/** `import.meta.glob<Type>('folder/*.ending', {…})` */
const globCall = /import\.meta\.glob(?:<[^>]*>)?\(\s*'([^']+)',\s*\{([^}]*)\},?\s*\)/g;

/** One function for each file of the folder, which imports its default export. */
function lazyImports(module, pattern, query) {
  const [folder, ending] = pattern.split('*');
  const path = fileURLToPath(new URL(`.${module}/../${folder}`, import.meta.url));
  const files = readdirSync(path).filter((name) => name.endsWith(ending));
  const entries = files.map(
    (name) =>
      `'${folder}${name}': () => import('${folder}${name}${query}').then((it) => it.default)`,
  );
  return `({${entries.join(', ')}})`;
}

function isTextImport(context) {
  return context.URL.searchParams.has('raw') || context.URL.searchParams.has('inline');
}

/** A module asks for the file, not `fetch`. */
function isScriptImport(context, ending) {
  return context.path.endsWith(ending) && context.request.headers['sec-fetch-dest'] === 'script';
}

/** Leaves the counts where tests/run.ts adds them up. */
const countsReporter = {
  async onTestRunFinished({sessions}) {
    const counts = {passed: 0, failed: 0, skipped: 0, brokenFiles: 0};
    const count = (suite) => {
      for (const test of suite?.tests ?? []) {
        if (test.skipped) counts.skipped++;
        else if (test.passed) counts.passed++;
        else counts.failed++;
      }
      for (const inner of suite?.suites ?? []) count(inner);
    };
    for (const session of sessions) {
      count(session.testResults);
      if (!session.passed && (session.errors ?? []).length > 0) counts.brokenFiles++;
    }
    await mkdir('test-output', {recursive: true});
    await writeFile('test-output/browser.json', JSON.stringify(counts));
  },
};

export default {
  rootDir: import.meta.dirname,
  files: ['tests/browser/**/*.test.ts'],
  nodeResolve: true,
  // a browser of one process shares badly: one page at a time
  concurrency: 1,
  concurrentBrowsers: 1,
  browsers: [
    chromeLauncher({
      launchOptions: {
        executablePath: chromium.executablePath,
        args: chromium.args,
        env: chromium.env,
        headless: 'shell',
      },
    }),
  ],
  plugins: [
    importsAsVite,
    esbuildPlugin({
      ts: true,
      json: false,
      // an absolute path: without it the decorators of Lit are not lowered
      tsconfig: fileURLToPath(new URL('./tsconfig.json', import.meta.url)),
      target: 'es2022',
    }),
  ],
  testFramework: {config: {timeout: 10_000}},
  testsStartTimeout: 60_000,
  testsFinishTimeout: 120_000,
  reporters: [
    defaultReporter({reportTestResults: true, reportTestProgress: false}),
    countsReporter,
  ],
  testRunnerHtml: (testFramework) => `<!doctype html>
<html lang="en">
  <head><title>Rungbench</title></head>
  <body><script type="module" src="${testFramework}"></script></body>
</html>`,
};
