/** What the rule engine and the physics of the procedure have to say about a deck that can be read. */
import type { Finding } from '../deck/findings.ts';
import { analyse } from '../rules/analyse.ts';
import type { Procedure } from '../rules/types.ts';
import { legFindings } from './leg-findings.ts';

/** Findings by their path, without places in the text; see `placed`. */
export const judge = (procedure: Procedure): readonly Finding[] => [
  ...analyse(procedure),
  ...legFindings(procedure.deck),
];
