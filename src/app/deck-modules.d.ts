/** The build turns a deck file into the checked deck (`src/cli/deck-plugin.ts`). */
declare module '*.deck.yaml' {
  const deck: import('../deck/types.ts').Deck;
  export default deck;
}
