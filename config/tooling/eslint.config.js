import tseslint from 'typescript-eslint';

const CLOCK_AND_CHANCE = [
  'Date',
  'Intl',
  'performance',
  'globalThis',
  'process',
  'console',
  'fetch',
  'setTimeout',
];

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'data/', 'src/web/assets/'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: [
          './tsconfig.json',
          './config/tooling/tsconfig.test.json',
          './src/web/phone/client/tsconfig.json',
          './src/web/phone/worker/tsconfig.json',
        ],
        tsconfigRootDir: process.cwd(),
      },
    },
    rules: {
      'max-lines': ['error', { max: 300 }],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true, IIFEs: true }],
      'max-depth': ['error', 3],
      complexity: ['error', 12],
      eqeqeq: 'error',
      'prefer-const': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': [
        'error',
        { fixStyle: 'inline-type-imports', disallowTypeAnnotations: false },
      ],
      // An empty async method implements an abstract one that other engines need.
      '@typescript-eslint/require-await': 'off',
      // A name that starts with _ is there to be left out of the rest, or to be counted.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: [
      'src/**/*.module.ts',
      'src/**/*.controller.ts',
      'src/**/*.pages.tsx',
      'src/**/*.service.ts',
      'src/**/*.guard.ts',
      'src/**/*.interceptor.ts',
      'src/**/*.filter.ts',
      'src/**/*.dto.ts',
      'src/**/*.entity.ts',
    ],
    rules: {
      // A type-only import of a class would erase the constructor that Nest injects by.
      '@typescript-eslint/consistent-type-imports': 'off',
      '@typescript-eslint/no-extraneous-class': 'off',
    },
  },
  {
    // Markup is read from top to bottom; cutting a form in two helps nobody.
    files: ['src/**/*.view.tsx'],
    rules: { 'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['src/**'],
    // The phone keeps a store of its own in the browser.
    ignores: ['src/storage/**', 'src/web/phone/client/**'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector: "CallExpression[callee.property.name='transaction']",
          message: 'Only UnitOfWork opens transactions.',
        },
        {
          selector: "CallExpression[callee.object.property.name='manager'][callee.property.name='save']",
          message: 'save opens a transaction of its own: use insert or update.',
        },
      ],
    },
  },
  {
    files: ['src/rules/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...CLOCK_AND_CHANCE.map((name) => ({ name, message: 'Rules are pure: hand it in.' })),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Rules are pure.' },
        { property: 'localeCompare', message: 'Rules do not depend on a locale.' },
        { object: 'Temporal', property: 'Now', message: 'Today is an argument.' },
      ],
    },
  },
  {
    files: ['test/**'],
    rules: {
      'max-lines-per-function': 'off',
      'max-lines': ['error', { max: 500 }],
      // supertest answers with bodies of type any: the assertions are what checks them.
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
    },
  },
  { files: ['**/*.js', '**/*.mjs', '**/*.cjs'], ...tseslint.configs.disableTypeChecked },
);
