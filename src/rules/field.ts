/** A phase as one finite space with the region of every rule in it: what questions about states are asked of. */
import type { Deck } from '../deck/types.ts';
import { intersect } from './intervals.ts';
import { onSteps } from './on-steps.ts';
import { callableRegionOf } from './region.ts';
import { blockOf, meet, spaceFor, wholeOf, type Block, type Box, type Space } from './space.ts';
import { multiplesIn } from './steps.ts';
import { quantityOf } from '../deck/lookup.ts';
import type { Interval, PhaseRules, Procedure, Rule, Table } from './types.ts';

/** The states of a phase that can be read off, and who decides them. */
export interface Field {
  readonly rules: PhaseRules;
  readonly space: Space;
  /** States of which every value is a multiple of its quantity's step. */
  readonly callable: Block;
  /** The callable states that a rule decides, as disjoint blocks; none for one that decides none. */
  regionOf(table: Table, rule: Rule): readonly Block[];
}

const known = new WeakMap<PhaseRules, Field>();

/** Made once for a phase; regions when they are first asked for. */
export function fieldOf(procedure: Procedure, rules: PhaseRules): Field {
  const there = known.get(rules);
  if (there) return there;
  const tables = [...rules.overriding, ...rules.base];
  const space = spaceFor(
    rules.box,
    tables.flatMap((table) => table.rules),
  );
  const callable = onSteps(procedure.deck, space);
  const regions = new Map<Rule, readonly Block[]>();
  const field: Field = {
    rules,
    space,
    callable,
    regionOf(table, rule) {
      let region = regions.get(rule);
      if (!region) {
        region = callableRegionOf(procedure, rules, table, rule).flatMap((box) => {
          const block = blockOf(space, { when: box });
          return (block && meet(space, block, callable)) ?? [];
        });
        regions.set(rule, region);
      }
      return region;
    },
  };
  known.set(rules, field);
  return field;
}

/** A single value counts as callable: it was called. */
const holdsCallable = (piece: Interval, step: number): boolean =>
  piece.lo === piece.hi || multiplesIn(piece, step).count > 0;

/** The atoms of a field that hold a callable value of a box; null when some input of the box has none. */
export function callableIn(deck: Deck, { space }: Field, box: Box): Block | null {
  const block = wholeOf(space);
  for (const { quantity, range, atoms, firstWord, words } of space.axes) {
    const set = box.get(quantity) ?? [range];
    const { step } = quantityOf(deck, quantity);
    block.fill(0, firstWord, firstWord + words);
    let some = false;
    atoms.forEach((atom, i) => {
      if (!intersect(atom, set).some((piece) => holdsCallable(piece, step))) return;
      block[firstWord + (i >> 5)]! |= 1 << (i & 31);
      some = true;
    });
    if (!some) return null;
  }
  return block;
}
