/** The rows of DEVELOPERS.md on finding codes. */
import { readFileSync } from 'node:fs';

const section =
  readFileSync(new URL('../../../DEVELOPERS.md', import.meta.url), 'utf8').split('## Finding codes')[1] ?? '';

/** Code -> severities, as the table says. A code that stands there twice keeps its last row. */
export const documentedCodes: ReadonlyMap<string, readonly string[]> = new Map(
  [...section.matchAll(/^\| `([a-z0-9-]+)`\s*\| ([a-z, ]+?)\s*\| \S.*\|$/gm)].map(([, code, severities]) => [
    code!,
    severities!.split(', '),
  ]),
);
