import type { ExitCode, Io } from '../../../../src/cli/deck-tool/io.ts';
import { run } from '../../../../src/cli/deck-tool/run.ts';
import { fixtureDeckText } from '../../deck/fixture.ts';

export interface Ran {
  readonly exitCode: ExitCode;
  readonly out: readonly string[];
  readonly err: readonly string[];
}

/** Files that are there for every test: a faultless deck, and variants of it. */
export const good = 'good.deck.yaml';
const files: Readonly<Record<string, string>> = {
  [good]: fixtureDeckText,
  'wrong-unit.deck.yaml': fixtureDeckText.replace('unit: ft/min', 'unit: furlong'),
  'gap.deck.yaml': fixtureDeckText.replace('closure: "< 50"', 'closure: "< 45"'),
  'bad-condition.deck.yaml': fixtureDeckText.replace('closure: "< 50"', 'closure: "lots"'),
  'too-steep.deck.yaml': fixtureDeckText.replace('from: far, seconds: 35', 'from: far, seconds: 20'),
  'unused.deck.yaml': fixtureDeckText.replace(
    'sources:\n',
    'sources:\n  - { id: idle, title: Never named, kind: invented }\n',
  ),
};

/** Runs the deck tool on the files above and the given lines of standard input. */
export async function deckTool(argv: string, lines: readonly string[] = []): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const io: Io = {
    out: (line) => out.push(line),
    err: (line) => err.push(line),
    readFile: (path) => {
      const text = files[path];
      return Promise.resolve(
        text === undefined ? { ok: false, message: 'there is no such file' } : { ok: true, text },
      );
    },
    lines: (async function* () {
      yield* await Promise.resolve(lines);
    })(),
  };
  const exitCode = await run(argv.split(' ').filter(Boolean), io);
  return { exitCode, out, err };
}
