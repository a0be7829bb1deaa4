/** Every formula that a published value can name. */
import { atmosphereFormulas } from './atmosphere-formulas.ts';
import { descentFormulas } from './descent-formulas.ts';
import type { Formulas } from './formula.ts';
import { turnFormulas } from './turn-formulas.ts';
import { windFormulas } from './wind-formulas.ts';

export const formulas: Formulas = {
  ...turnFormulas,
  ...descentFormulas,
  ...windFormulas,
  ...atmosphereFormulas,
};
