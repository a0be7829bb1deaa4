/**
 * The project's whole test: types, lint, format, unit, component, build, browser. Cheap steps all run, so
 * that one go shows everything that is wrong; the build and the browser start only when they passed.
 *
 *   npm test                    everything
 *   npm test -- unit component  only these steps
 *   npm run check               types, lint and format
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildApp } from '../src/cli/build/built-app.ts';
import { findBrowser } from './browser-path.ts';
import { closingLine, none, sum, totalsOf, type Totals } from './totals.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const minuteMs = 60_000;

interface Step {
  readonly name: string;
  readonly group: string;
  /** Starts only when every step before it passed. */
  readonly dear?: boolean;
  run(): Promise<Totals>;
}

const check = ['check', 'types', 'svelte', 'lint', 'format'];
const steps: readonly Step[] = [
  tool('types', 'typescript/bin/tsc', '--noEmit', '-p', '.'),
  tool('svelte', 'svelte-check/bin/svelte-check', '--fail-on-warnings', '--output', 'human'),
  tool('lint', 'eslint/bin/eslint.js', '--max-warnings', '0', '.'),
  tool('format', 'prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'),
  tests('unit', {}),
  tests('component', {}),
  { name: 'build', group: 'browser', dear: true, run: build },
  { name: 'browser', group: 'browser', dear: true, run: browser },
];

/** A tool that passes or fails as one. A failure counts; passing is no test passed. */
function tool(name: string, bin: string, ...args: string[]): Step {
  const run = async () => {
    const code = await node([bin, ...args], {}, 10 * minuteMs);
    return code === 0 ? none : { ...none, failed: 1 };
  };
  return { name, group: name, run };
}

function tests(project: string, env: Record<string, string>): Step {
  return { name: project, group: project, run: () => vitest(project, env) };
}

async function vitest(project: string, env: Record<string, string>): Promise<Totals> {
  const folder = mkdtempSync(join(tmpdir(), 'gatecall-test-'));
  const report = join(folder, 'report.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const code = await node(
    ['vitest/vitest.mjs', 'run', '--project', project, ...reporters],
    env,
    20 * minuteMs,
  );
  let text: string | null = null;
  try {
    text = readFileSync(report, 'utf8');
  } catch {
    // No report: the exit code tells.
  }
  rmSync(folder, { recursive: true, force: true });
  return totalsOf(text, code);
}

async function build(): Promise<Totals> {
  const problem = await buildApp(root);
  if (problem === null) return none;
  process.stderr.write(`${problem}\n`);
  return { ...none, failed: 1 };
}

async function browser(): Promise<Totals> {
  try {
    const path = await findBrowser();
    return await vitest('browser', { GATECALL_BROWSER: path });
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    return { ...none, failed: 1 };
  }
}

/** Runs one of the installed packages' programs; null when it ran out of time. */
function node(
  [bin, ...args]: readonly string[],
  env: Record<string, string>,
  timeoutMs: number,
): Promise<number | null> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', bin!), ...args], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'inherit', 'inherit'],
      timeout: timeoutMs,
    });
    child.on('error', () => done(null));
    child.on('exit', (code) => done(code));
  });
}

async function main(wanted: readonly string[]): Promise<number> {
  const groups = new Set(wanted.flatMap((word) => (word === 'check' ? check : [word])));
  const known = new Set([...check, ...steps.map((step) => step.group)]);
  const unknown = wanted.find((word) => !known.has(word));
  if (unknown !== undefined) {
    process.stderr.write(`No step “${unknown}”. Steps: ${[...known].join(', ')}.\n`);
    return 2;
  }
  let totals = none;
  const lines: string[] = [];
  const failed = new Set<string>();
  for (const step of steps.filter(({ group }) => groups.size === 0 || groups.has(group))) {
    if (step.dear && failed.size > 0) {
      lines.push(`  ${step.name.padEnd(10)} not run: ${[...failed].join(', ')} failed first`);
      continue;
    }
    process.stdout.write(`\n== ${step.name}\n`);
    const startMs = performance.now();
    const result = await step.run();
    const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
    if (result.failed > 0) failed.add(step.name);
    totals = sum(totals, result);
    lines.push(`  ${step.name.padEnd(10)} ${result.failed > 0 ? 'FAILED' : 'passed'}  ${seconds} s`);
  }
  process.stdout.write(`\n${lines.join('\n')}\n`);
  const tested = totals.passed + totals.failed + totals.skipped > 0;
  if (tested) process.stdout.write(`\n${closingLine(totals)}\n`);
  return failed.size > 0 ? 1 : 0;
}

process.exitCode = await main(process.argv.slice(2));
