/** What is written and never used: often a misspelt name elsewhere, or a rest of an edit. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { mentionsOfSources } from './source-mentions.ts';
import { quantitiesOfDay } from './quantities-of-day.ts';

/** Only for decks without broken pieces: among these the use might be. */
export function* checkUnused(parts: DeckParts): Generator<Draft> {
  if (!parts.whole) return;
  const quantities = new Set(mentionedQuantities(parts));
  for (const quantity of parts.quantities)
    if (!quantities.has(quantity.id))
      yield {
        code: 'unused-quantity',
        severity: 'warning',
        message:
          'A quantity should be used by a gate, a phase, an action or the day, this one is not; use it or take it out.',
        path: parts.pathOf(quantity, 'id'),
      };
  const sources = new Set([...mentionsOfSources(parts)].map(({ id }) => id));
  for (const source of parts.sources)
    if (!sources.has(source.id))
      yield {
        code: 'unused-source',
        severity: 'warning',
        message:
          'A source should be named by a value, this one is named nowhere; name it where it belongs or take it out.',
        path: parts.pathOf(source, 'id'),
      };
}

function* mentionedQuantities(parts: DeckParts): Generator<string> {
  if (parts.reference) yield parts.reference.height;
  yield* quantitiesOfDay(parts);
  yield* [parts.flying?.airspeed, parts.flying?.closure].filter((id) => id !== undefined);
  for (const gate of parts.gates) {
    yield* Object.keys(gate.values);
    if (gate.detect && 'quantity' in gate.detect) yield gate.detect.quantity;
  }
  for (const control of parts.controls)
    for (const action of control.actions) yield* Object.keys(action.effects ?? {});
  for (const phase of parts.phases) {
    yield* Object.keys(phase.state);
    yield* Object.keys(phase.limits ?? {});
    yield* Object.keys(phase.pass?.entry ?? {});
  }
  for (const table of parts.tables) yield* table.inputs;
}
