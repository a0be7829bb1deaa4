import { parseArgs } from 'node:util';

export type Request =
  | { readonly command: 'help' }
  | { readonly command: 'check'; readonly files: readonly string[]; readonly json: boolean }
  | { readonly command: 'cards'; readonly file: string; readonly seed: number }
  | { readonly command: 'decide'; readonly file: string; readonly phase: string };

export type ReadRequest =
  { readonly ok: true; readonly request: Request } | { readonly ok: false; readonly message: string };

export const usage = `Judges decks, lists their cards, decides by their rules.

  npm run deck -- check FILE... [--json]
      Errors with line, column and mend; then, when there are none, what the decision tables
      leave open: gaps, conflicts, rules that never apply, each with an example.
      --json writes each finding as a line of JSON. Exit code 1 when there are errors.

  npm run deck -- cards FILE [--seed N]
      A line of JSON for each card: id, kind, gate, prompt, expected.
      --seed draws other situations for the rules; 1 unless told.

  npm run deck -- decide FILE --phase PHASE
      Reads situations from the standard input, a JSON object on each line, quantity to number,
      and writes for each what the rules ask for:
      {"actions": {control: action}, "overriding": action or null, "rules": [table/rule, ...]}
      A line that is none is said on the standard error with its number; the others are still
      answered. Exit code 1 when there was one.

  npm run deck -- --help
`;

const wrong = (message: string): ReadRequest => ({ ok: false, message });
const asked = (request: Request): ReadRequest => ({ ok: true, request });

const optionsOf = {
  check: ['json'],
  cards: ['seed'],
  decide: ['phase'],
} as const;

type Command = keyof typeof optionsOf;
const isCommand = (word: string): word is Command => Object.hasOwn(optionsOf, word);

/** What a command line asks of the deck tool, or what is wrong with it and what to write. */
export function readArguments(argv: readonly string[]): ReadRequest {
  let values: { json?: boolean; seed?: string; phase?: string; help?: boolean };
  let words: string[];
  try {
    ({ values, positionals: words } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        seed: { type: 'string' },
        phase: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    }));
  } catch (error) {
    return wrong(error instanceof Error ? error.message : String(error));
  }
  const [command, ...files] = words;
  if (values.help || command === 'help') return asked({ command: 'help' });
  if (command === undefined) return wrong('Say what to do: check, cards or decide.');
  if (!isCommand(command)) return wrong(`No command “${command}”. There are check, cards and decide.`);
  const allowed: readonly string[] = optionsOf[command];
  const stray = Object.keys(values).find((name) => !allowed.includes(name));
  if (stray !== undefined) return wrong(`${command} takes no --${stray}.`);
  const [file] = files;
  if (file === undefined) return wrong(`${command} needs a deck file.`);
  if (command === 'check') return asked({ command, files, json: values.json ?? false });
  if (files.length > 1) return wrong(`${command} takes one deck file, not ${files.length}.`);
  if (command === 'cards') {
    const seed = values.seed ?? '1';
    if (!/^\d{1,9}$/.test(seed)) return wrong(`--seed is “${seed}”; give a whole number.`);
    return asked({ command, file, seed: Number(seed) });
  }
  if (values.phase === undefined) return wrong('decide needs --phase PHASE.');
  return asked({ command, file, phase: values.phase });
}
