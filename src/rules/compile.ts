/** A deck's tables with their conditions read, ready to be decided with. */
import type { Finding } from '../deck/findings.ts';
import { controlOf, neutralOf } from '../deck/lookup.ts';
import type { DeckParts } from '../deck/parts.ts';
import type { Deck, Phase } from '../deck/types.ts';
import { ConditionReader } from './conditions.ts';
import { interval } from './intervals.ts';
import type { PhaseRules, Procedure, Table } from './types.ts';

export interface Compiled {
  /** Null when a condition can't be read. */
  readonly procedure: Procedure | null;
  readonly findings: readonly Finding[];
}

/** Reads every condition of a checked deck, those of rules and those of words for intervals. */
export function compileRules(deck: Deck): Compiled {
  const reader = new ConditionReader((id) => deck.quantities.find((quantity) => quantity.id === id));
  deck.quantities.forEach((quantity, q) => reader.words(quantity, (_, w) => ['quantities', q, 'words', w]));
  const tables = (deck.tables ?? []).map((table, t) =>
    reader.table(table, (_, r) => ['tables', t, 'rules', r]),
  );
  const faulty = reader.findings.some(({ severity }) => severity === 'error');
  const phases = faulty ? null : (deck.phases ?? []).map((phase) => rulesOf(deck, phase, tables));
  return {
    procedure: phases && { deck, phases: new Map(phases.map((rules) => [rules.phase.id, rules])) },
    findings: reader.findings,
  };
}

/** What can be said of the conditions in the sound parts of a deck that is faulty elsewhere. */
export function checkConditions({ quantities, tables, known, pathOf }: DeckParts): readonly Finding[] {
  const reader = new ConditionReader(known.quantity.get);
  for (const quantity of quantities) reader.words(quantity, (word) => pathOf(word));
  for (const table of tables) reader.table(table, (rule) => pathOf(rule));
  return reader.findings;
}

function rulesOf(deck: Deck, phase: Phase, tables: readonly Table[]): PhaseRules {
  const here = tables.filter(({ authored }) => authored.phases.includes(phase.id));
  const place = ({ control }: Table) => phase.controls.indexOf(control);
  return {
    phase,
    box: new Map(Object.entries(phase.state).map(([id, range]) => [id, interval(...range)])),
    overriding: here.filter(({ authored }) => authored.overriding === true),
    base: here
      .filter((table) => table.authored.overriding !== true && place(table) >= 0)
      .sort((one, other) => place(one) - place(other)),
    neutral: new Map(phase.controls.map((id) => [id, neutralOf(controlOf(deck, id)).id])),
  };
}
