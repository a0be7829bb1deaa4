/** Works out the demo deck for one day after another, and keeps how long each took. */
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import { sayNumber } from '../../../src/deck/say.ts';
import type { Deck } from '../../../src/deck/types.ts';
import marram from '../../../decks/marram-recovery.deck.yaml';

const deck: Deck = marram;
const rounds = 400;

/** Each round another day: nothing kept from the last one may help. */
function dayFor(round: number): Record<string, number> {
  const day: Record<string, number> = {};
  for (const { quantity: id } of deck.day ?? []) {
    const { range, step } = deck.quantities.find((quantity) => quantity.id === id)!;
    const steps = Math.floor((range[1] - range[0]) / step);
    day[id] = range[0] + step * ((round * 7 + id.length * 3) % (steps + 1));
  }
  return day;
}

// The first number written loads the browser's number formats (15 ms and more); a page has shown many by then.
sayNumber(1000);

const times: number[] = [];
let moved = 0;
for (let round = 0; round < rounds; round++) {
  const day = dayFor(round);
  const from = performance.now();
  moved += deckOfDay(deck, day).moved.length;
  times.push(performance.now() - from);
}
Object.assign(window, { days: { times, moved } });
