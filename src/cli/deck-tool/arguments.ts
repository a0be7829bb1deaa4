import { parseArgs } from 'node:util';
import type { Closeness } from '../../drill/types.ts';

export interface ScenariosRequest {
  readonly command: 'scenarios';
  readonly file: string;
  readonly count: number;
  readonly seed: number;
  /** `table/rule`; null for all. */
  readonly rule: string | null;
  readonly twins: boolean;
  /** Null for all in turn. */
  readonly closeness: Closeness | null;
}

export type Request =
  | ScenariosRequest
  | { readonly command: 'help' }
  | { readonly command: 'check'; readonly files: readonly string[]; readonly json: boolean }
  | { readonly command: 'cards'; readonly file: string; readonly seed: number }
  | { readonly command: 'decide'; readonly file: string; readonly phase: string };

export type ReadRequest =
  { readonly ok: true; readonly request: Request } | { readonly ok: false; readonly message: string };

export const usage = `Judges decks, lists their cards, decides by their rules, draws situations for them.

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
      A line that is none gets, in its place, {"error": words, "line": its number}, which is also
      said on the standard error; the others are still answered. Exit code 1 when there was one.
      So the n-th line of the output belongs to the n-th of the input; empty lines don't count.

  npm run deck -- scenarios FILE [--count N] [--seed N] [--rule TABLE/RULE]
                            [--closeness wide|near|edge] [--twins]
      Draws situations in which each rule decides, in turn, a line of JSON for each:
      {"phase", "state", "cue", "actions", "overriding", "rules", "closeness", "edge"}
      --count 20 and --seed 1 unless told. --closeness says how far from an edge of the rule: one
      after the other unless told. --twins draws pairs that differ in one quantity and in what is
      required; the other half stands under "twin".
      The standard error ends with how much of the deck was drawn, and names the rules that never
      decide.

  npm run deck -- --help
`;

const wrong = (message: string): ReadRequest => ({ ok: false, message });
const asked = (request: Request): ReadRequest => ({ ok: true, request });

const optionsOf = {
  check: ['json'],
  cards: ['seed'],
  decide: ['phase'],
  scenarios: ['count', 'seed', 'rule', 'twins', 'closeness'],
} as const;

type Command = keyof typeof optionsOf;
const isCommand = (word: string): word is Command => Object.hasOwn(optionsOf, word);

interface OptionValues {
  readonly json?: boolean;
  readonly seed?: string;
  readonly phase?: string;
  readonly count?: string;
  readonly rule?: string;
  readonly twins?: boolean;
  readonly closeness?: string;
  readonly help?: boolean;
}

/** What a command line asks of the deck tool, or what is wrong with it and what to write. */
export function readArguments(argv: readonly string[]): ReadRequest {
  let values: OptionValues;
  let words: string[];
  try {
    ({ values, positionals: words } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        seed: { type: 'string' },
        phase: { type: 'string' },
        count: { type: 'string' },
        rule: { type: 'string' },
        twins: { type: 'boolean' },
        closeness: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    }));
  } catch (error) {
    return wrong(error instanceof Error ? error.message : String(error));
  }
  const [command, ...files] = words;
  if (values.help || command === 'help') return asked({ command: 'help' });
  if (command === undefined) return wrong('Say what to do: check, cards, decide or scenarios.');
  if (!isCommand(command))
    return wrong(`No command “${command}”. There are check, cards, decide and scenarios.`);
  const allowed: readonly string[] = optionsOf[command];
  const stray = Object.keys(values).find((name) => !allowed.includes(name));
  if (stray !== undefined) return wrong(`${command} takes no --${stray}.`);
  const [file] = files;
  if (file === undefined) return wrong(`${command} needs a deck file.`);
  if (command === 'check') return asked({ command, files, json: values.json ?? false });
  if (files.length > 1) return wrong(`${command} takes one deck file, not ${files.length}.`);
  const { seed = '1' } = values;
  if (!/^\d{1,9}$/.test(seed)) return wrong(`--seed is “${seed}”; give a whole number.`);
  if (command === 'cards') return asked({ command, file, seed: Number(seed) });
  if (command === 'scenarios') return readScenarios(file, Number(seed), values);
  if (values.phase === undefined) return wrong('decide needs --phase PHASE.');
  return asked({ command, file, phase: values.phase });
}

const closenesses: readonly string[] = ['wide', 'near', 'edge'] satisfies Closeness[];

function readScenarios(file: string, seed: number, values: OptionValues): ReadRequest {
  const { count = '20', rule = null, twins = false, closeness = null } = values;
  if (!/^[1-9]\d{0,6}$/.test(count)) return wrong(`--count is “${count}”; give a whole number from 1.`);
  if (closeness !== null && !closenesses.includes(closeness))
    return wrong(`--closeness is “${closeness}”; give wide, near or edge.`);
  if (twins && closeness !== null) return wrong('--twins stand as close as they can: leave out --closeness.');
  return asked({
    command: 'scenarios',
    file,
    seed,
    count: Number(count),
    rule,
    twins,
    closeness: closeness as Closeness | null,
  });
}
