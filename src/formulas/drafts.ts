/** What is wrong with a formula, as a finding. */
import type { Draft } from '../deck/draft.ts';
import type { DocumentPath } from '../deck/findings.ts';
import { uncapitalised } from '../deck/quoting.ts';
import type { Quantity } from '../deck/types.ts';
import type { Typed } from './compile.ts';
import type { Faulty } from './fault.ts';
import { sayUnit, unitOf } from './formula-units.ts';

export const draftOf = ({ code, why, mend, into }: Faulty, path: DocumentPath): Draft => ({
  code,
  message: `${why}; ${mend}.`,
  path,
  ...(into === undefined ? {} : { into }),
});

/** The result is of another kind than the quantity. */
export const draftOfUnits = (quantity: Quantity, { expression, unit }: Typed, path: DocumentPath): Draft => ({
  code: 'formula-units',
  message: `${quantity.label} is in ${sayUnit(unitOf(quantity.unit))}, its formula comes to ${sayUnit(unit)}; ${
    expression.kind === 'number' || sayUnit(unit) === 'no unit'
      ? `give its numbers their units: “1 ${sayUnit(unitOf(quantity.unit))}”`
      : `multiply or divide by what makes it ${uncapitalised(quantity.label)}`
  }.`,
  path,
});
