/** How much a deck file may hold, so that a hostile or broken one can't stop the program. */

/** 2 MB, counted in bytes of UTF-8. */
export const mostBytes = 2_000_000;
/** Pieces of YAML (a mark, a word, a space between them): twelve times those of the shipped decks. */
export const mostPieces = 250_000;
/** Lists and mappings inside each other; a deck needs nine. */
export const mostNesting = 40;
export const mostElements = 2_000;
export const mostKeys = 500;
/** Aliases (`*name`), counting again those inside what an alias stands for. */
export const mostAliases = 200;
/** Beyond this nothing more is looked for. */
export const mostDrafts = 2_000;
/** Shown; the rest is counted. */
export const mostFindings = 200;
/** Values of one input of a chart, so that it holds 40,000 numbers at most. */
export const mostBreakPoints = 200;
export const mostCharts = 50;
/** Unknown names for which a near one is sought. */
export const mostSuggestions = 300;
/** Characters of a formula. */
export const mostFormulaCharacters = 500;
/** Parentheses, calls and operators inside each other in a formula. */
export const mostFormulaNesting = 40;
/** Quantities that formulas give a deck; its bands may hold ten times as many. */
export const mostFormulas = 200;
