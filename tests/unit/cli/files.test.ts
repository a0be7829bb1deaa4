import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileAt } from '../../../src/cli/server/files.ts';

let outside: string;
let folder: string;

beforeAll(() => {
  outside = mkdtempSync(join(tmpdir(), 'gatecall-files-'));
  folder = join(outside, 'dist');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  mkdirSync(join(folder, '.vite'));
  mkdirSync(join(outside, 'dist-other'));
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  writeFileSync(join(outside, 'dist-other', 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), 'page');
  writeFileSync(join(folder, 'assets', 'with space.js'), 'script');
  writeFileSync(join(folder, '.vite', 'manifest.json'), '{}');
  symlinkSync(join(outside, 'secret.txt'), join(folder, 'link.txt'));
});

afterAll(() => rmSync(outside, { recursive: true, force: true }));

describe('the file at a path', () => {
  it.each([
    ['/', 'index.html', 4],
    ['/index.html', 'index.html', 4],
    ['/assets/with%20space.js', 'with space.js', 6],
  ])('%s is %s', (path, name, bytes) => {
    const file = fileAt(folder, path);
    expect(file && [basename(file.path), file.bytes]).toEqual([name, bytes]);
  });

  it.each([
    ['a missing file', '/nothing.js'],
    ['a folder', '/assets'],
    ['a folder without a page', '/assets/'],
    ['dots', '/../secret.txt'],
    ['encoded dots', '/%2e%2e/secret.txt'],
    ['dots behind an encoded slash', '/assets%2f..%2f..%2fsecret.txt'],
    ['a backslash', '/..%5csecret.txt'],
    ['dots twice encoded', '/%252e%252e/secret.txt'],
    ['a neighbour with the same beginning', '/../dist-other/secret.txt'],
    ['a link that leads out', '/link.txt'],
    ['a hidden folder', '/.vite/manifest.json'],
    ['a zero byte', '/index.html%00.js'],
    ['an escape that is none', '/%zz'],
    ['a path without its slash', 'index.html'],
    ['an absolute address', 'http://elsewhere/index.html'],
    ['nothing', ''],
  ])('is none for %s', (_, path) => {
    expect(fileAt(folder, path)).toBeNull();
  });
});
