import { cardsOf, promptFor } from '../../cards/registry.ts';
import type { GaugeReading, Prompt } from '../../cards/types.ts';
import { sayNumber, unitSuffix } from '../../deck/say.ts';
import type { UnitId } from '../../deck/units.ts';
import type { ExitCode, Io } from './io.ts';
import { soundDeck } from './sound-deck.ts';

/** `cards`: every card of a deck with one presentation of it, a line of JSON each. */
export async function listCards(path: string, seed: number, io: Io): Promise<ExitCode> {
  const procedure = await soundDeck(path, io);
  if (procedure === null) return 1;
  for (const card of cardsOf(procedure)) {
    const prompt = inWords(promptFor(procedure, card, seed));
    io.out(
      JSON.stringify({ id: card.id, kind: card.kind, gate: card.gate, prompt, expected: card.expected }),
    );
  }
  return 0;
}

/** What the pilot would see, in one line. */
function inWords({ place, title, detail, ask }: Prompt): string {
  const words = [place, title, detail].filter((part) => part !== '');
  if (ask.form === 'controls') words.push(ask.gauges.map(reading).join(', '));
  if (ask.form === 'choice') words.push(ask.options.map(({ label }) => label).join(' | '));
  return words.join(' · ');
}

const reading = ({ label, value, step, unit }: GaugeReading): string =>
  `${label} ${sayNumber(value, step)}${unitSuffix({ unit: unit as UnitId })}`;
