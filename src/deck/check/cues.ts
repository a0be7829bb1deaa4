/** Cues that tell a value which is asked at their gate: who sees the cue needn't know the answer. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted } from '../quoting.ts';
import type { Gate, Quantity } from '../types.ts';
import { units, type UnitId } from '../units.ts';

export function* checkCues(parts: DeckParts): Generator<Draft> {
  for (const gate of parts.gates)
    for (const [id, { target }] of Object.entries(gate.values)) {
      const quantity = parts.known.quantity.get(id);
      if (!quantity || parts.isBroken(quantity) || !tells(gate, quantity, target)) continue;
      yield {
        code: 'cue-tells-value',
        severity: 'warning',
        message: `A cue should not tell a value that is asked at its gate, ${quoted(gate.cue)} tells ${quantity.label}; say what the pilot sees without the number.`,
        path: parts.pathOf(gate, 'cue'),
      };
    }
}

const numbers = /(?<![\w.,-])(\d[\d,]*(?:\.\d+)?)\s?([\p{L}°%/'.]*)/gu;
/** A smaller number without a unit says too little: "2 reds", "spot 5". */
const leastTelling = 10;

function tells(gate: Gate, quantity: Quantity, target: number): boolean {
  for (const [, written = '', after = ''] of gate.cue.matchAll(numbers)) {
    const value = Number(written.replaceAll(',', ''));
    if (value !== Math.abs(target)) continue;
    const unit = unitIn(after);
    if (unit === quantity.unit) return true;
    if (unit === null && (value >= leastTelling || names(gate.cue, quantity))) return true;
  }
  return false;
}

/** The unit that a word after a number stands for; null when it stands for none. */
function unitIn(word: string): UnitId | null {
  const wanted = word.replace(/\.$/, '').toLowerCase();
  const found = Object.entries(units).find(
    ([id, { symbol, spoken, typed }]) =>
      wanted !== '' &&
      [id, symbol, ...spoken.split(' ').slice(0, 1), ...typed].some((one) => one.toLowerCase() === wanted),
  );
  return (found?.[0] as UnitId | undefined) ?? null;
}

const names = (cue: string, { label, spoken }: Quantity): boolean =>
  [label, spoken ?? label].some((name) => cue.toLowerCase().includes(name.toLowerCase()));
