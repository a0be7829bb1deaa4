/** The legs between gates in words and numbers, as the briefing sheet and its pictures show them. */
import { decimalsOf, sayNumber } from '../../../deck/say.ts';
import type { Deck } from '../../../deck/types.ts';
import { ftPerNm } from '../../../motion/conversions.ts';
import { excessesOf, limitsOfLeg, type LimitKind } from '../../../motion/leg-limits.ts';
import { legsOf, type GateLeg, type WhyNoLeg } from '../../../motion/legs.ts';

export interface LegCell {
  readonly text: string;
  /** The same with the unit, where no head of a column says it. */
  readonly full: string;
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

/** Null: nothing to say, as of the bank of a straight leg. */
export interface LegCells {
  readonly time: LegCell;
  readonly distance: LegCell | null;
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
  const cell = (said: string | Said, ...kinds: LimitKind[]): LegCell => {
    const { text, full } = typeof said === 'string' ? { text: said, full: said } : said;
    const passed = kinds.find((kind) => over.has(kind));
    return { text, full, over: passed === undefined ? null : `over ${sayLimit(passed, over.get(passed)!)}` };
  };
  const { turn, meanSinkFtMin: sink, decelerationKtS: slowing } = flight;
  return {
    time: cell(saySeconds(flight.seconds)),
    distance: flight.distanceFt < 1 ? null : cell(sayDistance(flight.distanceFt)),
    height: sink === null ? null : cell(saySink(sink), 'sinkFtMin', 'climbFtMin'),
    airspeed: slowing === null ? null : cell(saySlowing(slowing), 'decelerationKtS', 'accelerationKtS'),
    bank:
      turn && cell(`${rounded(turn.bankDeg, over.has('bankDeg') ? 0.1 : 1)}° ${turn.direction}`, 'bankDeg'),
    radius: turn && cell(sayDistance(turn.radiusFt)),
    load: turn && cell(`${rounded(turn.loadFactor, 0.01)}\u00a0g`, 'loadFactor'),
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

interface Said {
  readonly text: string;
  readonly full: string;
}

/** "550", "680 up", "level"; ft/min. */
export function saySink(ftMin: number): Said {
  if (Math.abs(ftMin) < levelFtMin) return { text: 'level', full: 'level' };
  const [amount, way] = [rounded(Math.abs(ftMin), 10), ftMin > 0 ? '' : ' up'];
  return { text: `${amount}${way}`, full: `${amount}\u00a0ft/min${way}` };
}

/** "loses 2.7", "gains 0.2", "steady"; kt a second. */
function saySlowing(ktS: number): Said {
  if (Math.abs(ktS) < 0.05) return { text: 'steady', full: 'steady' };
  const text = `${ktS > 0 ? 'loses' : 'gains'} ${rounded(Math.abs(ktS), 0.1)}`;
  return { text, full: `${text}\u00a0kt/s` };
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

/** Beside each leg on the plan: its time, and the bank of a turn; the shorter words where those find no room. */
export const planNotes = (
  deck: Deck,
  day: Readonly<Record<string, number>>,
): readonly (readonly string[])[] =>
  legsOf(deck, day).map(({ flight }) => {
    if (!flight) return [];
    const time = saySeconds(flight.seconds);
    return flight.turn ? [`${time}, ${rounded(flight.turn.bankDeg, 1)}°`, time] : [time];
  });

/** Between two gates of the profile: the mean sink, "680 up" for a climb. */
export const profileNotes = (deck: Deck, day: Readonly<Record<string, number>>): readonly (string | null)[] =>
  legsOf(deck, day).map(({ flight }) =>
    flight && flight.meanSinkFtMin !== null ? saySink(flight.meanSinkFtMin).text : null,
  );
