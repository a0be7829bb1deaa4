/** Wind, wind over deck, and the pattern at a ship, as published values name them. */
import { thumbSecondsPastAbeam } from '../motion/final-turn.ts';
import { wingShare } from '../motion/lift.ts';
import { slowingDistanceFt, slowingSeconds } from '../motion/slowing.ts';
import { trueWindBehind, windOverDeck } from '../motion/wind-over-deck.ts';
import { sixthsOfCrosswind, windComponents, windTriangle } from '../motion/wind.ts';
import { formula, type Formulas } from './formula.ts';

const headKt = (wind: number, from: number, course: number) => windComponents(wind, from, course).headKt;
const acrossKt = (wind: number, from: number, course: number) =>
  Math.abs(windComponents(wind, from, course).fromRightKt);
const overDeck = (speedKt: number, fromDeg: number, courseDeg: number, shipKt: number) =>
  windOverDeck({ speedKt, fromDeg }, { courseDeg, speedKt: shipKt });
const behind = (speedKt: number, fromDeg: number, courseDeg: number, shipKt: number) =>
  trueWindBehind({ speedKt, fromDeg }, { courseDeg, speedKt: shipKt });

export const windFormulas: Formulas = {
  // Wind
  headwindKt: formula('wind × cos(angle)', headKt, 'windKt', 'windFromDeg', 'courseDeg'),
  crosswindKt: formula('wind × sin(angle), either side', acrossKt, 'windKt', 'windFromDeg', 'courseDeg'),
  crabDeg: formula(
    'arcsin(wind across / airspeed)',
    (kt: number, across: number) => windTriangle(kt, 0, across, 90)?.crabDeg ?? null,
    'airspeedKt',
    'acrossKt',
  ),
  triangleHeadingDeg: formula(
    'track + arcsin(wind across / airspeed)',
    (kt: number, track: number, wind: number, from: number) =>
      windTriangle(kt, track, wind, from)?.headingDeg ?? null,
    'airspeedKt',
    'trackDeg',
    'windKt',
    'windFromDeg',
  ),
  triangleGroundSpeedKt: formula(
    'airspeed × cos(crab) − wind from ahead',
    (kt: number, track: number, wind: number, from: number) =>
      windTriangle(kt, track, wind, from)?.groundSpeedKt ?? null,
    'airspeedKt',
    'trackDeg',
    'windKt',
    'windFromDeg',
  ),
  sixthsOfCrosswind: formula('angle / 60°, at most 1', sixthsOfCrosswind, 'angleDeg'),
  windOverDeckKt: formula(
    '|true wind − ship’s way|',
    (wind: number, from: number, course: number, ship: number) => overDeck(wind, from, course, ship).speedKt,
    'windKt',
    'windFromDeg',
    'shipCourseDeg',
    'shipKt',
  ),
  windOverDeckFromDeg: formula(
    'direction of true wind − ship’s way, off the bow',
    (wind: number, from: number, course: number, ship: number) => overDeck(wind, from, course, ship).fromDeg,
    'windKt',
    'windFromDeg',
    'shipCourseDeg',
    'shipKt',
  ),
  trueWindKt: formula(
    '|wind over deck + ship’s way|',
    (felt: number, from: number, course: number, ship: number) => behind(felt, from, course, ship).speedKt,
    'feltKt',
    'feltFromDeg',
    'shipCourseDeg',
    'shipKt',
  ),
  trueWindFromDeg: formula(
    'direction of wind over deck + ship’s way',
    (felt: number, from: number, course: number, ship: number) => behind(felt, from, course, ship).fromDeg,
    'feltKt',
    'feltFromDeg',
    'shipCourseDeg',
    'shipKt',
  ),
  // The pattern at a ship
  thumbSecondsPastAbeam: formula('15 s − 1 s for each knot', thumbSecondsPastAbeam, 'headwindKt'),
  wingShare: formula('(airspeed / wingborne airspeed)²', wingShare, 'airspeedKt', 'wingborneKt'),
  slowingSeconds: formula(
    'change of speed / deceleration',
    slowingSeconds,
    'fromKt',
    'toKt',
    'decelerationKtS',
  ),
  slowingDistanceFt: formula(
    '(speed² − speed²) / (2 × deceleration)',
    slowingDistanceFt,
    'fromKt',
    'toKt',
    'decelerationKtS',
  ),
};
