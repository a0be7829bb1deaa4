import { cueOf } from '../../cards/cue.ts';
import { phaseOf } from '../../deck/lookup.ts';
import { coverage } from '../../drill/coverage.ts';
import { drawScenario } from '../../drill/scenario.ts';
import { cardOf, sayUnreachable, targetsOf } from '../../drill/targets.ts';
import { drawTwin } from '../../drill/twin.ts';
import type { Closeness, DrillFact, RuleTarget, Scenario, Targets, Twin } from '../../drill/types.ts';
import { seeded, shuffled, type Random } from '../../rules/random.ts';
import type { Decision, Procedure, State } from '../../rules/types.ts';
import type { ScenariosRequest } from './arguments.ts';
import type { ExitCode, Io } from './io.ts';
import { soundDeck } from './sound-deck.ts';
import { writtenDecision } from './written-decision.ts';

const inTurn: readonly Closeness[] = ['wide', 'near', 'edge'];

/**
 * `scenarios`: situations drawn from the regions of the rules, or twin pairs of them, a line of JSON
 * each. All targets have had their turn before one comes again. What was covered, and which rules can't
 * be drawn, is said on the standard error.
 */
export async function drawScenarios(request: ScenariosRequest, io: Io): Promise<ExitCode> {
  const { file, count, seed, rule, twins, closeness } = request;
  const procedure = await soundDeck(file, io);
  if (procedure === null) return 1;
  const all = targetsOf(procedure);
  const targets = rule === null ? all : ofRule(all, rule);
  if (targets.rules.length + targets.unreachable.length === 0) {
    io.err(
      rule === null
        ? `${file} has no decision rules.`
        : `${file} has no rule “${rule}”. Name it as TABLE/RULE; “decide” and “scenarios” write them so.`,
    );
    return rule === null ? 1 : 2;
  }
  const random = seeded(seed);
  const facts: DrillFact[] = [];
  const pool: readonly RuleTarget[] = twins ? targets.twins : targets.rules;
  for (let i = 0, order: readonly RuleTarget[] = []; i < count && pool.length > 0; i++) {
    if (i % pool.length === 0) order = shuffled(pool, random);
    const target = order[i % pool.length]!;
    io.out(
      JSON.stringify(lineFor(procedure, target, closeness ?? inTurn[i % inTurn.length]!, random, facts)),
    );
  }
  for (const { phase, table, rule: id, why } of targets.unreachable)
    io.err(`${table}/${id} can't be drawn in “${phase}”: it ${sayUnreachable(why)}.`);
  io.err(sayCoverage(targets, facts));
  return 0;
}

function ofRule({ rules, inputs, edges, twins, unreachable }: Targets, name: string): Targets {
  const isAsked = ({ table, rule }: RuleTarget) => `${table}/${rule}` === name;
  return {
    rules: rules.filter(isAsked),
    inputs: inputs.filter(isAsked),
    edges: edges.filter(isAsked),
    twins: twins.filter(isAsked),
    unreachable: unreachable.filter(isAsked),
  };
}

function lineFor(
  procedure: Procedure,
  target: RuleTarget & { readonly quantity?: string },
  closeness: Closeness,
  random: Random,
  facts: DrillFact[],
): object {
  const { quantity } = target;
  // A target of `targetsOf` can always be drawn.
  if (quantity !== undefined) {
    const twin = drawTwin(procedure, { ...target, quantity }, random)!;
    facts.push(factOf(target, { closeness: 'edge', edge: quantity, twin: true }));
    return twinLine(procedure, twin);
  }
  const scenario = drawScenario(procedure, target, closeness, random)!;
  const { edge } = scenario;
  facts.push(factOf(target, { closeness: scenario.closeness, ...(edge ? { edge: edge.quantity } : {}) }));
  return scenarioLine(procedure, scenario);
}

const factOf = (target: RuleTarget, mark: Omit<DrillFact, 'phase' | 'card' | 'desired'>): DrillFact => ({
  phase: target.phase,
  card: cardOf(target),
  desired: true,
  ...mark,
});

/** The form of the lines is a promise to other programs. */
function scenarioLine(procedure: Procedure, { phase, state, closeness, edge, decision }: Scenario): object {
  return { phase, ...situation(procedure, phase, state, decision), closeness, ...(edge ? { edge } : {}) };
}

function twinLine(procedure: Procedure, twin: Twin): object {
  const { phase, quantity, at, state, other, decision, otherDecision } = twin;
  return {
    phase,
    ...situation(procedure, phase, state, decision),
    twin: { quantity, at, ...situation(procedure, phase, other, otherDecision) },
  };
}

function situation(procedure: Procedure, phase: string, state: State, decision: Decision): object {
  const cue = cueOf(procedure, phaseOf(procedure.deck, phase), state);
  return { state, cue, ...writtenDecision(decision) };
}

function sayCoverage(targets: Targets, facts: readonly DrillFact[]): string {
  const { rules, inputs, twins } = coverage(targets, facts);
  const inFile = new Set(targets.rules.map(({ table, rule }) => `${table}/${rule}`)).size;
  const parts = [
    `${rules.drilled} of ${rules.of} rules${inFile < rules.of ? ` (${inFile} of the deck, each counted once in every phase it serves)` : ''}`,
    `${inputs.drilled} of ${inputs.of} inputs at their edges`,
    `${twins.drilled} of ${twins.of} twin pairs`,
  ];
  return `Drawn: ${parts.join(', ')}.`;
}
