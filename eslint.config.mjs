import eslint from '@eslint/js';
import tseslint from 'typescript-eslint';
import lookups from './eslint-lookups.mjs';
import standIns from './eslint-stand-ins.mjs';

export default tseslint.config(
  { ignores: ['dist/', '.cache/', 'node_modules/', 'language/grammar/generated/', 'coverage/'] },
  { linterOptions: { noInlineConfig: true } },
  eslint.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      // Numbers read well inside a sentence.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // With `noUncheckedIndexedAccess` every index may be undefined; `!` says what the line before has settled.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    },
  },
  {
    files: ['language/**/*.ts', 'extension/**/*.ts'],
    // Kernels of the solver take their arrays one by one, since an object for each call would cost more than the work; a row of the
    // catalogue is read as a row.
    ignores: ['language/mechanics/linear-algebra/**', 'language/mechanics/plate/**', 'language/catalogue/entry.ts'],
    rules: { 'max-params': ['error', 5] },
  },
  {
    files: ['language/**/*.ts', 'extension/**/*.ts'],
    plugins: { lookups },
    rules: { 'lookups/by-map': 'error' },
  },
  {
    files: ['language/**/*.ts'],
    // `taken.ts` is where the catalogue is asked; the plate solver and statistics know no recipe.
    ignores: ['language/mechanics/**', 'language/grammar/**'],
    plugins: { 'stand-ins': standIns },
    rules: { 'stand-ins/unknown': 'error' },
  },
  {
    files: ['tests/scale/goals/*.cjs'],
    languageOptions: { globals: { process: 'readonly', Buffer: 'readonly', require: 'readonly' } },
  },
  {
    files: ['*.mjs', '*.cjs', '*.js'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', module: 'readonly' } },
  },
);
