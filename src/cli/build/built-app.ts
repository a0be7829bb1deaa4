/** The built app in `dist/`: whether it is up to date with its sources, and how to make it so. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { moduleList } from './module-list-plugin.ts';

/** What goes into a build; a change to any of them makes `dist/` stale. */
const inputs = ['src', 'decks', 'vite.config.ts', 'svelte.config.js', 'package.json', 'package-lock.json'];
/** Written by every build: stands for the whole of it. */
const stamp = moduleList;

export const builtFolder = (root: string): string => join(root, 'dist');

/** True when `dist/` was built after the last change to anything that goes into it. */
export function isFresh(root: string): boolean {
  const made = join(builtFolder(root), stamp);
  if (!existsSync(made) || !existsSync(join(builtFolder(root), 'index.html'))) return false;
  const builtMs = statSync(made).mtimeMs;
  return inputs.every((name) => newestMs(join(root, name)) <= builtMs);
}

/**
 * Builds the app, as `npm run build` does, in a process of its own: the build must be a production build
 * whatever the environment of the caller (vitest sets NODE_ENV to "test").
 * @returns null when built; else what the build said and what to do.
 */
export async function buildApp(root: string): Promise<string | null> {
  const started = new Date();
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  if (!existsSync(vite)) return 'The packages are not installed. Run "npm ci" first.';
  const { code, output } = await runToEnd(root, [vite, 'build', '--logLevel', 'warn']);
  if (code !== 0)
    return `${withoutStack(output)}\n\nThe app could not be built (see above). After "git pull", run "npm ci" again; else mend the named file.`;
  // A file changed while the build ran is newer than the build, even if it was saved before its end.
  utimesSync(join(builtFolder(root), stamp), started, started);
  return null;
}

/** The bundler prints its own call stack after the message that names file and line. */
const withoutStack = (output: string): string =>
  output
    .split('\n')
    .filter((line) => !/^\s+at .+:\d+:\d+\)?( \{)?$/.test(line))
    .join('\n')
    .trim();

function newestMs(path: string): number {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  const entries = readdirSync(path).filter((name) => name !== 'node_modules');
  // A folder's own time tells of removed files.
  return Math.max(stat.mtimeMs, ...entries.map((name) => newestMs(join(path, name))));
}

function runToEnd(
  root: string,
  args: readonly string[],
): Promise<{ readonly code: number | null; readonly output: string }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      env: { ...process.env, NODE_ENV: 'production' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    child.stdout.on('data', (chunk) => (output += String(chunk)));
    child.stderr.on('data', (chunk) => (output += String(chunk)));
    child.on('error', (error) => done({ code: null, output: error.message }));
    child.on('exit', (code) => done({ code, output }));
  });
}
