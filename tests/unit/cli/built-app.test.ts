import { mkdirSync, mkdtempSync, rmSync, unlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildApp, isFresh } from '../../../src/cli/build/built-app.ts';
import { moduleList } from '../../../src/cli/build/module-list-plugin.ts';

let root: string;
const inputs = ['src/app/main.ts', 'decks/a.deck.yaml', 'vite.config.ts', 'package-lock.json'];

/** A file, or an existing file or folder, with a time in seconds. */
function at(path: string, seconds: number): void {
  const full = join(root, path);
  mkdirSync(dirname(full), { recursive: true });
  if (/\.\w+$/.test(path)) writeFileSync(full, '');
  utimesSync(full, seconds, seconds);
}

const settle = (seconds: number): void => {
  for (const folder of ['src/app', 'src', 'decks']) utimesSync(join(root, folder), seconds, seconds);
};

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'gatecall-built-'));
  for (const path of inputs) at(path, 1000);
  settle(1000);
  at('dist/index.html', 2000);
  at(`dist/${moduleList}`, 2000);
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

describe('the built app', () => {
  it('is up to date when it is newer than all that goes into it', () => {
    expect(isFresh(root)).toBe(true);
  });

  it.each(inputs)('is stale after a change of %s', (path) => {
    at(path, 3000);
    settle(1000);
    expect(isFresh(root)).toBe(false);
  });

  it('is stale after a file was removed', () => {
    at('src/app/extra.ts', 1000);
    settle(1000);
    expect(isFresh(root)).toBe(true);
    unlinkSync(join(root, 'src/app/extra.ts'));
    expect(isFresh(root)).toBe(false);
  });

  it.each(['index.html', moduleList])('is stale without its %s', (path) => {
    unlinkSync(join(root, 'dist', path));
    expect(isFresh(root)).toBe(false);
  });

  it('does not look into node_modules', () => {
    at('src/node_modules/.cache/a.js', 3000);
    settle(1000);
    expect(isFresh(root)).toBe(true);
  });

  it('is not built, and it is said how to mend that, where the packages are not installed', async () => {
    expect(await buildApp(root)).toContain('npm ci');
  });
});
