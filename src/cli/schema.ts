/** `npm run schema`: writes `shared/deck.schema.json` anew from the deck's schema. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { deckJsonSchemaText } from '../deck/json-schema.ts';

const file = new URL('../../shared/deck.schema.json', import.meta.url);
mkdirSync(new URL('.', file), { recursive: true });
writeFileSync(file, deckJsonSchemaText());
process.stdout.write(`Wrote ${fileURLToPath(file)}\n`);
