import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { impurities, layers, tooLong, wrongImports, type SourceFile } from '../architecture.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

function filesUnder(folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|js|svelte)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.includes('node_modules'))
    .map((path) => ({
      path: relative(root, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }));
}

const sources = filesUnder('src');
const tests = filesUnder('tests');

describe('the house', () => {
  it('has files to look at', () => {
    expect(sources.length).toBeGreaterThan(20);
  });

  it('lets imports go one way', () => {
    expect(sources.flatMap(wrongImports)).toEqual([]);
  });

  it('keeps clock, chance, storage and page out of its core', () => {
    expect(sources.flatMap(impurities)).toEqual([]);
  });

  it('keeps files to one subject', () => {
    expect([...sources, ...tests].flatMap(tooLong)).toEqual([]);
  });

  it('has a layer for every folder of src', () => {
    const folders = readdirSync(join(root, 'src'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(folders.filter((name) => !layers.flat().includes(name))).toEqual([]);
  });

  it('has nothing at the top that has no place there', () => {
    const allowed = [
      ...['README.md', 'DEVELOPERS.md', 'LICENSE', 'package.json', 'package-lock.json'],
      ...['vite.config.ts', 'svelte.config.js', 'tsconfig.json', 'eslint.config.js'],
      ...['src', 'decks', 'tests', 'shared', 'node_modules', 'dist'],
    ];
    const there = readdirSync(root).filter((name) => !name.startsWith('.'));
    expect(there.filter((name) => !allowed.includes(name))).toEqual([]);
  });
});

const file = (path: string, text: string): SourceFile => ({ path, text });

describe('the check of imports', () => {
  it.each([
    ['up the layers', 'src/deck/load.ts', `import { decide } from '../rules/decide.ts';`],
    ['for a type', 'src/rules/box.ts', `import type { Card } from '../cards/types.ts';`],
    ['later', 'src/memory/plan.ts', `const late = () => import('../record/fold.ts');`],
    ['in a type position', 'src/rules/a.ts', `type A = import('../cards/types.ts').Card;`],
    ['passed on', 'src/cards/index.ts', `export { assess } from '../grading/assess.ts';`],
    ['between neighbours', 'src/cards/rule.ts', `import '../memory/scheduler.ts';`],
    ['from the app to the command line', 'src/app/a.ts', `import '../cli/start.ts';`],
    ['in a component', 'src/app/A.svelte', `<script lang="ts">import '../cli/a.ts';</script>`],
    ['of the memory library elsewhere', 'src/app/a.ts', `import { fsrs } from 'ts-fsrs';`],
    ['of Node in the app', 'src/app/a.ts', `import { readFileSync } from 'node:fs';`],
    ['of a part of a package', 'src/rules/a.ts', `import { mount } from 'svelte/internal';`],
  ])('finds one that goes wrong %s', (_, path, text) => {
    expect(wrongImports(file(path, text))).toHaveLength(1);
  });

  it.each([
    ['down the layers', 'src/record/fold.ts', `import '../deck/types.ts';`],
    ['within a folder', 'src/rules/decide.ts', `import './box.ts';`],
    ['from grading to cards', 'src/grading/a.ts', `import '../cards/types.ts';`],
    ['of the memory library at home', 'src/memory/scheduler.ts', `import 'ts-fsrs';`],
    ['that only stands in a comment', 'src/deck/a.ts', `// import '../app/a.ts'`],
  ])('lets pass one %s', (_, path, text) => {
    expect(wrongImports(file(path, text))).toEqual([]);
  });
});

describe('the check of the core', () => {
  it.each([
    'const now = Date.now();',
    'const now = new Date();',
    'const now = Date();',
    'const chance = Math.random();',
    'const start = performance.now();',
    'window.alert(1);',
    'const text = document.title;',
    `localStorage.setItem('a', 'b');`,
    `indexedDB.open('a');`,
    `void fetch('/a');`,
    'const made = { id: crypto.randomUUID() };',
    'setTimeout(() => {}, 1);',
  ])('finds %s', (text) => {
    expect(impurities(file('src/rules/a.ts', text))).toHaveLength(1);
    expect(impurities(file('src/record/store.ts', text))).toEqual([]);
    expect(impurities(file('src/app/a.ts', text))).toEqual([]);
  });

  it.each([
    'const then = new Date(nowMs);',
    '// never Date.now()',
    `const words = 'Math.random()';`,
    'const grade = { performance: now, window: 3 };',
    'const { performance } = grade; const now = performance.length;',
    `const document = parseDocument(text); document.toJS();`,
    'interface Card { window: number; document: string }',
    'const ms = card.window * timing;',
  ])('lets pass %s', (text) => {
    expect(impurities(file('src/rules/a.ts', text))).toEqual([]);
  });
});

describe('the check of length', () => {
  it('finds a file of 301 lines, and lets pass one of 300', () => {
    expect(tooLong(file('src/a.ts', 'x\n'.repeat(301)))).toHaveLength(1);
    expect(tooLong(file('src/a.ts', 'x\n'.repeat(300)))).toEqual([]);
  });
});
