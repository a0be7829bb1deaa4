/** The legs between gates in words and numbers, as the briefing sheet and its pictures show them. */
import { decimalsOf, sayNumber } from '../../../deck/say.ts';
import type { Deck } from '../../../deck/types.ts';
import { ftPerNm } from '../../../motion/conversions.ts';
import { excessesOf, limitsOfLeg, type LimitKind } from '../../../motion/leg-limits.ts';
import { legsOf, type GateLeg, type WhyNoLeg } from '../../../motion/legs.ts';

export interface LegCell {
  readonly text: string;
  /** The limit that is passed, in words: "over 30°". */
  readonly over: string | null;
}

export interface LegRow {
  readonly leg: GateLeg;
  readonly from: { readonly number: number; readonly label: string };
  readonly to: { readonly number: number; readonly label: string };
  /** Null where the leg can't be worked out: then `why` says it. */
  readonly cells: LegCells | null;
  readonly why: string | null;
}

/** Null: nothing to say. */
export interface LegCells {
  readonly time: LegCell;
  readonly distance: LegCell;
  readonly height: LegCell | null;
  readonly airspeed: LegCell | null;
  readonly bank: LegCell | null;
  readonly radius: LegCell | null;
  readonly load: LegCell | null;
}

/**
 * One row between each gate and the next; none for a deck that doesn't say how its legs are flown.
 * @param deck with the bands of the day. @param day what is set in place of the deck's settings.
 */
export function legRows(deck: Deck, day: Readonly<Record<string, number>>): readonly LegRow[] {
  return legsOf(deck, day).map((leg, i) => ({
    leg,
    from: { number: i + 1, label: deck.gates[i]!.label },
    to: { number: i + 2, label: deck.gates[i + 1]!.label },
    cells: cellsOf(deck, leg),
    why: leg.why && sayWhy(deck, leg.why),
  }));
}

function cellsOf(deck: Deck, { from, flight }: GateLeg): LegCells | null {
  if (!flight) return null;
  const over = new Map(excessesOf(flight, limitsOfLeg(deck, from)).map(({ kind, most }) => [kind, most]));
  const cell = (text: string, ...kinds: LimitKind[]): LegCell => {
    const passed = kinds.find((kind) => over.has(kind));
    return { text, over: passed === undefined ? null : `over ${sayLimit(passed, over.get(passed)!)}` };
  };
  const { turn, meanSinkFtMin: sink, decelerationKtS: slowing } = flight;
  return {
    time: cell(saySeconds(flight.seconds)),
    distance: cell(sayDistance(flight.distanceFt)),
    height: sink === null ? null : cell(saySink(sink), 'sinkFtMin', 'climbFtMin'),
    airspeed: slowing === null ? null : cell(saySlowing(slowing), 'decelerationKtS', 'accelerationKtS'),
    bank: turn && cell(`${rounded(turn.bankDeg, 1)}° ${turn.direction}`, 'bankDeg'),
    radius: turn && cell(sayDistance(turn.radiusFt)),
    load: turn && cell(`${rounded(turn.loadFactor, 0.05)}\u00a0g`, 'loadFactor'),
  };
}

const rounded = (value: number, step: number): string =>
  sayNumber(Number((Math.round(value / step) * step).toFixed(decimalsOf(step))), step);

/** "28 s", "1 min 5 s" from a minute and a half on. */
export function saySeconds(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 90) return `${whole}\u00a0s`;
  return `${Math.floor(whole / 60)}\u00a0min ${whole % 60}\u00a0s`;
}

/** In nautical miles from one on. */
const sayDistance = (ft: number): string =>
  ft >= ftPerNm ? `${rounded(ft / ftPerNm, 0.1)}\u00a0nm` : `${rounded(ft, 10)}\u00a0ft`;

/** Less than this is level flight to a pilot. */
const levelFtMin = 25;

/** "550 down", "680 up", "level": ft/min. */
export function saySink(ftMin: number): string {
  if (Math.abs(ftMin) < levelFtMin) return 'level';
  return `${rounded(Math.abs(ftMin), 10)} ${ftMin > 0 ? 'down' : 'up'}`;
}

/** "2.7 off", "0.2 on", "steady": kt a second. */
function saySlowing(ktS: number): string {
  if (Math.abs(ktS) < 0.05) return 'steady';
  return `${rounded(Math.abs(ktS), 0.1)} ${ktS > 0 ? 'slower' : 'faster'}`;
}

function sayLimit(kind: LimitKind, most: number): string {
  switch (kind) {
    case 'bankDeg':
      return `${sayNumber(most)}°`;
    case 'loadFactor':
      return `${sayNumber(most)}\u00a0g`;
    default:
      return sayNumber(most);
  }
}

function sayWhy(deck: Deck, why: WhyNoLeg): string {
  switch (why.kind) {
    case 'no-speed':
      return `no speed given at ${deck.gates.find(({ id }) => id === why.gate)!.label}`;
    case 'no-way':
      return 'no way forward against the day’s wind';
    case 'aside':
      return 'flown aside, and no time given';
    case 'no-turn':
      return 'no single turn joins the two gates';
  }
}
