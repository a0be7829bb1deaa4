import { svelte } from '@sveltejs/vite-plugin-svelte';
import { svelteTesting } from '@testing-library/svelte/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src/app',
  base: './',
  build: { outDir: '../../dist', emptyOutDir: true, target: 'es2022' },
  plugins: [svelte()],
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          root: '.',
          environment: 'node',
          include: ['tests/unit/**/*.test.ts', 'tests/reference/**/*.test.ts'],
        },
      },
      {
        plugins: [svelte(), svelteTesting()],
        test: {
          name: 'component',
          root: '.',
          environment: 'happy-dom',
          css: true,
          include: ['tests/component/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'browser',
          root: '.',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
