/** Ids: once in their list, and none that every object answers to. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { isList, isMapping, reservedNames, valueAt, type Plain } from '../plain-data.ts';
import { quoted } from '../quoting.ts';

/** Looks at every list of things with ids, sound or not, wherever it stands. */
export function* checkIds(parts: DeckParts): Generator<Draft> {
  yield* idsUnder(parts.data, []);
  yield* sharedByGatesAndPhases(parts);
}

function* idsUnder(value: Plain, path: DocumentPath): Generator<Draft> {
  if (isList(value)) {
    yield* idsOfList(value, path);
    for (const [index, element] of value.entries()) yield* idsUnder(element, [...path, index]);
  } else if (isMapping(value))
    for (const key of Object.keys(value)) yield* idsUnder(value[key]!, [...path, key]);
}

function* idsOfList(list: readonly Plain[], path: DocumentPath): Generator<Draft> {
  const seen = new Set<string>();
  for (const [index, element] of list.entries()) {
    const id = valueAt(element, ['id']);
    if (typeof id !== 'string') continue;
    const here = [...path, index, 'id'];
    if (reservedNames.has(id))
      yield {
        code: 'reserved-name',
        message: `No id may be ${quoted(id)}, a name that the program itself needs; choose another.`,
        path: here,
      };
    if (seen.has(id))
      yield {
        code: 'duplicate-id',
        message: `Each id stands once in its list, ${quoted(id)} stands here again; give this one an id of its own.`,
        path: here,
      };
    seen.add(id);
  }
}

/** Cards on limits are told apart by the id of their gate or phase. */
function* sharedByGatesAndPhases(parts: DeckParts): Generator<Draft> {
  for (const phase of parts.phases)
    if (parts.known.gate.ids.has(phase.id))
      yield {
        code: 'duplicate-id',
        message: `A phase needs an id that no gate has, a gate is called ${quoted(phase.id)} too; give the phase another, like ${quoted(`${phase.id}-leg`)}.`,
        path: parts.pathOf(phase, 'id'),
      };
}
