/** Imports point one way: web and commands, then features, then catalogue and storage, then rules. */
module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'rules-are-pure',
      comment: 'Rules import themselves and a calendar library, nothing else.',
      severity: 'error',
      from: { path: '^src/rules/' },
      to: { pathNot: ['^src/rules/', 'node_modules/temporal-'] },
    },
    {
      name: 'catalogue-and-storage-know-no-feature',
      severity: 'error',
      from: { path: '^src/(catalogue|storage)/' },
      to: { path: '^src/', pathNot: '^src/(catalogue|storage|rules|settings|package-root)' },
    },
    {
      name: 'entities-stay-at-home',
      comment: "A feature reads another feature's tables through its service, never through its entities.",
      severity: 'error',
      from: { path: '^src/([^/]+)/', pathNot: '[.]entity[.]ts$' },
      to: { path: '^src/([^/]+)/[^/]+[.]entity[.]ts$', pathNot: '^src/$1/' },
    },
    {
      name: 'views-only-show',
      severity: 'error',
      from: { path: '([.]view[.]tsx|^src/web/components/.*)$' },
      to: { path: '[.](service|entity|controller)[.]ts$', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'only-ledger-and-people-write-without-history',
      comment:
        'Every other change goes through Ledger.change. The working papers of an import and of reminders are no change of the register.',
      severity: 'error',
      from: {
        path: '^src/',
        pathNot: [
          '^src/(storage|ledger|people)/',
          '^src/register/import/(uploads|kept-mappings)',
          '^src/reminders/',
        ],
      },
      to: { path: '^src/storage/unit-of-work' },
    },
    {
      name: 'driver-in-one-file',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/storage/sqlite-driver' },
      to: { path: 'node_modules/sqlite3' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
