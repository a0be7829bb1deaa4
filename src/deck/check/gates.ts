/** Gates: how they are recognised, what they ask for, how they are called. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import type { Detect } from '../types.ts';
import { ifNotPositive, isOrdered, lies } from './ranges.ts';
import { ifUnknown } from './unknown-name.ts';

export function* checkGates(parts: DeckParts): Generator<Draft> {
  const labels = new Set<string>();
  for (const gate of parts.gates) {
    if (gate.detect) yield* checkDetection(parts, gate.detect);
    const label = gate.label.trim().toLowerCase();
    if (labels.has(label) && !parts.isBroken(gate))
      yield {
        code: 'same-label',
        severity: 'warning',
        message: `Gates should be told apart by their labels, ${quoted(gate.label)} is here again; change one of the two.`,
        path: parts.pathOf(gate, 'label'),
      };
    labels.add(label);
    if (Object.keys(gate.values).length === 0 && !parts.isBroken(gate))
      yield {
        code: 'gate-without-values',
        severity: 'warning',
        message:
          'A gate should say what to have there, this one has no values; add one, or take the gate out.',
        path: parts.pathOf(gate, 'values'),
        onKey: true,
      };
  }
}

const fullCircle: readonly [number, number] = [0, 360];

function* checkDetection(parts: DeckParts, detect: Detect): Generator<Draft> {
  switch (detect.kind) {
    case 'falling':
    case 'rising': {
      yield* ifUnknown(parts, 'quantity', detect.quantity, parts.pathOf(detect, 'quantity'));
      const range = parts.known.quantity.get(detect.quantity)?.range;
      if (range && isOrdered(range) && !lies(detect.value, range))
        yield {
          code: 'value-outside-range',
          message: `The value to pass must lie inside its quantity’s range ${sayInterval(range)}, found ${sayFigure(detect.value)}; move it or widen the range.`,
          path: parts.pathOf(detect, 'value'),
        };
      return;
    }
    case 'distance':
      return yield* ifNotPositive(detect.ft, 'A distance', parts.pathOf(detect, 'ft'));
    case 'turned':
      return yield* ifNotPositive(
        detect.deg,
        'The heading change, left or right,',
        parts.pathOf(detect, 'deg'),
      );
    case 'bearing':
      if (!lies(detect.relativeDeg, fullCircle))
        yield {
          code: 'bearing-outside-circle',
          message: `A bearing goes from 0 to 360, found ${sayFigure(detect.relativeDeg)}; write ${sayFigure(((detect.relativeDeg % 360) + 360) % 360)}.`,
          path: parts.pathOf(detect, 'relativeDeg'),
        };
  }
}
