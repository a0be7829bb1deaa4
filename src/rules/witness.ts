/** Whether a rule decides anywhere, with little, bounded work: for lists of cards, which must be there at once. */
import { quantityOf } from '../deck/lookup.ts';
import type { Budget } from './cover.ts';
import { decideIn } from './decide.ts';
import { intersect } from './intervals.ts';
import { seeded, type Random } from './random.ts';
import { lookForRegion } from './region.ts';
import { sample, typical } from './sample.ts';
import { multiplesIn } from './steps.ts';
import type { IntervalSet, PhaseRules, Procedure, Rule, State, Table } from './types.ts';

/** States tried by chance before the table is searched. */
const tries = 12;

/** Work for all the rules of a deck, in rules tried and words looked at; about a tenth of a second. */
export const witnessWork = 1_000_000;

/**
 * False when the rule decides no state of the phase whose every value is a multiple of its quantity's
 * step. True also when the work allowed doesn't reach to find out: of such a table the analysis says that it
 * is too tangled to be proved.
 * @param budget taken from, so that a whole deck's rules can share one.
 */
export function canDecide(
  procedure: Procedure,
  rules: PhaseRules,
  table: Table,
  rule: Rule,
  budget: Budget,
): boolean {
  const choices = choicesOf(procedure, rules, rule);
  if (!choices) return false;
  const random = seeded(rule.index);
  const cost = 2 * [...rules.overriding, ...rules.base].reduce((sum, one) => sum + one.rules.length, 0);
  for (let i = 0; i < tries && budget.left > 0; i++) {
    budget.left -= cost;
    if (decides(rules, table, rule, stateOf(choices, i === 0 ? null : random))) return true;
  }
  const { boxes, complete } = lookForRegion(procedure, rules, table, rule, { most: 1, budget });
  return boxes.length > 0 || !complete;
}

/** Whether it is this rule that gives its control's action in a state. */
export const decides = (rules: PhaseRules, table: Table, rule: Rule, state: State): boolean =>
  decideIn(rules, state).reasons.some((reason) => reason.table === table.id && reason.rule === rule.id);

/** A state on the steps that a rule fits, whichever decides it; null when there is none in the phase. */
export function fittingState(
  procedure: Procedure,
  rules: PhaseRules,
  rule: Rule,
  random: Random,
): State | null {
  const choices = choicesOf(procedure, rules, rule);
  return choices && stateOf(choices, random);
}

interface Choice {
  readonly quantity: string;
  readonly set: IntervalSet;
  readonly step: number;
}

/** For each input of the phase the values that the rule allows and that can be called; null when one has none. */
function choicesOf({ deck }: Procedure, rules: PhaseRules, { when }: Rule): readonly Choice[] | null {
  const choices: Choice[] = [];
  for (const [quantity, range] of rules.box) {
    const { step } = quantityOf(deck, quantity);
    const condition = when.get(quantity);
    const set = condition ? intersect(condition, [range]) : [range];
    if (condition && !set.some((piece) => multiplesIn(piece, step).count > 0)) return null;
    choices.push({ quantity, set, step });
  }
  return choices;
}

function stateOf(choices: readonly Choice[], random: Random | null): State {
  return Object.fromEntries(
    choices.map(({ quantity, set, step }) => [
      quantity,
      (random ? sample(set, step, random) : typical(set, step))!,
    ]),
  );
}
