/** The formulas of the day's quantities: each compiled, in an order in which they can be worked out. */
import type { ComputedQuantity } from '../deck/computed.ts';
import { ifUnknown } from '../deck/check/unknown-name.ts';
import type { Draft } from '../deck/draft.ts';
import type { DeckParts } from '../deck/parts.ts';
import { quoted } from '../deck/quoting.ts';
import type { Formula } from '../deck/types.ts';
import { quantitiesIn } from '../day/evaluate.ts';
import { compileFormula } from './compile.ts';
import { draftOf, draftOfUnits } from './drafts.ts';
import { areAlike, unitOf } from './formula-units.ts';
import { brought } from './same-kind.ts';
import { namesIn, type Scope } from './scope.ts';

export interface CompiledQuantity extends ComputedQuantity {
  readonly formula: Formula;
}

/** @returns only those that are sound and stand in no circle. */
export function compileQuantities(parts: DeckParts, scope: Scope, drafts: Draft[]): CompiledQuantity[] {
  const compiled = new Map<string, CompiledQuantity>();
  for (const formula of parts.formulas) {
    const faults = [...checkOrigin(parts, formula, compiled)];
    drafts.push(...faults);
    const made = faults.length === 0 ? compileOne(parts, scope, formula, drafts) : null;
    if (made) compiled.set(made.quantity, made);
  }
  return inOrder(compiled, parts, drafts);
}

/** A quantity has one origin: set, from the wind, or from one formula. */
function* checkOrigin(
  parts: DeckParts,
  formula: Formula,
  before: ReadonlyMap<string, unknown>,
): Generator<Draft> {
  const id = formula.quantity;
  const path = parts.pathOf(formula, 'quantity');
  yield* ifUnknown(parts, 'quantity', id, path);
  const isSet = parts.day.some(({ quantity }) => quantity === id);
  if (isSet || parts.wind?.along === id || parts.wind?.across === id)
    yield {
      code: 'second-origin',
      message: `A quantity has one origin, ${quoted(id)} is ${isSet ? 'set for the day' : 'made from the wind'} and worked out by a formula; take it out of one of the two.`,
      path,
    };
  if (before.has(id))
    yield {
      code: 'repeated-entry',
      message: `A quantity has one formula, ${quoted(id)} has another one above; take one of the two out.`,
      path,
    };
}

function compileOne(
  parts: DeckParts,
  scope: Scope,
  formula: Formula,
  drafts: Draft[],
): CompiledQuantity | null {
  const text = formula.expression;
  const path = parts.pathOf(formula, 'expression');
  const compiled = compileFormula(text, namesIn(scope, text));
  if (!compiled.ok) {
    drafts.push(draftOf(compiled, path));
    return null;
  }
  const quantity = parts.known.quantity.get(formula.quantity);
  if (!quantity || parts.isBroken(quantity)) return null;
  const wanted = unitOf(quantity.unit);
  if (!areAlike(compiled.unit, wanted)) {
    drafts.push(draftOfUnits(quantity, compiled, path));
    return null;
  }
  return { formula, quantity: quantity.id, text, expression: brought(compiled, wanted) };
}

/** Inputs first; a formula in a circle, or behind one, is left out, and each circle is told of once. */
function inOrder(
  compiled: ReadonlyMap<string, CompiledQuantity>,
  parts: DeckParts,
  drafts: Draft[],
): CompiledQuantity[] {
  const order: CompiledQuantity[] = [];
  const state = new Map<string, 'open' | 'sound' | 'lost'>();
  const visit = (id: string, way: readonly string[]): boolean => {
    const one = compiled.get(id);
    if (!one) return true;
    const before = state.get(id);
    if (before === 'open') {
      drafts.push(circle([...way.slice(way.indexOf(id)), id], one, parts));
      return false;
    }
    if (before) return before === 'sound';
    state.set(id, 'open');
    let isSound = true;
    for (const input of quantitiesIn(one.expression)) isSound = visit(input, [...way, id]) && isSound;
    state.set(id, isSound ? 'sound' : 'lost');
    if (isSound) order.push(one);
    return isSound;
  };
  for (const id of compiled.keys()) visit(id, []);
  return order;
}

function circle(way: readonly string[], { formula }: CompiledQuantity, parts: DeckParts): Draft {
  return {
    code: 'formula-circle',
    message: `A formula must not need its own result, ${way.map(quoted).join(', which needs ').replace(', which needs', ' needs')}; take one of them out of a formula.`,
    path: parts.pathOf(formula, 'expression'),
  };
}
