/** The fixture deck with one piece of it changed. */
import { fixtureDeckText } from './fixture.ts';

/** @param from occurs once; a test whose piece is gone, or no longer unique, fails with it */
export function edited(from: string, to: string, text: string = fixtureDeckText): string {
  const count = text.split(from).length - 1;
  if (count !== 1) throw new Error(`“${from}” occurs ${count} times in the deck.`);
  return text.replace(from, () => to);
}
