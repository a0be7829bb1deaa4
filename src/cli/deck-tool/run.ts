import { readArguments, usage } from './arguments.ts';
import { listCards } from './cards.ts';
import { check } from './check.ts';
import { decideLines } from './decide.ts';
import type { ExitCode, Io } from './io.ts';
import { drawScenarios } from './scenarios.ts';

/**
 * The deck tool: reads a command line, does it, says everything through `io`.
 * @returns 0 all well, 1 the input has faults, 2 the command line is wrong.
 */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  const read = readArguments(argv);
  if (!read.ok) {
    io.err(`${read.message}\n\n${usage}`);
    return 2;
  }
  const { request } = read;
  switch (request.command) {
    case 'help':
      io.out(usage);
      return 0;
    case 'check':
      return check(request.files, request.json, io);
    case 'cards':
      return listCards(request.file, request.seed, io);
    case 'decide':
      return decideLines(request.file, request.phase, io);
    case 'scenarios':
      return drawScenarios(request, io);
  }
}
