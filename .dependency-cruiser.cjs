// The one-way arrows of the house. A layer may import itself and what its row names; nothing else.
// `types` are layers of which only types may be taken.
const layers = {
  parts: {may: []},
  content: {may: ['parts']},
  circuits: {may: ['parts', 'content']},
  plant: {may: ['parts', 'content']},
  faults: {may: ['parts', 'content'], types: ['circuits']},
  sequences: {may: ['parts', 'content', 'circuits', 'plant', 'faults']},
  meter: {may: ['parts', 'circuits']},
  diagrams: {may: ['parts', 'content']},
  bench: {
    may: ['parts', 'content', 'circuits', 'plant', 'faults', 'sequences', 'meter', 'diagrams'],
  },
};
layers.diagnosis = {may: [...layers.bench.may, 'bench']};
layers.hookup = {may: [...layers.diagnosis.may, 'diagnosis']};
layers.classroom = {may: [...layers.hookup.may, 'hookup']};
layers.store = {may: [], types: ['bench']};
layers.pages = {may: [...layers.classroom.may, 'classroom', 'store']};
layers.cli = {may: [...layers.classroom.may, 'classroom']};
layers.server = {may: [...layers.classroom.may, 'classroom']};

const names = Object.keys(layers);
const anyOf = (list) => `^src/(${list.join('|')})/`;

/** Files of a layer that show it: they may know Lit, the page and the shared look (src/pages/design). */
const shown = '\\.(element|styles|worker)\\.ts$';

const arrows = names.flatMap((name) => {
  const {may, types = []} = layers[name];
  const forbidden = names.filter((other) => other !== name && !may.includes(other));
  const valuesToo = forbidden.filter((other) => !types.includes(other));
  const rules = [
    {
      name: `${name}-imports-only-what-stands-before-it`,
      comment: `src/${name} may import: ${[name, ...may].join(', ')}.`,
      severity: 'error',
      from: {path: anyOf([name])},
      to: {path: anyOf(valuesToo), pathNot: '^src/pages/design/'},
    },
  ];
  if (types.length > 0) {
    rules.push({
      name: `${name}-takes-only-types-of-${types.join('-')}`,
      comment: `src/${name} may take types, not code, of: ${types.join(', ')}.`,
      severity: 'error',
      from: {path: anyOf([name])},
      to: {path: anyOf(types), dependencyTypesNot: ['type-only']},
    });
  }
  return rules;
});

/** Layers whose model files are the engine. */
const engine = names.filter((name) => !['pages', 'store', 'server', 'cli'].includes(name));

module.exports = {
  forbidden: [
    ...arrows,
    {
      name: 'look-is-for-elements',
      comment: 'Only elements and their styles may import the shared look of the pages.',
      severity: 'error',
      from: {path: anyOf(names.filter((name) => name !== 'pages')), pathNot: shown},
      to: {path: '^src/pages/design/'},
    },
    {
      name: 'look-stands-alone',
      comment: 'The shared look imports nothing of the tutor.',
      severity: 'error',
      from: {path: '^src/pages/design/'},
      to: {path: '^src/', pathNot: '^src/pages/design/'},
    },
    {
      name: 'engine-knows-no-page',
      comment: 'Engine files import no Lit, no browser database and no server.',
      severity: 'error',
      from: {path: anyOf(engine), pathNot: shown},
      to: {
        path: '(^|/)node_modules/(lit|lit-html|lit-element|@lit|idb|fastify|@fastify)/',
      },
    },
    {
      name: 'engine-imports-no-element',
      comment: 'A model file knows nothing of the element that shows it.',
      severity: 'error',
      from: {path: anyOf(engine), pathNot: shown},
      to: {path: '\\.(element|styles)\\.ts$'},
    },
    {
      name: 'engine-runs-in-a-browser',
      comment:
        'Engine files use no module of Node, so that they run in a worker too. Files named *.node.ts, and scripts named build-*.ts, run in Node only.',
      severity: 'error',
      from: {
        path: anyOf(engine),
        pathNot: '(\\.node\\.ts|/node/[^/]+\\.ts|/build-layouts\\.ts|/write-json-schema\\.ts)$',
      },
      to: {dependencyTypes: ['core']},
    },
    {
      name: 'layout-engine-only-for-diagrams',
      comment: 'elk is large: only src/diagrams loads it, and only when needed.',
      severity: 'error',
      from: {path: '^src/', pathNot: '^src/diagrams/'},
      to: {path: 'node_modules/elkjs/'},
    },
    {
      name: 'no-cycles',
      comment: 'Two files that need each other are one file, or lack a third.',
      severity: 'error',
      from: {path: '^src/'},
      to: {circular: true},
    },
    {
      name: 'every-import-exists',
      severity: 'error',
      from: {path: '^src/'},
      to: {couldNotResolve: true},
    },
    {
      name: 'known-folders-only',
      comment: 'A new folder in src needs its row in the table of layers.',
      severity: 'error',
      from: {},
      to: {path: '^src/[^/]+/', pathNot: anyOf(names)},
    },
    {
      name: 'shipped-code-uses-shipped-packages',
      comment:
        'src imports nothing that package.json lists for development only, and nothing of tests.',
      severity: 'error',
      from: {path: '^src/'},
      to: {dependencyTypes: ['npm-dev', 'npm-no-pkg'], dependencyTypesNot: ['type-only']},
    },
    {
      name: 'no-tests-in-src',
      severity: 'error',
      from: {path: '^src/'},
      to: {path: '^tests/'},
    },
  ],
  options: {
    doNotFollow: {path: 'node_modules'},
    exclude: {path: '\\?(worker|raw|url|inline)$'},
    tsPreCompilationDeps: true,
    tsConfig: {fileName: 'tsconfig.json'},
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.js', '.mjs', '.json'],
    },
  },
};
