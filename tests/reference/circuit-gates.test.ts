/**
 * The circuit deck's gates against its own rules: who is on the values asks for no correction, and who is
 * inside the desired bands is never told to go around or warned of anything critical.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { controlOf, gateOf, neutralOf } from '../../src/deck/lookup.ts';
import { decide } from '../../src/rules/decide.ts';
import { readProcedure } from '../../src/rules/read.ts';
import type { PhaseRules, Procedure, State } from '../../src/rules/types.ts';
import { publishedValue } from './published-values.ts';
import { ftPerNm, turnRadiusFt } from './turn-in-wind.ts';

const text = readFileSync(new URL('../../decks/light-aircraft-circuit.deck.yaml', import.meta.url), 'utf8');

function procedureOf(deckText: string): Procedure {
  const { procedure, findings } = readProcedure(deckText);
  if (!procedure) throw new Error(findings.map(({ where, message }) => `${where}: ${message}`).join('\n'));
  return procedure;
}

/** What the gate of a phase asks of a quantity; what it doesn't ask follows from its position. */
function bandAt(procedure: Procedure, rules: PhaseRules, quantity: string) {
  const { values, position } = gateOf(procedure.deck, rules.phase.from);
  const band = values[quantity];
  if (band) return { target: band.target, ends: band.desired };
  const value = onCourse(quantity, position);
  return { target: value, ends: [value] };
}

function onCourse(quantity: string, position: { aheadFt: number; rightFt: number; courseDeg: number }) {
  switch (quantity) {
    case 'centreline':
      return position.rightFt;
    case 'spacing':
      return -position.rightFt / ftPerNm;
    case 'behind-wing':
      return (Math.atan2(-position.aheadFt, -position.rightFt) * 180) / Math.PI;
    case 'turn-to-go':
      return position.courseDeg;
    case 'roll-out':
      return position.rightFt + turnRadiusFt(70, 25);
    case 'past-point':
      return position.aheadFt - publishedValue('marking-aiming-point').value;
    case 'path':
      return 0;
    // The sink of the stabilised gate, an example of the deck.
    case 'sink':
      return 430;
    default:
      throw new Error(`Nothing says what ${quantity} is on course.`);
  }
}

/** Every combination of the ends of the desired bands. */
function corners(procedure: Procedure, rules: PhaseRules): State[] {
  return [...rules.box.keys()].reduce<State[]>(
    (states, quantity) =>
      states.flatMap((state) =>
        bandAt(procedure, rules, quantity).ends.map((value) => ({ ...state, [quantity]: value })),
      ),
    [{}],
  );
}

function targets(procedure: Procedure, rules: PhaseRules): State {
  return Object.fromEntries(
    [...rules.box.keys()].map((quantity) => [quantity, bandAt(procedure, rules, quantity).target]),
  );
}

function correctionsAtTargets(procedure: Procedure): string[] {
  return [...procedure.phases.values()].flatMap((rules) => {
    const { actions, unanswered } = decide(procedure, rules.phase.id, targets(procedure, rules));
    expect(unanswered).toEqual([]);
    return Object.entries(actions)
      .filter(([control, action]) => action !== neutralOf(controlOf(procedure.deck, control)).id)
      .map(([control, action]) => `${rules.phase.id}: ${control} ${action}`);
  });
}

function alarmsInDesiredBands(procedure: Procedure): string[] {
  const alarms = [...procedure.phases.values()].flatMap((rules) =>
    corners(procedure, rules).flatMap((state) => {
      const { reasons, overriding } = decide(procedure, rules.phase.id, state);
      return [...reasons, ...(overriding ? [overriding] : [])]
        .filter((reason) => reason.critical || reason === overriding)
        .map(({ table, rule }) => `${rules.phase.id}: ${table}/${rule}`);
    }),
  );
  return [...new Set(alarms)];
}

/** The shipped deck with one thing changed. */
function changed(from: string, to: string): Procedure {
  if (text.split(from).length !== 2) throw new Error(`The deck holds “${from}” not exactly once.`);
  return procedureOf(text.replace(from, to));
}

const shipped = procedureOf(text);

describe('the gates of the circuit and its rules', () => {
  test('there are states to look at in every phase, and each lies inside it', () => {
    expect([...shipped.phases.keys()]).toEqual([
      'downwind-leg',
      'descent-leg',
      'base-leg',
      'final-turn',
      'final-leg',
      'landing',
    ]);
    for (const rules of shipped.phases.values()) {
      const states = corners(shipped, rules);
      expect(states.length, rules.phase.id).toBeGreaterThanOrEqual(4);
      for (const state of [...states, targets(shipped, rules)])
        for (const [quantity, { lo, hi }] of rules.box) {
          expect(state[quantity], `${rules.phase.id} ${quantity}`).toBeGreaterThanOrEqual(lo);
          expect(state[quantity], `${rules.phase.id} ${quantity}`).toBeLessThanOrEqual(hi);
        }
    }
  });

  test('on the targets of a gate nothing needs a correction', () => {
    expect(correctionsAtTargets(shipped)).toEqual([]);
  });

  test('inside the desired bands of a gate nothing is critical and nobody goes around', () => {
    expect(alarmsInDesiredBands(shipped)).toEqual([]);
  });

  test.each([
    [
      'bank: "<= 10", turn-to-go: "> 15", roll-out: "< -100" }, then: keep-roll',
      'bank: "<= 10", turn-to-go: "> 15", roll-out: "< -100" }, then: roll-left',
      'final-turn: roll roll-left',
    ],
    [
      '{ id: on-speed, when: { airspeed: "[62..72]" }, then: hold-nose',
      '{ id: on-speed, when: { airspeed: "[62..72]" }, then: nose-up',
      'final-leg: pitch nose-up',
    ],
    [
      '{ id: spaced, when: { spacing: "[0.5..1]" }, then: keep-roll',
      '{ id: spaced, when: { spacing: "[0.5..1]" }, then: roll-left',
      'downwind-leg: roll roll-left',
    ],
    [
      '{ id: power-as-planned, when: {}, then: hold-power',
      '{ id: power-as-planned, when: {}, then: less-power',
      'landing: power less-power',
    ],
  ])('a correction at a target is found: %s', (from, to, found) => {
    expect(correctionsAtTargets(changed(from, to))).toContain(found);
  });

  test.each([
    [
      'id: slow-turn, when: { airspeed: "< 65" }',
      'id: slow-turn, when: { airspeed: "< 69" }',
      'final-turn: turn-speed/slow-turn',
    ],
    [
      'id: near-stall, when: { airspeed: "< 58" }',
      'id: near-stall, when: { airspeed: "< 66" }',
      'final-leg: off-path-go-around/near-stall',
    ],
    [
      '{ height: "> 20", past-point: "> 200" }',
      '{ height: "> 59", past-point: "> -1200" }',
      'landing: landing-go-around/too-high-too-late',
    ],
    [
      'id: far-too-slow, when: { airspeed: "< 65" }',
      'id: far-too-slow, when: { airspeed: "< 81" }',
      'downwind-leg: downwind-pitch/far-too-slow',
    ],
  ])('an alarm in a desired band is found: %s', (from, to, found) => {
    expect(alarmsInDesiredBands(changed(from, to))).toContain(found);
  });
});
