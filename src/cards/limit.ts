/** Limits: the floor or ceiling of a gate's band or of a phase, which must never be passed. */
import { gateOf, phaseOf, quantityOf, sourceOf } from '../deck/lookup.ts';
import { sayValue } from '../deck/say.ts';
import type { Band, Deck, Limit, Quantity } from '../deck/types.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import type { Card } from './types.ts';
import { limitMs } from './windows.ts';
import { gatePlace, phasePlace, spokenOf } from './wording.ts';

export type Side = 'floor' | 'ceiling';
const sides: readonly Side[] = ['floor', 'ceiling'];
const never: Readonly<Record<Side, string>> = { floor: 'never below', ceiling: 'never above' };

/**
 * The band a called limit is graded by: the limit itself, or less than half a step to its safe side, is
 * desired, one step to the safe side still adequate; on the unsafe side nothing is, not by a hair.
 */
export function limitBand(limit: number, side: Side, quantity: Quantity): Band {
  const [lowest, highest] = quantity.range;
  const near = quantity.step / 2;
  // 0.7 + 0.1 is 0.8, not a hair less: a bound must hold the number typed for it.
  const within = (value: number) => Math.min(highest, Math.max(lowest, Number(value.toFixed(9))));
  const desired =
    side === 'floor' ? ([limit, within(limit + near)] as const) : ([within(limit - near), limit] as const);
  const adequate =
    side === 'floor'
      ? ([desired[0], within(limit + quantity.step)] as const)
      : ([within(limit - quantity.step), desired[1]] as const);
  return { target: limit, desired, adequate };
}

/** True for a call that would let the pilot pass the limit. */
export function isUnsafeCall(called: number, side: Side, band: Band): boolean {
  return side === 'floor' ? called < band.desired[0] : called > band.desired[1];
}

interface Owner {
  readonly id: string;
  readonly gate: string;
  readonly label: string;
  readonly group: string;
  readonly place: string;
  readonly cue: string;
  readonly limits: Readonly<Record<string, Limit | Band>>;
}

function gateOwner(deck: Deck, id: string): Owner {
  const { label, cue, values } = gateOf(deck, id);
  return { id, gate: id, label, group: `gate/${id}`, place: gatePlace(deck, id), cue, limits: values };
}

function phaseOwner(deck: Deck, id: string): Owner {
  const phase = phaseOf(deck, id);
  return {
    id,
    gate: phase.from,
    label: phase.label,
    group: `phase/${id}`,
    place: phasePlace(deck, phase),
    cue: phase.cue ?? '',
    limits: phase.limits ?? {},
  };
}

/** Gates first: should a phase bear a gate's name, the gate's limit keeps the card. */
const ownersOf = (deck: Deck): readonly Owner[] => [
  ...deck.gates.map(({ id }) => gateOwner(deck, id)),
  ...(deck.phases ?? []).map(({ id }) => phaseOwner(deck, id)),
];

function findLimit(deck: Deck, card: Card) {
  const [ownerId, quantity, side] = partsOf(card.id) as readonly [string, string, Side];
  for (const owner of ownersOf(deck)) {
    const bearer = owner.id === ownerId ? owner.limits[quantity] : undefined;
    const limit = bearer?.[side];
    if (bearer && limit !== undefined)
      return { owner, quantity: quantityOf(deck, quantity), side, limit, bearer };
  }
  throw new Error(`No limit “${card.id}” in the deck.`);
}

export const limit: CardKindEntry = {
  kind: 'limit',

  make({ deck }) {
    const cards = new Map<string, Card>();
    for (const owner of ownersOf(deck))
      for (const [quantityId, bearer] of Object.entries(owner.limits))
        for (const side of sides) {
          const at = bearer[side];
          const id = cardId('limit', owner.id, quantityId, side);
          if (at === undefined || cards.has(id)) continue;
          const quantity = quantityOf(deck, quantityId);
          cards.set(id, {
            id,
            kind: 'limit',
            gate: owner.gate,
            group: owner.group,
            label: `${owner.label} · ${spokenOf(quantity)} ${side}`,
            critical: true,
            windowMs: limitMs,
            expected: `${never[side]} ${sayValue(at, quantity)}`,
          });
        }
    return [...cards.values()];
  },

  show({ deck }, card, _random, seed) {
    const { owner, quantity, side, limit } = findLimit(deck, card);
    return {
      card,
      seed,
      place: owner.place,
      title: `${quantity.label}: ${never[side]}?`,
      detail: owner.cue,
      ask: { form: 'number', quantity: quantity.id, band: limitBand(limit, side, quantity), limit: side },
    };
  },

  ground({ deck }, card) {
    const { bearer } = findLimit(deck, card);
    return { because: bearer.because ?? null, source: sourceOf(deck, bearer.source) };
  },
};
