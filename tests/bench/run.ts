/** `npm run bench`: what things cost here and now, a line of JSON each. Reports, never judges. */
import { readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildApp, builtFolder, isFresh } from '../../src/cli/build/built-app.ts';
import { loadDeck } from '../../src/deck/load.ts';
import type { Deck } from '../../src/deck/types.ts';
import { readFormulas } from '../../src/formulas/read-formulas.ts';
import { analyse } from '../../src/rules/analyse.ts';
import { compileRules } from '../../src/rules/compile.ts';
import type { Procedure } from '../../src/rules/types.ts';
import { firstScripts } from '../first-scripts.ts';
import { answeredCard, askedOnce, bareStep } from './answered-card.ts';
import { dayTimes } from './day-deck.ts';
import { bruteForceFigures, drillFigures } from './drill.ts';
import { fitFigures, fitTakenFigures } from './fit.ts';
import { passFrames } from './flown-pass.ts';
import { measure } from './measure.ts';
import { builtGauges, movingGauges } from './moving-gauges.ts';
import { timeCards } from './next-card.ts';
import { passFigures } from './passes.ts';
import { planFigures } from './plan.ts';
import { rightAnswer } from './right-answer.ts';
import { syntheticDeck } from './synthetic-table.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const text = readFileSync(new URL('../../decks/marram-recovery.deck.yaml', import.meta.url), 'utf8');

/** @param spread how much more the slowest round took, as a fraction of the value. */
function report(name: string, value: number, unit: string, spread?: number): void {
  const line = {
    name,
    value: rounded(value),
    unit,
    ...(spread === undefined ? {} : { spread: rounded(spread) }),
  };
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

const rounded = (value: number): number => Number(value.toPrecision(4));

function procedureOf(deck: Deck): Procedure {
  const { procedure } = compileRules(deck);
  if (!procedure) throw new Error(`The deck “${deck.id}” does not compile.`);
  return procedure;
}

function reportAnsweredCard(procedure: Procedure): void {
  const asked = askedOnce(procedure, (prompt) => rightAnswer(procedure, prompt));
  const ours = answeredCard(procedure, asked);
  const bare = bareStep(asked.length);
  report('answered card: assess, schedule, append in memory', ours.seconds * 1e6, 'µs', ours.spread);
  report('bare ts-fsrs next()', bare.seconds * 1e6, 'µs', bare.spread);
  report('answered card to bare ts-fsrs next()', ours.seconds / bare.seconds, 'ratio');
}

function reportDeckLoad(): void {
  const load = measure(() => loadDeck(text, readFormulas), 10, 1);
  report('deck load: marram-recovery', load.seconds * 1e3, 'ms', load.spread);
  const { deck } = loadDeck(text, readFormulas);
  if (!deck) throw new Error('The demo deck has errors.');
  const compile = measure(() => compileRules(deck), 20, 20);
  report('rules compiled: marram-recovery', compile.seconds * 1e3, 'ms', compile.spread);
  reportAnsweredCard(procedureOf(deck));
}

function reportAnalysis(): void {
  const rounds = 5;
  // A procedure of its own for each call: nothing kept from the last one may help.
  const procedures = Array.from({ length: rounds + 1 }, () => procedureOf(syntheticDeck(1)));
  const run = measure((call) => analyse(procedures[call]!), rounds, 1);
  report('analysis: 200 rules, 6 inputs', run.seconds * 1e3, 'ms', run.spread);
}

function reportDrill(): void {
  const { deck } = loadDeck(text, readFormulas);
  if (!deck) throw new Error('The demo deck has errors.');
  const figures = [
    ...drillFigures(() => procedureOf(deck)),
    ...bruteForceFigures(procedureOf(deck), 200_000),
  ];
  for (const { name, value, unit, spread } of figures) report(name, value, unit, spread);
}

function reportPasses(): void {
  const { deck } = loadDeck(text, readFormulas);
  if (!deck) throw new Error('The demo deck has errors.');
  for (const { name, value, unit, spread } of passFigures(procedureOf(deck), 200))
    report(name, value, unit, spread);
}

function reportPlans(): void {
  for (const { name, value, unit, spread } of planFigures(5)) report(name, value, unit, spread);
}

async function reportFirstScripts(): Promise<void> {
  const problem = isFresh(root) ? null : await buildApp(root);
  if (problem !== null) throw new Error(problem);
  report('first scripts, gzipped', firstScripts(builtFolder(root)).gzippedBytes, 'bytes');
}

async function reportPages(): Promise<void> {
  const { toFeedback, toNextCard } = await timeCards(builtFolder(root), 20);
  for (const [name, times] of [
    ['answer to its grade painted', toFeedback],
    ['next card asked for to its prompt painted', toNextCard],
  ] as const) {
    const sorted = times.toSorted((a, b) => a - b);
    report(`${name}, median`, sorted[Math.floor(sorted.length / 2)]!, 'ms');
    report(`${name}, slowest of ${sorted.length}`, sorted.at(-1)!, 'ms');
  }
}

async function reportPassFrames(): Promise<void> {
  for (const small of [false, true]) {
    const { betweenMs, workMs } = await passFrames(builtFolder(root), 4, small);
    const where = small ? 'phone' : 'desktop';
    const at95 = (times: readonly number[]) =>
      times.toSorted((a, b) => a - b)[Math.floor(times.length * 0.95)]!;
    report(`a pass under way, ${where}: frame to frame, 95th percentile`, at95(betweenMs), 'ms');
    report(`a pass under way, ${where}: a frame's work until painted, 95th percentile`, at95(workMs), 'ms');
  }
}

async function reportMovingGauges(): Promise<void> {
  const built = await builtGauges();
  for (const compact of [false, true]) {
    const { betweenMs, workMs } = await movingGauges(built, compact);
    const where = compact ? 'phone' : 'desktop';
    const at95 = (times: readonly number[]) =>
      times.toSorted((a, b) => a - b)[Math.floor(times.length * 0.95)]!;
    report(`five moving gauges, ${where}: frame to frame, 95th percentile`, at95(betweenMs), 'ms');
    report(`five moving gauges, ${where}: a frame's work until painted, 95th percentile`, at95(workMs), 'ms');
  }
  rmSync(built, { recursive: true });
}

async function reportDay(): Promise<void> {
  const { times, moved } = await dayTimes();
  const sorted = times.toSorted((a, b) => a - b);
  const name = `the demo deck for another day, ${moved} values moved on ${times.length} days`;
  report(`${name}: the first day`, times[0]!, 'ms');
  report(`${name}: median`, sorted[Math.floor(sorted.length / 2)]!, 'ms');
  report(`${name}: slowest`, sorted.at(-1)!, 'ms');
}

/** `npm run bench -- fits` also tries how often a fit is taken, which takes a minute. */
async function reportFit(): Promise<void> {
  const figures = [...(await fitFigures()), ...(process.argv.includes('fits') ? fitTakenFigures(40) : [])];
  for (const { name, value, unit, spread } of figures) report(name, value, unit, spread);
}

reportDeckLoad();
reportAnalysis();
reportDrill();
reportPasses();
reportPlans();
await reportFit();
await reportDay();
await reportFirstScripts();
await reportPages();
await reportMovingGauges();
await reportPassFrames();
