/** Everything the loader can find in a deck file. Each has a failing example in the tests. */

/** The file as a text and as YAML. */
const textCodes = [
  'too-large',
  'empty-file',
  'not-utf8',
  'yaml-syntax',
  'tab-indentation',
  'too-deep',
  'too-many',
  'too-many-aliases',
  'bad-alias',
  'bad-tag',
  'bad-key',
  'stray-comma',
  'missing-colon',
  'missing-dash',
  'duplicate-key',
  'reserved-name',
  'several-documents',
] as const;

/** The shape of the parts. */
const shapeCodes = [
  'not-a-mapping',
  'wrong-format',
  'missing-key',
  'unknown-key',
  'wrong-type',
  'number-as-text',
  'not-a-number',
  'number-too-large',
  'bad-id',
  'bad-version',
  'bad-language',
  'empty-text',
  'text-too-long',
  'too-few',
  'wrong-count',
  'unknown-choice',
  'unknown-unit',
] as const;

/** What the parts say of each other. */
const senseCodes = [
  'duplicate-id',
  'repeated-entry',
  'unknown-source',
  'unknown-quantity',
  'unknown-gate',
  'unknown-control',
  'unknown-phase',
  'unknown-action',
  'range-upside-down',
  'not-positive',
  'negative',
  'band-not-nested',
  'band-outside-range',
  'limit-inside-band',
  'limit-outside-range',
  'limits-crossed',
  'limit-missing',
  'value-outside-range',
  'bearing-outside-circle',
  'phase-order',
  'state-outside-range',
  'quantity-not-in-phase',
  'quantity-not-of-day',
  'not-worked-out',
  'second-origin',
  'chart-not-ascending',
  'chart-incomplete',
  'chart-against-trend',
  'not-a-speed',
  'senseless-limit',
  'leg-from-last-gate',
  'control-not-in-phase',
  'condition-not-input',
  'opposes-itself',
  'second-neutral',
  'missing-neutral',
  'missing-priority',
  'unexpected-priority',
  'incomplete-priority',
  'second-table',
  'outside-plate',
  'answer-among-choices',
] as const;

/** Formulas and what they come to on the default day. */
const formulaCodes = [
  'formulas-not-read',
  'formula-syntax',
  'formula-not-allowed',
  'formula-name',
  'formula-units',
  'formula-circle',
  'formula-no-value',
  'formula-outside-range',
] as const;

const warningCodes = [
  'unused-quantity',
  'unused-source',
  'gate-without-values',
  'same-label',
  'off-step',
  'day-without-value',
  'cue-tells-value',
  'typographic-quotes',
  'doubtful-remark',
] as const;

export const deckCodes = [
  ...textCodes,
  ...shapeCodes,
  ...senseCodes,
  ...formulaCodes,
  ...warningCodes,
  'more-findings',
] as const;
export type DeckCode = (typeof deckCodes)[number];
