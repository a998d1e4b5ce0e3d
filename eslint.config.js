import eslint from '@eslint/js';
import tseslint from 'typescript-eslint';

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
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    },
  },
  {
    // `a[i]!` on a typed array in an inner loop, and on what a test has just counted.
    files: ['language/mechanics/**', 'tests/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    files: ['*.mjs', '*.cjs', '*.js'],
    languageOptions: { globals: { process: 'readonly', console: 'readonly', module: 'readonly' } },
  },
);
