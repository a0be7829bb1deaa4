/** A flown pass -> its event, and what the event does to the cards it touches. */
import { cardId } from '../cards/ids.ts';
import type { Card } from '../cards/types.ts';
import { controlOf, neutralOf, tableOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import type { Rating } from '../grading/types.ts';
import type { PassAssessment, PassEnd, PassStart } from '../motion/types.ts';
import { most, mostInPass } from './schema.ts';
import type { Call, EventId, PassEnding, PassEvent, PassPace, PassRule } from './types.ts';

export interface FlownPass {
  readonly deck: Deck;
  readonly start: PassStart;
  readonly pace: PassPace;
  /** Of a pass that has ended. */
  readonly assessment: PassAssessment & { readonly ended: PassEnd };
  /** The deck's cards by id: rules that give no card count on none. */
  readonly card: (id: string) => Card | null;
}

/**
 * The event of a pass. A rule counts as missed when something else was called even once while it
 * decided. It counts as right, once however often it came, when it was never missed and calls for
 * something: to do nothing where nothing is to be done is no sign that the rule was known.
 */
export function passEvent(flown: FlownPass, id: EventId, nowMs: number): PassEvent {
  const { deck, start, pace, assessment } = flown;
  const event: PassEvent = {
    kind: 'pass',
    id,
    atMs: Math.max(0, Math.floor(nowMs)),
    deck: deck.id,
    deckVersion: deck.version,
    fromGate: start.fromGate,
    seed: start.seed,
    roughness: start.roughness ?? 1,
    pace,
    ...(start.day && Object.keys(start.day).length > 0 ? { day: start.day } : {}),
    end: endingOf(assessment.ended),
    performance: assessment.performance,
    gates: assessment.crossings
      .flatMap(({ gate, performance }) => (performance ? [{ gate, performance }] : []))
      .slice(0, mostInPass.gates),
    rules: rulesOf(flown),
    gatesMissed: assessment.gatesMissed
      .slice(0, mostInPass.gates)
      .map(({ gate, quantities }) => ({ gate, quantities: quantities.slice(0, mostInPass.quantities) })),
    headline: cut(assessment.headline, most.headline),
  };
  return fitted(event);
}

const endingOf = (ended: PassEnd): PassEnding =>
  ended.kind === 'go-around' && !ended.demanded ? 'needless-go-around' : ended.kind;

function rulesOf({ deck, assessment, card }: FlownPass): PassRule[] {
  const rules = assessment.rules.flatMap(({ table, rule, asked, missed }): PassRule[] => {
    const found = card(cardId('rule', table, rule));
    if (!found || (missed === 0 && callsForNothing(deck, table, rule))) return [];
    const { id, critical, expected } = found;
    const most = mostInPass.asked;
    return [
      {
        card: id,
        asked: Math.min(asked, most),
        missed: Math.min(missed, most),
        critical,
        expected: cut(expected, mostInPass.expected),
      },
    ];
  });
  // Missed ones first: should there be too many, those that were right are left out.
  return [...rules.filter(({ missed }) => missed > 0), ...rules.filter(({ missed }) => missed === 0)].slice(
    0,
    mostInPass.rules,
  );
}

function callsForNothing(deck: Deck, tableId: string, ruleId: string): boolean {
  const table = tableOf(deck, tableId);
  const rule = table.rules.find(({ id }) => id === ruleId);
  return rule?.then === neutralOf(controlOf(deck, table.control)).id;
}

/** Within the length that the record takes: rules are left out, from the last, until it is. */
function fitted(event: PassEvent): PassEvent {
  let { rules } = event;
  while (rules.length > 0 && JSON.stringify({ ...event, rules }).length > most.strangerJson)
    rules = rules.slice(0, Math.floor(rules.length * 0.8));
  return { ...event, rules };
}

const cut = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;

/** What a pass comes to on one card. */
export type PassEffect =
  | { readonly card: string; readonly call: Call; readonly rating: Rating; readonly critical: boolean }
  /** The card falls due, if it was ever answered: not flying a value isn't forgetting it. */
  | { readonly card: string; readonly due: { readonly event: EventId; readonly atMs: number } };

/** Each card once. */
export function effectsOf(pass: PassEvent): PassEffect[] {
  const { id: event, atMs } = pass;
  const effects = new Map<string, PassEffect>();
  for (const { gate, quantities } of pass.gatesMissed)
    for (const quantity of quantities) {
      const card = cardId('value', gate, quantity);
      effects.set(card, { card, due: { event, atMs } });
    }
  for (const { card, missed, critical, expected } of pass.rules) {
    const isMissed = missed > 0;
    const call: Call = {
      event,
      atMs,
      performance: isMissed ? 'outside' : 'desired',
      timeliness: 'prompt',
      elapsedMs: 0,
      pass: true,
      expected,
    };
    effects.set(card, { card, call, rating: isMissed ? 1 : 3, critical });
  }
  return [...effects.values()];
}
