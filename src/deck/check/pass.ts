/** How a phase is flown in a pass: quantities it works out, gates on its way, times, actions. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import type { Moment, PassPlan, Phase } from '../types.ts';
import { actionIdsOf } from './controls.ts';
import { ifNotShown, shownIn } from './phases.ts';
import { ifNotPositive, isOrdered, lies } from './ranges.ts';
import { ifUnknown, mendOf, repeated } from './unknown-name.ts';

export function* checkPasses(parts: DeckParts): Generator<Draft> {
  for (const phase of parts.phases) if (phase.pass) yield* checkPass(parts, phase, phase.pass);
  for (const control of parts.controls) {
    yield* ifNegative(control.lagS, 'A lag', parts.pathOf(control, 'lagS'));
    if (control.holdS !== undefined)
      yield* ifNotPositive(control.holdS, 'The time an action is held', parts.pathOf(control, 'holdS'));
  }
}

function* checkPass(parts: DeckParts, phase: Phase, plan: PassPlan): Generator<Draft> {
  const shown = shownIn(parts, phase);
  const flown = shown && new Set([...shown, ...Object.keys(plan.entry ?? {})]);
  yield* checkMoment(parts, plan.until, flown, parts.pathOf(plan, 'until'));
  if (plan.longestS !== undefined)
    yield* ifNotPositive(plan.longestS, 'The longest time of a phase', parts.pathOf(plan, 'longestS'));
  if (plan.decideEveryS !== undefined)
    yield* ifNotPositive(plan.decideEveryS, 'The time between decisions', parts.pathOf(plan, 'decideEveryS'));
  yield* checkWay(parts, phase, plan, flown);
  yield* checkEntry(parts, plan);
  for (const key of ['start', 'gusts'] as const)
    for (const [id, size] of Object.entries(plan[key] ?? {})) {
      const path = parts.pathOf(plan, key, id);
      if (flown) yield* ifNotShown(parts, flown, id, path);
      yield* ifNegative(size, key === 'start' ? 'An error to start with' : 'Restless air', path);
    }
  yield* checkEffects(parts, phase, plan);
}

function* checkMoment(
  parts: DeckParts,
  moment: Moment,
  flown: ReadonlySet<string> | null,
  path: DocumentPath,
): Generator<Draft> {
  if (moment.kind === 'after') {
    yield* ifNotPositive(moment.seconds, 'The time a phase takes', [...path, 'seconds']);
    return;
  }
  const { quantity, value } = moment;
  if (flown && !flown.has(quantity))
    yield {
      code: 'quantity-not-in-phase',
      message: `A phase is over by a quantity in its “state” or “entry”, found ${quoted(quantity)}; ${mendOf(parts, quantity, flown, 'add it to one of the two')}.`,
      path: [...path, 'quantity'],
    };
  const range = parts.known.quantity.get(quantity)?.range;
  if (range && isOrdered(range) && !lies(value, range))
    yield {
      code: 'value-outside-range',
      message: `A value must lie inside the quantity’s range ${sayInterval(range)}, found ${sayFigure(value)}; change it or widen the range.`,
      path: [...path, 'value'],
    };
}

function* checkWay(
  parts: DeckParts,
  phase: Phase,
  plan: PassPlan,
  flown: ReadonlySet<string> | null,
): Generator<Draft> {
  const ways = plan.through ?? [];
  const [from, to] = [parts.orderOfGate(phase.from), parts.orderOfGate(phase.to)];
  for (const [index, { gate, at }] of ways.entries()) {
    const path = parts.pathOf(plan, 'through', index);
    yield* ifUnknown(parts, 'gate', gate, [...path, 'gate']);
    yield* checkMoment(parts, at, flown, [...path, 'at']);
    const place = parts.orderOfGate(gate);
    if (place === undefined || from === undefined || to === undefined) continue;
    if (place <= from || place >= to)
      yield {
        code: 'phase-order',
        message: `A gate on the way lies between the phase’s first and last, found ${quoted(gate)}; take it out or name another.`,
        path: [...path, 'gate'],
      };
  }
  yield* repeated(
    ways.map(({ gate }) => gate),
    parts.pathOf(plan, 'through'),
  );
}

function* checkEntry(parts: DeckParts, plan: PassPlan): Generator<Draft> {
  for (const [id, { factors, spread, overS }] of Object.entries(plan.entry ?? {})) {
    const path = parts.pathOf(plan, 'entry', id);
    yield* ifUnknown(parts, 'quantity', id, path, true);
    for (const factor of Object.keys(factors ?? {}))
      yield* ifUnknown(parts, 'quantity', factor, [...path, 'factors', factor], true);
    yield* ifNegative(spread, 'A random error', [...path, 'spread']);
    yield* ifNegative(overS, 'The time an entry takes', [...path, 'overS']);
  }
}

function* checkEffects(parts: DeckParts, phase: Phase, plan: PassPlan): Generator<Draft> {
  const here = phase.controls.map((id) => parts.known.control.get(id));
  const lists = here.map((control) => (control ? actionIdsOf(parts, control) : null));
  const known = lists.every((list) => list !== null) ? new Set(lists.flatMap((list) => [...list])) : null;
  for (const [action, effects] of Object.entries(plan.effects ?? {})) {
    const path = parts.pathOf(plan, 'effects', action);
    if (known && !known.has(action))
      yield {
        code: 'unknown-action',
        message: `Effects belong to an action of the phase’s controls, found ${quoted(action)}; ${mendOf(parts, action, known, 'name one of those')}.`,
        path,
        onKey: true,
      };
    for (const id of Object.keys(effects)) yield* ifUnknown(parts, 'quantity', id, [...path, id], true);
  }
}

function* ifNegative(value: number | undefined, what: string, path: DocumentPath): Generator<Draft> {
  if (value !== undefined && value < 0)
    yield {
      code: 'negative',
      message: `${what} can’t be less than 0, found ${sayFigure(value)}; write 0 or more.`,
      path,
    };
}
