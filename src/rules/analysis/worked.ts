/** Worked values: what is drawn has a say in the result, and comes to one that can't be told beforehand. */
import { onStep } from '../../day/band-of-day.ts';
import { dayOf } from '../../day/day-of.ts';
import { needsOf } from '../../day/needs-of.ts';
import type { DocumentPath, Finding } from '../../deck/findings.ts';
import { quantityOf } from '../../deck/lookup.ts';
import { quoted } from '../../deck/quoting.ts';
import { sayRange } from '../../deck/say.ts';
import type { Deck, WorkedValue } from '../../deck/types.ts';
import { finding } from './report.ts';

export function workedFindings(deck: Deck): Finding[] {
  return (deck.worked ?? []).flatMap((worked, index) => {
    const path = ['worked', index, 'draw'];
    return [...idleDraws(deck, worked, path), ...poorDraws(deck, worked, path)];
  });
}

function idleDraws(deck: Deck, { draw, quantity }: WorkedValue, path: DocumentPath): Finding[] {
  const { settings } = needsOf(deck, quantity);
  return Object.keys(draw)
    .filter((id) => !settings.includes(id))
    .map((id) =>
      finding(
        'draw-without-effect',
        'warning',
        [...path, id],
        `What is drawn anew should have a say in ${quoted(quantityOf(deck, quantity).label)}, ${quoted(quantityOf(deck, id).label)} has none; take it out, or use it in the formula.`,
      ),
    );
}

/**
 * Looked for at both ends and in the middle of what is drawn. Warnings: between them there may be a value,
 * or one further off.
 */
function poorDraws(deck: Deck, { draw, quantity, desired }: WorkedValue, path: DocumentPath): Finding[] {
  const asked = quantityOf(deck, quantity);
  const results = daysIn(draw).flatMap((day) => {
    const result = dayOf(deck, day)[quantity];
    return result === undefined ? [] : [onStep(result, asked.step)];
  });
  if (results.length === 0)
    return [
      finding(
        'draw-without-value',
        'warning',
        path,
        `What is drawn anew should come to a value of ${quoted(asked.label)}, none was found at the ends and in the middle of these; change them, or the formula asks for the deck’s own day each time.`,
      ),
    ];
  const ends = [Math.min(...results), Math.max(...results)] as const;
  if (ends[1] - ends[0] > 2 * desired) return [];
  return [
    finding(
      'draw-too-narrow',
      'warning',
      path,
      `What is drawn anew should ask for more than one answer, all of it comes to ${sayRange(ends, asked)}, where one answer is desired throughout; draw from further apart, or lower “desired”.`,
    ),
  ];
}

/** Settings that are combined with each other; the others stay in the middle. */
const mostCombined = 5;

function daysIn(draw: WorkedValue['draw']): Record<string, number>[] {
  let days: Record<string, number>[] = [{}];
  for (const [place, [id, [lo, hi]]] of Object.entries(draw).entries()) {
    const middle = (lo + hi) / 2;
    const values = place < mostCombined ? [middle, lo, hi] : [middle];
    days = days.flatMap((day) => values.map((value) => ({ ...day, [id]: value })));
  }
  return days;
}
