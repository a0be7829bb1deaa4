import { checkState } from '../../rules/check-state.ts';
import { decide } from '../../rules/decide.ts';
import type { Procedure, State } from '../../rules/types.ts';
import type { ExitCode, Io } from './io.ts';
import { soundDeck } from './sound-deck.ts';
import { writtenDecision } from './written-decision.ts';

/** Beyond this a line is no situation. */
const longestLine = 100_000;

/** `decide`: an answer for each line of the standard input, in order; empty lines get none. */
export async function decideLines(path: string, phase: string, io: Io): Promise<ExitCode> {
  const procedure = await soundDeck(path, io);
  if (procedure === null) return 1;
  if (!procedure.phases.has(phase)) {
    const known = [...procedure.phases.keys()].join(', ') || 'none';
    io.err(`${path} has no phase “${phase}”; it has: ${known}.`);
    return 2;
  }
  let exitCode: ExitCode = 0;
  let number = 0;
  for await (const line of io.lines) {
    number++;
    if (line.trim() === '') continue;
    const read = readState(procedure, phase, line);
    if (read.ok) io.out(JSON.stringify(writtenDecision(decide(procedure, phase, read.state))));
    else {
      exitCode = 1;
      const error = read.faults.join(' ');
      io.err(`line ${number}: ${error}`);
      // In the line's own place, so that the n-th answer belongs to the n-th situation.
      io.out(JSON.stringify({ error, line: number }));
    }
  }
  return exitCode;
}

type ReadState =
  { readonly ok: true; readonly state: State } | { readonly ok: false; readonly faults: readonly string[] };

function readState(procedure: Procedure, phase: string, line: string): ReadState {
  if (line.length > longestLine)
    return { ok: false, faults: [`${line.length} characters are too many for a situation.`] };
  let value: unknown;
  try {
    // Some editors begin a file with a byte order mark.
    value = JSON.parse(line.replace(/^\uFEFF/, ''));
  } catch (error) {
    return { ok: false, faults: [`not JSON: ${error instanceof Error ? error.message : String(error)}.`] };
  }
  const faults = checkState(procedure, phase, value);
  return faults.length > 0 ? { ok: false, faults } : { ok: true, state: value as State };
}
