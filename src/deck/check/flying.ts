/** What the aeroplane can do: limits with sense, speeds in knots, legs that there are. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { isList } from '../plain-data.ts';
import { quoted, sayFigure } from '../quoting.ts';
import type { FlyingLimits } from '../types.ts';
import { ifNotPositive } from './ranges.ts';
import { ifUnknown, repeated } from './unknown-name.ts';

export function* checkFlying(parts: DeckParts): Generator<Draft> {
  const { flying } = parts;
  if (!flying) return;
  yield* checkSpeeds(parts, flying);
  yield* checkLimits(flying.most, ['flying', 'most']);
  const legs = flying.legs ?? [];
  for (const leg of legs) {
    yield* checkBeginning(parts, leg.from, parts.pathOf(leg, 'from'));
    if (leg.seconds !== undefined)
      yield* ifNotPositive(leg.seconds, 'The time a leg takes', parts.pathOf(leg, 'seconds'));
    if (leg.most) yield* checkLimits(leg.most, parts.pathOf(leg, 'most'));
  }
  const froms = legs.map(({ from }) => from);
  for (const draft of repeated(froms, ['flying', 'legs'])) yield { ...draft, path: [...draft.path, 'from'] };
}

function* checkSpeeds(parts: DeckParts, flying: NonNullable<DeckParts['flying']>): Generator<Draft> {
  for (const key of ['airspeed', 'closure'] as const) {
    const id = flying[key];
    if (id === undefined) continue;
    yield* ifUnknown(parts, 'quantity', id, ['flying', key]);
    const quantity = parts.known.quantity.get(id);
    if (quantity && quantity.unit !== 'kt')
      yield {
        code: 'not-a-speed',
        message: `The speed of a leg must be a quantity in kt, found ${quoted(id)} in ${quantity.unit}; name the one that is a speed.`,
        path: ['flying', key],
      };
  }
  if (flying.airspeed === undefined && flying.closure === undefined && parts.whole)
    yield {
      code: 'not-a-speed',
      message:
        'Legs are worked out from a speed, found neither “airspeed” nor “closure” here; name the quantity that is one.',
      path: ['flying'],
      onKey: true,
    };
}

/** Of each limit: what it is called, and between which values it has sense. */
const limits: Readonly<Record<keyof FlyingLimits, string>> = {
  bankDeg: 'The most bank',
  loadFactor: 'The most load factor',
  sinkFtMin: 'The most sink',
  climbFtMin: 'The most climb',
  decelerationKtS: 'The most deceleration',
  accelerationKtS: 'The most acceleration',
};

function* checkLimits(most: FlyingLimits, path: DocumentPath): Generator<Draft> {
  for (const [key, what] of Object.entries(limits) as [keyof FlyingLimits, string][]) {
    const value = most[key];
    if (value === undefined) continue;
    const here = [...path, key];
    yield* ifNotPositive(value, what, here);
    if (key === 'bankDeg' && value >= 90)
      yield {
        code: 'senseless-limit',
        message: `A level turn has less than 90° of bank, found ${sayFigure(value)}; write what the aeroplane can hold.`,
        path: here,
      };
    if (key === 'loadFactor' && value > 0 && value < 1)
      yield {
        code: 'senseless-limit',
        message: `A load factor in level flight is 1 or more, found ${sayFigure(value)}; write what the aeroplane can hold.`,
        path: here,
      };
  }
}

/** A leg begins at a gate that has another after it. */
function* checkBeginning(parts: DeckParts, id: string, path: DocumentPath): Generator<Draft> {
  yield* ifUnknown(parts, 'gate', id, path);
  const order = parts.orderOfGate(id);
  const gates = parts.data['gates'];
  if (order === undefined || !isList(gates) || order < gates.length - 1) return;
  yield {
    code: 'leg-from-last-gate',
    message: `A leg leads to the next gate, ${quoted(id)} is the last; name the gate before it or take the leg out.`,
    path,
  };
}
