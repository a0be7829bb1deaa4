import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { svelteTesting } from '@testing-library/svelte/vite';
import { defineConfig } from 'vitest/config';
import { contentSecurityPolicy } from './src/cli/build/csp-plugin.ts';
import { listModules } from './src/cli/build/module-list-plugin.ts';
import { offline } from './src/cli/build/offline-plugin.ts';
import { deckModules } from './src/cli/deck-plugin.ts';

const fromHere = (path: string) => fileURLToPath(new URL(path, import.meta.url));

const svelteHere = () => svelte({ configFile: fromHere('svelte.config.js') });

export default defineConfig({
  root: fromHere('src/app'),
  // Relative, so that the built folder runs from any path of any static host.
  base: './',
  cacheDir: fromHere('node_modules/.vite'),
  build: {
    outDir: fromHere('dist'),
    emptyOutDir: true,
    target: 'es2022',
    // The policy allows files, not data: URLs, for fonts and scripts.
    assetsInlineLimit: 0,
    // The list of what later pages need would weigh on the first one: their parts are fetched as they are
    // read, and all of them soon after the start anyway.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, parts, { hostType }) => (hostType === 'html' ? parts : []),
    },
    reportCompressedSize: false,
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
  // The reader of decks loads the parser of formulas only where it needs it.
  worker: { format: 'es' },
  plugins: [svelteHere(), deckModules(), contentSecurityPolicy(), listModules(fromHere('.')), offline()],
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          // Generous: a loaded machine is slow, not wrong.
          testTimeout: 30_000,
          root: fromHere('.'),
          environment: 'node',
          include: ['tests/unit/**/*.test.ts', 'tests/reference/**/*.test.ts'],
        },
      },
      {
        plugins: [svelteHere(), svelteTesting(), deckModules(), offline()],
        test: {
          name: 'component',
          testTimeout: 30_000,
          root: fromHere('.'),
          environment: 'happy-dom',
          css: true,
          include: ['tests/component/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'browser',
          root: fromHere('.'),
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: [fromHere('tests/browser/global-setup.ts')],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
