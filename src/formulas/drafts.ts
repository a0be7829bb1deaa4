/** What is wrong with a formula, as a finding. */
import type { Draft } from '../deck/draft.ts';
import type { DocumentPath } from '../deck/findings.ts';
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
export function draftOfUnits(
  quantity: Pick<Quantity, 'label' | 'unit'>,
  { unit }: Typed,
  path: DocumentPath,
): Draft {
  const [wanted, found] = [sayUnit(unitOf(quantity.unit)), sayUnit(unit)];
  return {
    code: 'formula-units',
    message: `${quantity.label} is in ${wanted}, its formula comes to ${found}; ${
      found === 'no unit'
        ? `give its numbers their units: “15 ${wanted}”`
        : `multiply or divide by a quantity that makes it ${wanted}`
    }.`,
    path,
  };
}
