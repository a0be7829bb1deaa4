/**
 * Deck files as modules: `import deck from '…/x.deck.yaml'` gives the checked deck as plain data, so that
 * no YAML parser reaches the first page. A deck with errors fails the build.
 */
import { readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import type { Plugin } from 'vite';

import { renderFindings } from '../deck/render-findings.ts';
import { loadWholeDeck } from '../formulas/load-deck.ts';

/** The whole id, so without a query: `?raw` still gives the text. */
const deckFile = /\.deck\.yaml$/;

export function deckModules(): Plugin {
  return {
    name: 'gatecall-deck-modules',
    load: {
      filter: { id: deckFile },
      async handler(id) {
        this.addWatchFile(id);
        const text = await readFile(id, 'utf8');
        const { deck, findings } = await loadWholeDeck(text);
        const said = renderFindings(findings, text, relative(process.cwd(), id));
        if (deck === null) this.error(`The deck has errors.\n\n${said}`);
        if (findings.length > 0) this.warn(said);
        return { code: moduleOf(deck), moduleType: 'js', map: null };
      },
    },
  };
}

/** A string literal parses faster than the same data as an object literal. */
function moduleOf(data: unknown): string {
  return `export default JSON.parse(${JSON.stringify(JSON.stringify(data))});\n`;
}
