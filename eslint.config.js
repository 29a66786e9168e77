import js from '@eslint/js';
import {configs as lit} from 'eslint-plugin-lit';
import tseslint from 'typescript-eslint';

/** The engine: the same code runs in a page, in a worker, in Node and in tests. */
const engineFiles = ['src/**/*.ts'];

/** The parts of src that may know the page, the disk or the network. */
const outsideTheEngine = [
  'src/pages/**',
  'src/store/**',
  'src/server/**',
  'src/cli/**',
  'src/**/*.element.ts',
  'src/**/*.styles.ts',
  'src/**/*.worker.ts',
];

const noDom = 'The engine knows no page: hand the value in, or move this to an *.element.ts file.';
const noWallClock =
  'The engine reads no wall clock: take the simulated clock (integer milliseconds) as an argument.';
const noChance = 'The engine is deterministic: take a seeded generator as an argument.';

const domGlobals = [
  'window',
  'self',
  'document',
  'navigator',
  'location',
  'history',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'Worker',
  'postMessage',
  'customElements',
  'Element',
  'HTMLElement',
  'SVGElement',
  'Node',
  'Event',
  'CustomEvent',
  'DOMParser',
  'AudioContext',
  'matchMedia',
  'alert',
].map((name) => ({name, message: noDom}));

const clockGlobals = [
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'requestAnimationFrame',
  'performance',
].map((name) => ({name, message: noWallClock}));

const everywhere = [
  {selector: 'TSEnumDeclaration', message: 'Use a union of string literals.'},
  {selector: 'TSModuleDeclaration[kind="namespace"]', message: 'Use a module.'},
  {selector: 'TSParameterProperty', message: 'Declare the field and assign it.'},
];

const inlineStyle = {
  selector:
    'TaggedTemplateExpression[tag.name=/^(html|svg)$/] TemplateElement[value.raw=/\\sstyle=/]',
  message:
    'The page refuses style attributes (content security policy): use a class, an SVG attribute, or a ref and style.setProperty.',
};

export default tseslint.config(
  {
    ignores: ['dist/', 'dist.*/', 'node_modules/', 'test-output/', 'coverage/'],
  },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    linterOptions: {reportUnusedDisableDirectives: 'error'},
    rules: {
      // TypeScript itself checks names; its own globals list would only repeat them
      'no-undef': 'off',
      eqeqeq: ['error', 'always'],
      'prefer-const': 'error',
      '@typescript-eslint/no-unused-vars': 'off', // tsc: noUnusedLocals, noUnusedParameters
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/ban-ts-comment': ['error', {'ts-expect-error': 'allow-with-description'}],
      'no-restricted-syntax': ['error', ...everywhere],
    },
  },
  {files: ['src/**/*.element.ts', 'src/pages/**/*.ts'], ...lit['flat/recommended']},
  {
    files: ['src/**/*.element.ts', 'src/pages/**/*.ts'],
    rules: {'no-restricted-syntax': ['error', ...everywhere, inlineStyle]},
  },
  {
    files: engineFiles,
    ignores: outsideTheEngine,
    rules: {
      'no-restricted-globals': ['error', ...domGlobals, ...clockGlobals],
      'no-restricted-properties': [
        'error',
        {object: 'Date', property: 'now', message: noWallClock},
        {object: 'Math', property: 'random', message: noChance},
        {object: 'crypto', property: 'getRandomValues', message: noChance},
        {object: 'crypto', property: 'randomUUID', message: noChance},
        ...[
          'window',
          'document',
          'fetch',
          'localStorage',
          'indexedDB',
          'setTimeout',
          'setInterval',
        ].map((property) => ({object: 'globalThis', property, message: noDom})),
      ],
      'no-restricted-syntax': [
        'error',
        ...everywhere,
        {selector: 'NewExpression[callee.name="Date"]', message: noWallClock},
        {selector: 'CallExpression[callee.name="Date"]', message: noWallClock},
      ],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {group: ['lit', 'lit/*', '@lit/*', 'lit-html', 'lit-element'], message: noDom},
            {group: ['idb', 'fastify', '@fastify/*'], message: noDom},
          ],
        },
      ],
    },
  },
);
