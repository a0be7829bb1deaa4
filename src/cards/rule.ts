/** Decision rules: each time a fresh state in which the rule decides. */
import { controlOf, neutralOf, phaseOf, sourceOf, tableOf } from '../deck/lookup.ts';
import type { AuthoredRule, Deck, DecisionTable, Phase } from '../deck/types.ts';
import { drawState } from '../rules/draw.ts';
import type { Procedure, State } from '../rules/types.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cueOf } from './cue.ts';
import { gaugesOf } from './gauges.ts';
import { partsOf } from './ids.ts';
import { ruleCards, windowMs } from './rule-cards.ts';
import type { Ask, Card, ControlRow, Prompt } from './types.ts';
import { phasePlace } from './wording.ts';

function findRule(deck: Deck, card: Card): { table: DecisionTable; rule: AuthoredRule } {
  const [tableId, ruleId] = partsOf(card.id);
  const table = tableOf(deck, tableId);
  const rule = table.rules.find(({ id }) => id === ruleId);
  if (!rule) throw new Error(`Table “${tableId}” has no rule “${ruleId}”.`);
  return { table, rule };
}

function rowsOf(deck: Deck, phase: Phase): ControlRow[] {
  return phase.controls.map((id) => {
    const control = controlOf(deck, id);
    return {
      id,
      label: control.label,
      axis: control.axis ?? null,
      actions: control.actions.map((action) => ({ id: action.id, label: action.label })),
      neutral: neutralOf(control).id,
    };
  });
}

/**
 * The question that a state of a phase puts, whatever card it is drawn for.
 * @param shown the quantities to show; all of the phase's unless told otherwise.
 */
export function controlsAsk(
  deck: Deck,
  phase: Phase,
  state: State,
  shown?: readonly string[],
): Extract<Ask, { form: 'controls' }> {
  return {
    form: 'controls',
    phase: phase.id,
    state,
    gauges: gaugesOf(deck, phase, state).filter(({ quantity }) => shown?.includes(quantity) ?? true),
    rows: rowsOf(deck, phase),
  };
}

/**
 * A prompt for a rule's card with a given state instead of a drawn one. A table may decide in several
 * phases: gate and window are those of the phase at hand.
 * @param shown the quantities to show and say; all of the phase's unless told otherwise.
 */
export function promptForState(
  procedure: Procedure,
  card: Card,
  phaseId: string,
  state: State,
  seed: number,
  shown?: readonly string[],
): Prompt {
  const { deck } = procedure;
  const phase = phaseOf(deck, phaseId);
  return {
    card: { ...card, gate: phase.from, windowMs: windowMs(phase) },
    seed,
    place: phasePlace(deck, phase),
    title: cueOf(procedure, phase, state, shown),
    detail: 'Set what needs a correction, leave the rest.',
    ask: controlsAsk(deck, phase, state, shown),
  };
}

export const rule: CardKindEntry = {
  kind: 'rule',

  make: ruleCards,

  show(procedure, card, random, seed) {
    const [tableId, ruleId] = partsOf(card.id);
    const drawn = drawState(procedure, tableId, ruleId, random);
    if (!drawn) throw new Error(`No state can be drawn for “${card.id}”.`);
    return promptForState(procedure, card, drawn.phase, drawn.state, seed);
  },

  ground({ deck }, card) {
    const { table, rule } = findRule(deck, card);
    return { because: rule.because, source: sourceOf(deck, table.source) };
  },
};
