// The import table of docs/architecture.md as data: imports point down only.
const may = {
  plane: [],
  arrangement: ['plane'],
  artwork: ['plane', 'arrangement'],
  geometry: ['plane', 'arrangement'],
  cutting: ['plane', 'arrangement', 'geometry'],
  materials: ['plane'],
  job: ['plane', 'materials'],
  proof: ['plane', 'arrangement', 'geometry', 'cutting', 'materials', 'job'],
  wording: ['plane', 'materials', 'job', 'proof'],
  // the front door: the only place where readers and proofs meet
  redraw: ['plane', 'arrangement', 'geometry', 'cutting'],
  pourproof: ['plane', 'arrangement', 'redraw', 'artwork', 'materials', 'job', 'proof', 'wording'],
};

module.exports = {
  forbidden: [
    ...Object.entries(may).map(([name, lower]) => ({
      name: `${name}-imports-only-downwards`,
      severity: 'error',
      from: { path: `^packages/${name}/src` },
      to: { path: '^(packages|apps)/', pathNot: `^packages/(${[name, ...lower].join('|')})/` },
    })),
    {
      name: 'apps-do-not-import-apps',
      severity: 'error',
      from: { path: '^apps/([^/]+)/' },
      to: { path: '^apps/', pathNot: '^apps/$1/' },
    },
    {
      name: 'packages-run-in-node-and-browser',
      severity: 'error',
      from: { path: '^packages/[^/]+/src', pathNot: '[.]test[.]ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'svgjs-only-in-draw',
      severity: 'error',
      from: { path: '^apps/viewer/src', pathNot: '^apps/viewer/src/draw/' },
      to: { path: 'svgdotjs' },
    },
    {
      // types that name each other are no cycle at run time
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'no-deep-imports',
      severity: 'error',
      from: { path: '^(packages|apps)/([^/]+)/' },
      // the entries of a package are its index.ts and what its `exports` name beside it
      to: {
        path: '^packages/([^/]+)/src/(?!index[.]ts$)',
        pathNot: [
          '^$1/$2/',
          '^packages/artwork/src/(format|svg|dxf|lettering)[.]ts$',
          '^packages/pourproof/src/many[.]ts$',
        ],
      },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|dist-types)/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['@pourproof/source', 'import', 'default'],
    },
  },
};
