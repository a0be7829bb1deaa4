/** What the Record page shows, worked out of histories: pure, so that it can be tested without a page. */
import type { Card } from '../../cards/types.ts';
import { gateIndexOf, gateOf, quantityOf } from '../../deck/lookup.ts';
import { sayValue } from '../../deck/say.ts';
import type { Band, Deck, Quantity } from '../../deck/types.ts';
import { biasOf, type Bias } from '../../grading/bias.ts';
import type { Call, CardHistory, PassEvent } from '../../record/types.ts';
import type { Performance } from '../../rules/types.ts';
import { sayDay } from './day-set.ts';

export interface Recent {
  readonly card: Card;
  readonly call: Call;
}

/** The newest answers of all cards, newest first. Calls in a pass are left out: they are listed as passes. */
export function recentAnswers(
  cards: readonly Card[],
  historyOf: (cardId: string) => CardHistory | null,
  most: number,
): readonly Recent[] {
  return cards
    .flatMap((card) =>
      (historyOf(card.id)?.calls ?? []).flatMap((call) => (call.pass ? [] : [{ card, call }])),
    )
    .sort((one, other) => (one.call.event < other.call.event ? 1 : -1))
    .slice(0, most);
}

/**
 * What was called and what was due: "Called 20°. Due: 25°"; "Called nose up, as due". Where what was called was not
 * kept in words, how it went stands in its place: "8 of 9: flaps missing. Due: …". For another day than the
 * deck's own it was the day's value that was due, and the day is named.
 */
export function calledOf(deck: Deck, card: Card, call: Call): string {
  const { value, signedError, expected, day, headline = '', called, due = expected, performance } = call;
  const words = day ? sayDay(deck, day) : '';
  const forDay = words && ` (for ${words})`;
  const parts = card.id.split('/');
  const quantity =
    value === undefined ? undefined : deck.quantities.findLast(({ id }) => parts.includes(id, 1));
  if (value !== undefined && quantity) {
    const isOfDay = card.kind === 'value' && day && signedError !== undefined;
    const target = isOfDay ? sayValue(value - signedError, quantity) : due;
    return `Called ${sayValue(value, quantity)}. Due: ${target}${forDay}`;
  }
  // Of a value of another day the card's own words are not what was due.
  const wasDue = call.due === undefined && day && card.kind === 'value' ? '' : `due: ${due}`;
  if (called)
    return `Called ${called}${performance === 'desired' ? ', as due' : `. ${capital(wasDue)}`}${forDay}`;
  if (headline === 'right' || headline === '') return `${capital(wasDue || 'asked')}${forDay}`;
  if (performance === 'desired' || !wasDue) return `${capital(headline)}${forDay}`;
  return `${capital(headline)}. ${capital(wasDue)}${forDay}`;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** How long it took, in words; of what nobody answered the clock only says when it closed, so that it timed out is all. */
export function tookOf({ elapsedMs, timeliness }: Call): string {
  if (timeliness === 'timed-out') return 'timed out';
  return `${(elapsedMs / 1000).toFixed(1)} s${timeliness === 'late' ? ', late' : ''}`;
}

export interface ValueRow {
  readonly card: Card;
  readonly gate: string;
  readonly gateNumber: number;
  readonly quantity: Quantity;
  readonly band: Band;
  /** Of the deck's own day, that `band` holds for; oldest first. */
  readonly values: readonly number[];
  /** All calls, for whatever day. */
  readonly count: number;
  /** Of the last call, from the value of its day. */
  readonly lastError: number;
  readonly meanAbsoluteError: number;
  readonly bias: Bias | null;
  /** Of those called. */
  readonly outside: number;
  /** Asked without a value called: shown, or timed out. */
  readonly unanswered: number;
}

/** Values that have been called, gate by gate, with their error and bias. */
export function valueRows(
  deck: Deck,
  cards: readonly Card[],
  historyOf: (cardId: string) => CardHistory | null,
): readonly ValueRow[] {
  return cards.flatMap((card) => {
    if (card.kind !== 'value' || card.gate === null) return [];
    const calls = historyOf(card.id)?.calls ?? [];
    const errors = calls.flatMap(({ signedError }) => (signedError === undefined ? [] : [signedError]));
    if (errors.length === 0) return [];
    const gate = gateOf(deck, card.gate);
    const quantityId = card.id.split('/')[2]!;
    const quantity = quantityOf(deck, quantityId);
    return [
      {
        card,
        gate: gate.label,
        gateNumber: gateIndexOf(deck, card.gate) + 1,
        quantity,
        band: gate.values[quantityId]!,
        values: calls.flatMap(({ value, day }) => (value === undefined || day ? [] : [value])),
        count: errors.length,
        lastError: errors.at(-1)!,
        meanAbsoluteError: errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length,
        bias: biasOf(errors, quantity),
        outside: calls.filter(({ performance, value }) => performance === 'outside' && value !== undefined)
          .length,
        unanswered: calls.filter(({ value }) => value === undefined).length,
      },
    ];
  });
}

export interface PassLine {
  readonly id: string;
  readonly atMs: number;
  readonly performance: Performance;
  /** Label of the gate it began at; its id where the deck has it no more. */
  readonly from: string;
  readonly headline: string;
  /** "3 rules missed, outside at 2 gates"; empty when there is nothing to say. */
  readonly missed: string;
}

/** The newest passes, newest first. */
export function passLines(deck: Deck, passes: readonly PassEvent[], most: number): readonly PassLine[] {
  return passes
    .slice(-most)
    .toReversed()
    .map(({ id, atMs, performance, fromGate, headline, rules, gatesMissed }) => {
      const missed = rules.filter((rule) => rule.missed > 0).length;
      const parts = [
        missed > 0 ? `${missed} ${missed === 1 ? 'rule' : 'rules'} missed` : '',
        gatesMissed.length > 0
          ? `outside at ${gatesMissed.length} ${gatesMissed.length === 1 ? 'gate' : 'gates'}`
          : '',
      ].filter(Boolean);
      const from = deck.gates.find((gate) => gate.id === fromGate)?.label ?? fromGate;
      return { id, atMs, performance, from, headline, missed: parts.join(', ') };
    });
}
