/** Phases: between which gates, what is shown and may be done there, how it moves. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { isMapping, valueAt } from '../plain-data.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import type { Phase } from '../types.ts';
import { ifLimitOutside } from './bands.ts';
import { ifNoRange, ifNotPositive, isOrdered, liesWithin } from './ranges.ts';
import { ifUnknown, mendOf, repeated } from './unknown-name.ts';
import { quantitiesOfDay } from './quantities-of-day.ts';

export function* checkPhases(parts: DeckParts): Generator<Draft> {
  for (const phase of parts.phases) {
    yield* checkStretch(parts, phase);
    yield* ifNotPositive(phase.windowS, 'The time to call a correction in', parts.pathOf(phase, 'windowS'));
    yield* checkState(parts, phase);
    for (const [index, id] of phase.controls.entries())
      yield* ifUnknown(parts, 'control', id, parts.pathOf(phase, 'controls', index));
    yield* repeated(phase.controls, parts.pathOf(phase, 'controls'));
    yield* checkRates(parts, phase);
    yield* checkLimits(parts, phase);
  }
}

function* checkStretch(parts: DeckParts, phase: Phase): Generator<Draft> {
  yield* ifUnknown(parts, 'gate', phase.from, parts.pathOf(phase, 'from'));
  yield* ifUnknown(parts, 'gate', phase.to, parts.pathOf(phase, 'to'));
  const [from, to] = [parts.orderOfGate(phase.from), parts.orderOfGate(phase.to)];
  if (from !== undefined && to !== undefined && from >= to)
    yield {
      code: 'phase-order',
      message: `A phase leads from one gate to a later one, found from ${quoted(phase.from)} to ${quoted(phase.to)}; swap or change them.`,
      path: parts.pathOf(phase, 'to'),
    };
}

function* checkState(parts: DeckParts, phase: Phase): Generator<Draft> {
  for (const [id, ends] of Object.entries(phase.state)) {
    const path = parts.pathOf(phase, 'state', id);
    yield* ifUnknown(parts, 'quantity', id, path, true);
    yield* ifNoRange(ends, path);
    const range = parts.known.quantity.get(id)?.range;
    if (range && isOrdered(range) && isOrdered(ends) && !liesWithin(ends, range))
      yield {
        code: 'state-outside-range',
        message: `What can occur in a phase must lie inside the quantity’s range ${sayInterval(range)}, found ${sayInterval(ends)}; narrow it or widen the range.`,
        path,
      };
  }
}

/** The quantities shown in a phase, those with a broken range too; null when that can't be told. */
export function shownIn(parts: DeckParts, phase: Phase): ReadonlySet<string> | null {
  const state = valueAt(parts.data, parts.pathOf(phase, 'state'));
  return isMapping(state) ? new Set(Object.keys(state)) : null;
}

function* checkRates(parts: DeckParts, phase: Phase): Generator<Draft> {
  const shown = shownIn(parts, phase);
  if (!shown) return;
  const flown = new Set([...shown, ...Object.keys(phase.pass?.entry ?? {})]);
  const known = new Set([...flown, ...quantitiesOfDay(parts)]);
  for (const [id, rate] of Object.entries(phase.rates ?? {})) {
    yield* ifNotShown(parts, flown, id, parts.pathOf(phase, 'rates', id));
    for (const factor of Object.keys(rate.factors ?? {}))
      yield* ifNotShown(parts, known, factor, parts.pathOf(rate, 'factors', factor));
  }
}

export function* ifNotShown(
  parts: DeckParts,
  shown: ReadonlySet<string>,
  id: string,
  path: Draft['path'],
): Generator<Draft> {
  if (shown.has(id)) return;
  yield {
    code: 'quantity-not-in-phase',
    message: `Rates are worked out from the quantities in the phase’s “state”, found ${quoted(id)}; ${mendOf(parts, id, shown, 'add it to “state” or take it away')}.`,
    path,
    onKey: true,
  };
}

function* checkLimits(parts: DeckParts, phase: Phase): Generator<Draft> {
  for (const [id, limit] of Object.entries(phase.limits ?? {})) {
    const path = parts.pathOf(phase, 'limits', id);
    yield* ifUnknown(parts, 'quantity', id, path, true);
    const { floor, ceiling } = limit;
    if (floor === undefined && ceiling === undefined && !parts.isBroken(phase))
      yield {
        code: 'limit-missing',
        message:
          'A limit needs a floor or a ceiling, this one has neither; add the one that must not be passed.',
        path,
      };
    if (floor !== undefined && ceiling !== undefined && floor >= ceiling)
      yield {
        code: 'limits-crossed',
        message: `A floor must lie below the ceiling, found ${sayFigure(floor)} and ${sayFigure(ceiling)}; swap or change them.`,
        path: parts.pathOf(limit, 'floor'),
      };
    const range = parts.known.quantity.get(id)?.range;
    if (!range || !isOrdered(range)) continue;
    for (const key of ['floor', 'ceiling'] as const) yield* ifLimitOutside(parts, limit, key, range);
  }
}
