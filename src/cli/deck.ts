/** `npm run deck`: the deck tool on this machine's files and streams. */
import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { FileText } from './deck-tool/io.ts';
import { run } from './deck-tool/run.ts';

/** Far above any deck; the loader has the exact limit. Keeps a wrong path (a film) out of memory. */
const mostBytes = 16 * 1024 * 1024;

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder, not a file',
  EACCES: 'this user may not read it',
};

async function read(path: string): Promise<FileText> {
  const parts: Buffer[] = [];
  try {
    for await (const part of createReadStream(path, { end: mostBytes })) parts.push(part as Buffer);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    return { ok: false, message: reasons[code ?? ''] ?? message };
  }
  const bytes = Buffer.concat(parts);
  if (bytes.length > mostBytes)
    return { ok: false, message: `it is too large for a deck (over ${mostBytes} bytes)` };
  return { ok: true, text: bytes.toString('utf8') };
}

// The reader went away (`| head`): there is nobody left to write for.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));

process.exitCode = await run(process.argv.slice(2), {
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
  readFile: read,
  // Made only when asked for: it starts to read at once.
  get lines() {
    return createInterface({ input: process.stdin, crlfDelay: Infinity });
  },
});
