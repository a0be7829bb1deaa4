/**
 * Which browser the browser tests run in: the one named in the environment, else one that is installed,
 * else one that can be installed here without asking. Everything it asks of the machine goes through
 * `Machine`, so that the order of decisions is tested without a machine to match.
 */
import { spawn } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, posix, win32 } from 'node:path';
import process from 'node:process';
import { chromium } from 'playwright-core';

export interface CommandResult {
  /** Exit code; null when it could not be started or ran out of time. */
  readonly code: number | null;
  readonly output: string;
}

export interface Machine {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly isRoot: boolean;
  /** Debian or a system made from it, with apt-get. */
  readonly hasApt: boolean;
  /** Where playwright would install its own browser; the file need not exist. */
  readonly playwrightBrowser: string;
  isExecutable(path: string): boolean;
  run(
    command: string,
    args: readonly string[],
    timeoutMs: number,
    env?: Record<string, string>,
  ): Promise<CommandResult>;
  say(line: string): void;
}

const secondMs = 1000;
const versionLimitMs = 30 * secondMs;
const updateLimitMs = 180 * secondMs;
const installLimitMs = 600 * secondMs;

const mend =
  'Install Chromium or Chrome (Debian: "apt-get install chromium"), or set GATECALL_BROWSER to the path of one.';

/**
 * The path of a browser that starts.
 * @throws Error that says what was tried and how to mend it, when there is none.
 */
export async function findBrowser(machine: Machine = thisMachine()): Promise<string> {
  const named = machine.env['GATECALL_BROWSER'];
  if (named) {
    if (await starts(named, machine)) return named;
    throw new Error(`GATECALL_BROWSER names “${named}”, which does not start. ${mend}`);
  }
  const hinted = machine.env['CHROME_PATH'];
  if (hinted) {
    if (await starts(hinted, machine)) return hinted;
    machine.say(`CHROME_PATH names “${hinted}”, which does not start; looking elsewhere.`);
  }
  for (const path of [...usualPaths(machine), machine.playwrightBrowser])
    if (await starts(path, machine)) return path;
  return install(machine);
}

/** Where browsers are usually found on this kind of system, likeliest first. */
export function usualPaths({ env, platform }: Pick<Machine, 'env' | 'platform'>): readonly string[] {
  if (platform === 'win32') {
    const roots = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']];
    const inside = [
      'Google\\Chrome\\Application\\chrome.exe',
      'Chromium\\Application\\chrome.exe',
      'Microsoft\\Edge\\Application\\msedge.exe',
    ];
    return inside.flatMap((path) => roots.flatMap((root) => (root ? [win32.join(root, path)] : [])));
  }
  if (platform === 'darwin') {
    const roots = ['/Applications', ...(env['HOME'] ? [posix.join(env['HOME'], 'Applications')] : [])];
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].flatMap((name) =>
      roots.map((root) => `${root}/${name}.app/Contents/MacOS/${name}`),
    );
  }
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
  const folders = (env['PATH'] ?? '').split(':').filter((folder) => folder.startsWith('/'));
  const all = [...folders, '/usr/bin', '/usr/local/bin', '/snap/bin'];
  return [...new Set(names.flatMap((name) => all.map((folder) => posix.join(folder, name))))];
}

/** A path that exists may still be a stub that only tells how to install: ask it for its version. */
async function starts(path: string, machine: Machine): Promise<boolean> {
  if (!machine.isExecutable(path)) return false;
  // There the question opens a window instead of answering.
  if (machine.platform === 'win32') return true;
  return (await machine.run(path, ['--version'], versionLimitMs)).code === 0;
}

async function install(machine: Machine): Promise<string> {
  const tried: string[] = [];
  // Before playwright's own build: on a bare Debian that one starts only with libraries apt would bring.
  if (machine.hasApt && machine.isRoot) {
    machine.say('No browser found; installing Chromium with apt-get…');
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    await machine.run('apt-get', ['update'], updateLimitMs, quiet);
    const result = await machine.run('apt-get', ['install', '-y', 'chromium'], installLimitMs, quiet);
    for (const path of usualPaths(machine)) if (await starts(path, machine)) return path;
    tried.push(`apt-get install chromium: ${outcome(result)}`);
  }
  machine.say("No browser found; installing playwright's own Chromium…");
  const cli = join(dirname(createRequire(import.meta.url).resolve('playwright-core/package.json')), 'cli.js');
  const result = await machine.run(process.execPath, [cli, 'install', 'chromium'], installLimitMs);
  if (await starts(machine.playwrightBrowser, machine)) return machine.playwrightBrowser;
  tried.push(`playwright-core install chromium: ${outcome(result)}`);
  throw new Error(
    `No browser for the browser tests. Tried:\n${tried.map((line) => `  ${line}`).join('\n')}\n${mend}`,
  );
}

function outcome({ code, output }: CommandResult): string {
  if (code === 0) return 'done, but the browser does not start';
  const last = output.trim().split('\n').at(-1) ?? '';
  return `${code === null ? 'did not finish' : `ended with ${code}`}${last ? ` (${last})` : ''}`;
}

export function thisMachine(): Machine {
  return {
    env: process.env,
    platform: process.platform,
    isRoot: process.getuid?.() === 0,
    hasApt: existsSync('/etc/debian_version') && isExecutable('/usr/bin/apt-get'),
    playwrightBrowser: chromium.executablePath(),
    isExecutable,
    run,
    say: (line) => void process.stderr.write(`${line}\n`),
  };
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

const run: Machine['run'] = (command, args, timeoutMs, env = {}) =>
  new Promise((done) => {
    const child = spawn(command, args, {
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      timeout: timeoutMs,
      killSignal: 'SIGKILL',
    });
    let output = '';
    const keep = (chunk: Buffer): void => void (output = (output + String(chunk)).slice(-4000));
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', (error) => done({ code: null, output: error.message }));
    child.on('exit', (code) => done({ code, output }));
  });
