import lit from 'eslint-plugin-lit';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

export default defineConfig(
  { ignores: ['dist/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      eqeqeq: 'error',
      'no-console': 'error',
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['lit/directives/unsafe-*', 'lit-html/directives/unsafe-*'],
              message: 'Text from files would become markup. Let the template escape it.',
            },
            {
              group: ['lit/directives/style-map*'],
              message: 'The content policy blocks style attributes. Set `.style=${...}` instead.',
            },
          ],
        },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'ExportDefaultDeclaration',
          message: 'Export by name, so that one thing has one name everywhere.',
        },
        {
          selector: 'MemberExpression[property.name=/^(innerHTML|outerHTML|insertAdjacentHTML)$/]',
          message: 'Text from files would become markup. Use a template or `textContent`.',
        },
        {
          selector: 'NewExpression[callee.name="Function"], CallExpression[callee.name="eval"]',
          message: 'The content policy forbids running text.',
        },
      ],
    },
  },
  {
    files: ['src/ui/**/*.ts'],
    extends: [lit.configs['flat/recommended']],
    // Lit binds the listeners of a template to their element.
    rules: { '@typescript-eslint/unbound-method': 'off' },
  },
  {
    files: ['src/cli.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['tests/**/*.ts'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // The tools that read these files ask for a default export.
    files: ['vite.config.ts', 'tests/e2e/serve.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
);
