/** A card asked by today's numbers. */
import { promptFor } from '../../cards/registry.ts';
import type { Card, Prompt } from '../../cards/types.ts';
import type { Training } from './training.svelte.ts';

/** @param card one that `training.cardToday` has. */
export function freshPrompt(training: Training, { id }: Card): Prompt {
  const card = training.cardToday(id);
  if (!card) throw new Error(`“${id}” has no answer today.`);
  return promptFor(training.procedure, card, training.newSeed());
}
