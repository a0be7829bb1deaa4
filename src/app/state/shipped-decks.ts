/** The decks that come with the app: checked at build time, loaded as data when chosen. */
import type { Deck } from '../../deck/types.ts';

interface ShippedDeck {
  readonly id: string;
  readonly load: () => Promise<Deck>;
}

const modules = import.meta.glob<Deck>('../../../decks/*.deck.yaml', { import: 'default' });

const idOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.deck\.yaml$/, '');

/** What a newcomer starts with. */
export const firstDeck = 'marram-recovery';

/** In order of name, the newcomer's first. */
export const shippedDecks: readonly ShippedDeck[] = Object.entries(modules)
  .map(([path, load]) => ({ id: idOf(path), load }))
  .sort(
    (one, other) =>
      Number(other.id === firstDeck) - Number(one.id === firstDeck) || one.id.localeCompare(other.id),
  );
