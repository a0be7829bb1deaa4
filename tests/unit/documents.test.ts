import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/deck-tool/run.ts';

const root = new URL('../../', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, root), 'utf8');
const scripts = Object.keys((JSON.parse(read('package.json')) as { scripts: object }).scripts);
const readme = read('README.md');
const developers = read('DEVELOPERS.md');

describe.each([
  ['README.md', readme],
  ['DEVELOPERS.md', developers],
])('%s', (_, text) => {
  it('names only npm scripts that exist', () => {
    const named = [...text.matchAll(/npm run ([\w-]+)/g)].map((match) => match[1]!);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !scripts.includes(name))).toEqual([]);
  });

  it('links only to files that exist', () => {
    const links = [...text.matchAll(/\]\(([^)#:]+)\)/g)].map((match) => match[1]!);
    expect(links.length).toBeGreaterThan(0);
    expect(links.filter((link) => !existsSync(new URL(link, root)))).toEqual([]);
  });

  it('names only files and folders of the project that exist', () => {
    const named = [...text.matchAll(/`((?:src|tests|shared|decks)\/[\w./-]+)`/g)].map((match) => match[1]!);
    expect(named.filter((path) => !existsSync(new URL(path, root)))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  it('explains each npm script', () => {
    const explained = (name: string): boolean =>
      [`npm ${name}`, `npm run ${name}`].some((command) => developers.includes(`| \`${command}`));
    expect(scripts.filter((name) => !explained(name))).toEqual([]);
  });

  it('has every folder of src on its map', () => {
    const folders = readdirSync(fileURLToPath(new URL('src', root)), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(folders.filter((name) => !new RegExp(`^ {2}${name}/ `, 'm').test(developers))).toEqual([]);
  });
});

describe('README.md', () => {
  it('names every deck that comes with the app', () => {
    const decks = readdirSync(fileURLToPath(new URL('decks', root))).filter((name) => name.endsWith('.yaml'));
    const ids = decks.map((name) => name.replace(/\.deck\.yaml$/, ''));
    expect(ids.length).toBeGreaterThan(0);
    expect(ids.filter((id) => !readme.includes(`\`${id}\``))).toEqual([]);
  });

  it('shows situations, a command and answers that belong together', async () => {
    const source = readme.match(/^cp (decks\/\S+) (\S+)$/m)!;
    const command = readme.match(/npm run deck -s -- (decide (\S+) --phase \S+) </)!;
    expect(command[2]).toBe(source[2]);
    const [situations, answers] = [...readme.matchAll(/```text\n([^`]*)\n```/g)].map((block) =>
      block[1]!.split('\n'),
    );
    const out: string[] = [];
    const err: string[] = [];
    const exitCode = await run(command[1]!.split(' '), {
      out: (line) => void out.push(line),
      err: (line) => void err.push(line),
      readFile: () => Promise.resolve({ ok: true, text: read(source[1]!) }),
      lines: eachOf(situations!),
    });
    expect([exitCode, err]).toEqual([0, []]);
    expect(out).toEqual(answers);
  });

  it('shows formulas that stand in a deck', () => {
    const [block] = /```yaml\n([^`]*)```/.exec(readme)!.slice(1);
    const deck = read('decks/marram-recovery.deck.yaml');
    for (const line of block!.trimEnd().split('\n')) expect(deck).toContain(line);
  });

  it('says that it is no authority', () => {
    expect(readme).toMatch(/not a source of procedure/);
    expect(readme).toMatch(/licensed instructor decide/);
  });
});

async function* eachOf(lines: readonly string[]): AsyncGenerator<string> {
  yield* await Promise.resolve(lines);
}
