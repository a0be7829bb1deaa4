import { isUnsafeCall } from '../cards/limit.ts';
import type { Answer, Ask } from '../cards/types.ts';
import { quantityOf } from '../deck/lookup.ts';
import { sayError, sayValue } from '../deck/say.ts';
import type { Deck, Quantity } from '../deck/types.ts';
import { gradeValue } from '../rules/band.ts';
import type { BandGrade } from '../rules/types.ts';
import type { AskOf, FormResult } from './form-grade.ts';
import { readNumber } from './read-number.ts';

/** By the ask's band, a limit by the band made around it: one yardstick for both. */
export function gradeNumber(
  deck: Deck,
  ask: AskOf<'number', Ask>,
  answer: AskOf<'number', Answer>,
): FormResult {
  const quantity = quantityOf(deck, ask.quantity);
  const read = readNumber(answer.text, quantity);
  if (!read.ok) return read;
  const graded = gradeValue(read.value, ask.band, quantity);
  const unsafe = ask.limit !== null && isUnsafeCall(read.value, ask.limit, ask.band);
  const passedLimit = unsafe ? ask.limit : graded.passedLimit;
  return {
    ok: true,
    performance: graded.performance,
    ...resultDue(deck, ask),
    headline:
      ask.limit === null ? sayCall(graded, quantity) : sayLimitCall(graded.signedError, ask.limit, quantity),
    detail: {
      form: 'number',
      value: read.value,
      signedError: graded.signedError,
      steps: graded.steps,
      passedLimit,
    },
  };
}

/** What a number that was worked out comes to: the card knows only how it is worked out. */
export function resultDue(
  deck: Deck,
  { given, band, quantity }: AskOf<'number', Ask>,
): { readonly expected?: string } {
  return given ? { expected: sayValue(band.target, quantityOf(deck, quantity)) } : {};
}

/** "20 ft high", "on target", "30 ft low, below the floor". */
function sayCall({ signedError, passedLimit }: BandGrade, quantity: Quantity): string {
  const error = sayError(signedError, quantity);
  return passedLimit === null ? error : `${error}, ${side(passedLimit)} the ${passedLimit}`;
}

const side = (limit: 'floor' | 'ceiling') => (limit === 'floor' ? 'below' : 'above');

/** "on the floor", "5 ft above the floor". */
function sayLimitCall(signedError: number, limit: 'floor' | 'ceiling', quantity: Quantity): string {
  if (signedError === 0) return `on the ${limit}`;
  const way = signedError > 0 ? 'above' : 'below';
  return `${sayValue(Math.abs(signedError), quantity)} ${way} the ${limit}`;
}
