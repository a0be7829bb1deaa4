import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deckModules } from '../../../src/cli/deck-plugin.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { edited } from '../deck/edited.ts';
import { fixtureDeckText } from '../deck/fixture.ts';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gatecall-decks-'));
  writeFileSync(
    join(folder, 'main.js'),
    `import deck from './raft.deck.yaml';\nimport text from './raft.deck.yaml?raw';\nexport { deck, text };\n`,
  );
});

afterAll(() => rmSync(folder, { recursive: true }));

/** Builds a module that imports the deck, and gives the file the build made. */
async function builtWith(deckText: string): Promise<string> {
  writeFileSync(join(folder, 'raft.deck.yaml'), deckText);
  await build({
    configFile: false,
    root: folder,
    logLevel: 'silent',
    plugins: [deckModules()],
    build: { lib: { entry: join(folder, 'main.js'), formats: ['es'], fileName: 'built' }, minify: false },
  });
  const [name] = readdirSync(join(folder, 'dist'));
  return join(folder, 'dist', name!);
}

describe('a deck file imported by the app', () => {
  it('is the checked deck as data, and with ?raw its text', async () => {
    const file = await builtWith(fixtureDeckText);
    const made = (await import(/* @vite-ignore */ `file://${file}`)) as { deck: unknown; text: unknown };
    expect(made.deck).toEqual(loadDeck(fixtureDeckText).deck);
    expect(made.text).toBe(fixtureDeckText);
  });

  it('brings no parser along', async () => {
    const code = readFileSync(await builtWith(fixtureDeckText), 'utf8');
    expect(code).toContain('JSON.parse(');
    expect(code).not.toMatch(/^import /m);
    expect(code.length).toBeLessThan(3 * fixtureDeckText.length);
  });

  it('fails the build with every finding when it has errors', async () => {
    const text = edited(
      'then: hold-power, because: Leave it.',
      'then: wait, because: Leave it.',
      edited('step: 5,', 'step: 0,'),
    );
    await expect(builtWith(text)).rejects.toThrow(
      /raft\.deck\.yaml:18:90 error not-positive[^]*unknown-action/,
    );
  });

  it('does not fail the build for a warning', async () => {
    await expect(builtWith(edited('label: Middle gate', 'label: Far gate'))).resolves.toContain('dist');
  });
});
