import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import typescript from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

export default defineConfig(
  { ignores: ['dist/', 'coverage/', 'node_modules/', '**/node_modules/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  typescript.configs.strict,
  svelte.configs.recommended,
  {
    files: ['**/*.ts', '**/*.svelte'],
    languageOptions: {
      parserOptions: {
        projectService: true,
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: ['.svelte'],
      },
    },
    rules: {
      // Indexing is checked by the compiler; a `!` after a proof in the line above is the idiom here.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': 'error',
      // The compiler resolves names, including types and runes, better than this rule does.
      'no-undef': 'off',
      // `== null` is the one way to say "null or undefined".
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
    },
  },
  {
    // Rules that need types: a promise nobody waits for, a case nobody handles.
    files: ['**/*.ts'],
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      globals: globals.browser,
      parserOptions: { parser: typescript.parser, svelteConfig },
    },
    rules: {
      // Compiler warnings, accessibility among them, fail the check.
      'svelte/valid-compile': 'error',
      'svelte/no-at-html-tags': 'error',
      // It takes every Map, Set and Date for state, also the local ones that nothing watches.
      'svelte/prefer-svelte-reactivity': 'off',
      // `let` for props that a component writes to and `const` for the rest, in one destructuring.
      'prefer-const': 'off',
      'svelte/prefer-const': ['error', { destructuring: 'all' }],
    },
  },
  { files: ['*.js', '*.ts', 'src/cli/**', 'tests/**'], languageOptions: { globals: globals.node } },
);
