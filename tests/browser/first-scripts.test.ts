import { describe, expect, inject, it } from 'vitest';
import { firstScripts } from '../first-scripts.ts';

describe('the scripts of the first page', () => {
  const { gzippedBytes, modules, files } = firstScripts(inject('built'));

  it('are at most 90 kB, gzipped', () => {
    expect(files.length).toBeGreaterThan(0);
    expect(gzippedBytes).toBeLessThanOrEqual(90_000);
  });

  it('hold the app', () => {
    expect(modules).toContain('src/app/main.ts');
  });

  it.each([
    ['the YAML parser', /node_modules\/yaml\//],
    ['the whole of zod', /node_modules\/zod\/v4\/classic\//],
    ['the deck loader', /^src\/deck\/load/],
    ['the analysis of rules', /^src\/rules\/analy/],
  ])('leave %s for later', (_, pattern) => {
    expect(modules.filter((name) => pattern.test(name))).toEqual([]);
  });
});
