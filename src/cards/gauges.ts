/** What the strips of a rule prompt show. */
import { quantityOf } from '../deck/lookup.ts';
import type { Deck, Phase, Quantity } from '../deck/types.ts';
import { isBelowZero } from './cue.ts';
import { wordsOf } from '../rules/interval-word.ts';
import type { State } from '../rules/types.ts';
import type { GaugeReading } from './types.ts';

/** The phase's quantities in its own order, with what the state reads and where it moves by itself. */
export function gaugesOf(deck: Deck, phase: Phase, state: State): GaugeReading[] {
  return Object.entries(phase.state).map(([id, [lo, hi]]) => {
    const quantity = quantityOf(deck, id);
    const rate = rateOf(phase, id, state);
    return {
      quantity: id,
      label: quantity.label,
      unit: quantity.unit,
      value: state[id]!,
      span: { lo, hi, loOpen: false, hiOpen: false },
      step: quantity.step,
      ...sidesOf(quantity, lo),
      trend: rate === null ? null : trendOf(rate * phase.windowS, quantity.step),
    };
  });
}

/** As `saySigned` says them: an offset by its words for either side, another value below zero by the deck's word for such. */
function sidesOf(quantity: Quantity, lo: number): Pick<GaugeReading, 'sides'> {
  const { range, above, below } = quantity;
  if (lo >= 0) return {};
  if (range[0] === -range[1] && above !== undefined && below !== undefined)
    return { sides: { above, below } };
  const word = wordsOf(quantity).find(({ set }) => isBelowZero(set));
  return word ? { sides: { above: null, below: word.say } } : {};
}

/** Change per second by itself, in the quantity's unit: constant plus factors of the phase's other quantities; null when the deck says nothing. */
export function rateOf(phase: Phase, quantity: string, state: State): number | null {
  const rate = phase.rates?.[quantity];
  if (!rate) return null;
  const parts = Object.entries(rate.factors ?? {}).map(([other, factor]) => factor * (state[other] ?? 0));
  return parts.reduce((sum, part) => sum + part, rate.constant ?? 0);
}

/** What moves less than half a step while the correction is called can't be seen to move. */
function trendOf(change: number, step: number): 'rising' | 'falling' | 'steady' {
  if (Math.abs(change) < step / 2) return 'steady';
  return change > 0 ? 'rising' : 'falling';
}
