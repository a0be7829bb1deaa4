/**
 * How long an answer may take and still count as prompt, in milliseconds, before the pilot's own
 * scaling. Common practice, no source: the times leave room to read, recall and answer, not to work
 * the answer out. A rule's window is its phase's own `windowS`.
 */

/** One number, called in a second or two in the air; typing two to four digits takes the rest. */
export const valueMs = 5_000;
/** As a value, and a moment more to read which side the limit is on. */
export const limitMs = 6_000;
/** Each gate has to be found among the shuffled ones before it can be put in its place. */
export const orderMsPerGate = 3_000;
/** As for gates: find the item, then place it. */
export const checklistMsPerItem = 3_000;
/** Up to five short responses to read. */
export const responseMs = 6_000;
/** The whole list of gates has to be looked through. */
export const completeByMs = 8_000;
/** Read the question, look at a drawing, point. */
export const spotMs = 8_000;
/** A sum in the head from two or three conditions; a deck may give its own. */
export const workedMs = 30_000;
/** Free text has to be read and typed. */
export const noteMs = 12_000;
