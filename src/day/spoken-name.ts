/** A quantity's name inside a sentence. */
import { uncapitalised } from '../deck/quoting.ts';
import type { Quantity } from '../deck/types.ts';

export const spokenName = ({ spoken, label }: Quantity): string => spoken ?? uncapitalised(label);
