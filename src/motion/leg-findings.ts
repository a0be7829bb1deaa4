/** Legs that the aeroplane can't fly within the limits the deck states, on the deck's own day. */
import type { DocumentPath, Finding, Severity } from '../deck/findings.ts';
import { sayNumber } from '../deck/say.ts';
import type { Deck } from '../deck/types.ts';
import type { MotionCode } from './codes.ts';
import { airspeedAt } from './gate-values.ts';
import { bestLeg, excessesOf, limitsOfLeg, shownStep, type Excess, type LimitKind } from './leg-limits.ts';
import { legsOf, windOfDay, type GateLeg, type WhyNoLeg } from './legs.ts';

/**
 * A finding for each limit that a leg passes: an error when it does so whatever adequate values are flown,
 * a warning when only the targets ask too much; and a warning for a leg that can't be worked out. Paths are
 * those of the gate where the leg ends. None for a deck that doesn't say what the aeroplane can do.
 */
export function legFindings(deck: Deck): readonly Finding[] {
  const wind = windOfDay(deck, {});
  return legsOf(deck).flatMap((leg, index) => {
    if (leg.why) return [notWorkedOut(deck, leg, leg.why, index)];
    const asked = excessesOf(leg.flight!, limitsOfLeg(deck, leg.from));
    if (asked.length === 0) return [];
    const best = bestLeg(deck, index, wind) ?? { excesses: asked, airspeedKt: null };
    if (best.excesses.length > 0) return best.excesses.map((excess) => notFlyable(deck, leg, excess, index));
    return asked.map((excess) => notAtTargets(deck, leg, excess, index, best.airspeedKt));
  });
}

const finding = (code: MotionCode, severity: Severity, message: string, path: DocumentPath): Finding => ({
  code,
  severity,
  message,
  path,
});

/** "from “Turn-in” to “Groove”" */
function between(deck: Deck, { from, to }: GateLeg): string {
  const label = (id: string): string => deck.gates.find((gate) => gate.id === id)!.label;
  return `from “${label(from)}” to “${label(to)}”`;
}

function notFlyable(deck: Deck, leg: GateLeg, excess: Excess, index: number): Finding {
  const message = `A leg must be flown within the aeroplane’s limits, ${between(deck, leg)} it takes ${tooMuch(excess)}, whatever adequate values are flown; ${words[excess.kind].mend}, or raise the limit in “flying”.`;
  return finding('leg-not-flyable', 'error', message, pathOf(deck, index, excess.kind));
}

function notAtTargets(
  deck: Deck,
  leg: GateLeg,
  excess: Excess,
  index: number,
  speeds: readonly [number, number] | null,
): Finding {
  const isOfSpeed = !['sinkFtMin', 'climbFtMin'].includes(excess.kind);
  const would =
    isOfSpeed && speeds
      ? `airspeeds of ${sayNumber(Math.round(speeds[0]))} and ${sayNumber(Math.round(speeds[1]))} kt would do`
      : words[excess.kind].mend;
  const message = `Targets should be flown within the aeroplane’s limits, ${between(deck, leg)} they take ${tooMuch(excess)}; ${would}, or raise the limit in “flying”.`;
  return finding('leg-not-at-targets', 'warning', message, pathOf(deck, index, excess.kind));
}

interface LimitWords {
  readonly say: (value: string) => string;
  readonly unit: string;
  readonly mend: string;
}

const wider = 'move the gates apart or lower the speeds';
const flatter = 'move the gates apart or bring their heights nearer to each other';
const evener = 'move the gates apart or bring their speeds nearer to each other';
const words: Readonly<Record<LimitKind, LimitWords>> = {
  bankDeg: { say: (value) => `${value} of bank`, unit: '°', mend: wider },
  loadFactor: { say: (value) => `a load factor of ${value}`, unit: '\u00a0g', mend: wider },
  sinkFtMin: { say: (value) => `a mean sink of ${value}`, unit: '\u00a0ft/min', mend: flatter },
  climbFtMin: { say: (value) => `a mean climb of ${value}`, unit: '\u00a0ft/min', mend: flatter },
  decelerationKtS: { say: (value) => `a loss of ${value} a second`, unit: '\u00a0kt', mend: evener },
  accelerationKtS: { say: (value) => `a gain of ${value} a second`, unit: '\u00a0kt', mend: evener },
};

/** "38° of bank, 8° more than the 30° stated," */
function tooMuch({ kind, value, most }: Excess): string {
  const { say, unit } = words[kind];
  const written = (number: number): string =>
    `${sayNumber(Number((Math.round(number / shownStep(kind)) * shownStep(kind)).toFixed(3)))}${unit}`;
  return `${say(written(value))}, ${written(value - most)} more than the ${written(most)} stated`;
}

function pathOf(deck: Deck, index: number, kind: LimitKind): DocumentPath {
  const gate = deck.gates[index + 1]!;
  const quantity =
    kind === 'sinkFtMin' || kind === 'climbFtMin'
      ? deck.reference.height
      : kind === 'decelerationKtS' || kind === 'accelerationKtS'
        ? airspeedAt(deck, gate, windOfDay(deck, {}))?.quantity
        : undefined;
  return quantity !== undefined && gate.values[quantity]
    ? ['gates', index + 1, 'values', quantity]
    : ['gates', index + 1, 'position'];
}

function notWorkedOut(deck: Deck, leg: GateLeg, why: WhyNoLeg, index: number): Finding {
  const [from, to] = [deck.gates[index]!, deck.gates[index + 1]!];
  const seconds = 'say the “seconds” of the leg in “flying”';
  const path = ['gates', index + 1, 'position'];
  const said = (rule: string, found: string, mend: string, at: DocumentPath = path): Finding =>
    finding(
      'leg-not-worked-out',
      'warning',
      `${rule}, ${between(deck, leg)} ${found}; ${mend}, or ${seconds}.`,
      at,
    );
  switch (why.kind) {
    case 'no-speed': {
      const here = why.gate === from.id ? index : index + 1;
      return said(
        'A leg is worked out from the speeds at both its gates',
        `there is none at “${deck.gates[here]!.label}”`,
        'add a band of it',
        ['gates', here, 'values'],
      );
    }
    case 'no-way':
      return said(
        'A leg needs a speed towards its end',
        'the speeds in the day’s wind leave none',
        'raise a speed',
      );
    case 'aside':
      return said(
        'A straight leg leads ahead on the course',
        'the next gate lies aside, behind or over the same point',
        'check positions and courses',
      );
    case 'no-turn':
      return said(
        'One even turn must join the courses of two gates',
        `no turn joins courses ${sayNumber(from.position.courseDeg)}° and ${sayNumber(to.position.courseDeg)}° where the gates lie`,
        'check positions and courses',
      );
  }
}
