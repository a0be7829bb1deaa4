/**
 * The cards of a deck. Apart from `registry.ts`, which also asks them: drawing states and days is no part of
 * the first page, which counts cards and asks none.
 */
import type { Procedure } from '../rules/types.ts';
import type { CardKindEntry } from './card-kind.ts';
import { checklist } from './checklist.ts';
import { completeBy } from './complete-by.ts';
import { limit } from './limit.ts';
import { note } from './note.ts';
import { order } from './order.ts';
import { inProcedureOrder } from './procedure-order.ts';
import { response } from './response.ts';
import { ruleCards } from './rule-cards.ts';
import { spot } from './spot.ts';
import type { Card, CardKind } from './types.ts';
import { value } from './value.ts';

type Make = CardKindEntry['make'];

const makers: Readonly<Record<Exclude<CardKind, 'worked'>, Make>> = {
  value: value.make,
  limit: limit.make,
  order: order.make,
  checklist: checklist.make,
  response: response.make,
  'complete-by': completeBy.make,
  rule: ruleCards,
  spot: spot.make,
  note: note.make,
};

/**
 * Every card of a deck, in the order in which new ones enter (see `procedure-order.ts`).
 * @param worked makes those of worked values (`worked-cards.ts`); passed in, because it brings the working out
 * of days along, which a deck without worked values can do without.
 */
export function cardsMade(procedure: Procedure, worked: Make | null): readonly Card[] {
  const all = [...Object.values(makers), ...(worked ? [worked] : [])];
  const cards = all.flatMap((make) => make(procedure));
  return inProcedureOrder(procedure.deck, cards);
}
