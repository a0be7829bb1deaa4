/** The build turns a deck file into the checked deck (`src/cli/deck-plugin.ts`). */
declare module '*.deck.yaml' {
  // An ambient module can't import by a relative name.
  // eslint-disable-next-line @typescript-eslint/consistent-type-imports
  const deck: import('../deck/types.ts').Deck;
  export default deck;
}
