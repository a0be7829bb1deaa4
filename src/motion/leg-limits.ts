/** Whether a leg stays within what the aeroplane can do: at the targets, or at least somewhere in the adequate bands. */
import type { Deck, FlyingLimits } from '../deck/types.ts';
import type { Vector } from './even-turn.ts';
import { airspeedAt, heightAt, type GateValue } from './gate-values.ts';
import { authoredLeg, flyLeg, type LegFlight } from './legs.ts';

export type LimitKind = keyof FlyingLimits;

/** A limit that a leg passes, in the unit its key names. */
export interface Excess {
  readonly kind: LimitKind;
  readonly value: number;
  readonly most: number;
}

/** The limits of the leg that begins at a gate: the aeroplane's, with the leg's own in their place. */
export const limitsOfLeg = (deck: Deck, from: string): FlyingLimits => ({
  ...deck.flying?.most,
  ...authoredLeg(deck, from)?.most,
});

/** What is shown of each value; half of it is no excess yet. */
const steps: Readonly<Record<LimitKind, number>> = {
  bankDeg: 0.1,
  loadFactor: 0.01,
  sinkFtMin: 1,
  climbFtMin: 1,
  decelerationKtS: 0.1,
  accelerationKtS: 0.1,
};

/** To the step in which a limit's values are shown. */
export const shownStep = (kind: LimitKind): number => steps[kind];

/** The limits that a leg passes, as far as it is known; in the order of the deck's keys. */
export function excessesOf(flight: LegFlight, limits: FlyingLimits): readonly Excess[] {
  const { turn, meanSinkFtMin: sink, decelerationKtS: slowing } = flight;
  const values: Readonly<Record<LimitKind, number | null>> = {
    bankDeg: turn && turn.bankDeg,
    loadFactor: turn && turn.loadFactor,
    sinkFtMin: sink,
    climbFtMin: sink === null ? null : -sink,
    decelerationKtS: slowing,
    accelerationKtS: slowing === null ? null : -slowing,
  };
  return (Object.keys(values) as LimitKind[]).flatMap((kind) => {
    const [value, most] = [values[kind], limits[kind]];
    if (value === null || most === undefined || value - most < steps[kind] / 2) return [];
    return [{ kind, value, most }];
  });
}

export interface BestLeg {
  /** What is passed whatever is flown within the adequate bands; empty when something there can be flown. */
  readonly excesses: readonly Excess[];
  /** The airspeeds of the gates at which the least is passed, kt; null when the gates don't say them. */
  readonly airspeedKt: readonly [number, number] | null;
}

/** Speeds of each gate that are tried in a round, and rounds: each looks closer around the best so far. */
const grid = 9;
const rounds = 5;
const closer = 0.35;

/**
 * The leg flown as kindly as the adequate bands of the two gates allow: speeds and heights anywhere inside
 * them, the wind and the places of the gates as they are. Begins with the targets and looks closer and closer
 * around the best speeds; the heights are then chosen exactly. Null when no speeds there give a leg at all.
 * @param index of the gate at which the leg begins. @param wind see `windOfDay`.
 */
export function bestLeg(deck: Deck, index: number, wind: Vector): BestLeg | null {
  const [from, to] = [deck.gates[index]!, deck.gates[index + 1]!];
  const limits = limitsOfLeg(deck, from.id);
  const [one, other] = [airspeedAt(deck, from, wind), airspeedAt(deck, to, wind)];
  const heights = [heightAt(deck, from), heightAt(deck, to)] as const;
  const at = (airspeedKt: readonly [number, number] | null): Scored | null => {
    const flown = flyLeg(deck, index, wind, { airspeedKt, heightFt: null });
    if ('kind' in flown) return null;
    const kindest = { ...flown, meanSinkFtMin: kindestSink(heights, flown.seconds, limits) };
    const excesses = excessesOf(kindest, limits);
    return { excesses, airspeedKt, worst: Math.max(0, ...excesses.map(shareOver)) };
  };
  if (!one || !other) return at(null);

  let best = at([one.target, other.target]);
  let ranges = [one.adequate, other.adequate] as const;
  for (let round = 0; round < rounds; round++) {
    for (const first of spread(ranges[0]))
      for (const last of spread(ranges[1])) {
        const found = at([first, last]);
        if (found && (best === null || found.worst < best.worst)) best = found;
        if (best?.worst === 0) return best;
      }
    if (best === null || best.worst === 0) return best;
    const [first, last] = best.airspeedKt!;
    ranges = [around(first, ranges[0], one.adequate), around(last, ranges[1], other.adequate)];
  }
  return best;
}

interface Scored extends BestLeg {
  /** The largest share by which a limit is passed. */
  readonly worst: number;
}

const shareOver = ({ value, most }: Excess): number => (value - most) / most;

type Range = readonly [number, number];

const spread = ([from, to]: Range): readonly number[] =>
  from === to ? [from] : Array.from({ length: grid }, (_, i) => from + ((to - from) * i) / (grid - 1));

function around(middle: number, [from, to]: Range, [lowest, highest]: Range): Range {
  const half = ((to - from) * closer) / 2;
  return [Math.max(lowest, middle - half), Math.min(highest, middle + half)];
}

/** The mean sink nearest to what the limits allow, of all that the adequate heights give in this time. */
function kindestSink(
  [high, low]: readonly [GateValue | null, GateValue | null],
  seconds: number,
  { sinkFtMin = Infinity, climbFtMin = Infinity }: FlyingLimits,
): number | null {
  if (!high || !low) return null;
  const least = ((high.adequate[0] - low.adequate[1]) / seconds) * 60;
  const most = ((high.adequate[1] - low.adequate[0]) / seconds) * 60;
  if (least > sinkFtMin) return least;
  return most < -climbFtMin ? most : Math.min(most, Math.max(least, 0));
}
