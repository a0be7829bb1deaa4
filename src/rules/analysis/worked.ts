/** Worked values: what is drawn has a say in the result, and comes to one. */
import { dayOf } from '../../day/day-of.ts';
import { needsOf } from '../../day/needs-of.ts';
import type { DocumentPath, Finding } from '../../deck/findings.ts';
import { quantityOf } from '../../deck/lookup.ts';
import { quoted } from '../../deck/quoting.ts';
import type { Deck, WorkedValue } from '../../deck/types.ts';
import { finding } from './report.ts';

export function workedFindings(deck: Deck): Finding[] {
  return (deck.worked ?? []).flatMap((worked, index) => {
    const path = ['worked', index, 'draw'];
    return [...idleDraws(deck, worked, path), ...emptyDraws(deck, worked, path)];
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

/** Looked for at both ends and in the middle of what is drawn: a warning, for between them there may be one. */
function emptyDraws(deck: Deck, { draw, quantity }: WorkedValue, path: DocumentPath): Finding[] {
  if (daysIn(draw).some((day) => dayOf(deck, day)[quantity] !== undefined)) return [];
  return [
    finding(
      'draw-without-value',
      'warning',
      path,
      `What is drawn anew should come to a value of ${quoted(quantityOf(deck, quantity).label)}, none was found at the ends and in the middle of these; change them, or the formula asks for the deck’s own day each time.`,
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
