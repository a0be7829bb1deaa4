import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/deck/findings.ts';
import type { Deck } from '../../../src/deck/types.ts';
import { analyse, type AnalysisOptions } from '../../../src/rules/analyse.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { decide } from '../../../src/rules/decide.ts';
import { syntheticDeck, syntheticFaultyDeck } from '../../bench/synthetic-table.ts';
import { fixtureDeckText } from '../deck/fixture.ts';

function analysed(deck: Deck, options?: AnalysisOptions): readonly Finding[] {
  const { procedure, findings } = compileRules(deck);
  if (!procedure) throw new Error(findings.map(({ message }) => message).join('\n'));
  return analyse(procedure, options);
}

/** The fixture deck after an edit, which must find its place. */
function edited(...edits: [from: string, to: string][]): readonly Finding[] {
  const text = edits.reduce((before, [from, to]) => {
    expect(before).toContain(from);
    return before.replace(from, to);
  }, fixtureDeckText);
  return analysed(parse(text) as Deck).map((found) => ({
    ...found,
    message: found.message.replaceAll('\u00a0', ' '),
  }));
}

describe('a sound deck', () => {
  it('has no findings', () => {
    expect(edited()).toEqual([]);
  });
});

describe('a gap', () => {
  it('is told with phase, box and an example on the steps', () => {
    const findings = edited(['closure: "< 50" }', 'closure: "< 40" }']);
    expect(findings).toEqual([
      {
        code: 'gap',
        severity: 'error',
        path: ['tables', 0],
        message:
          'Every state needs an answer, but no rule of “Pitch by closure, far out” fits in “Far to middle” when altitude is 750 ft or less and closure is 40 to under 50 kt, for example altitude 475 ft, closure 45 kt: add a rule there, or widen one.',
        counterexample: { 'to-go': 4250, altitude: 475, closure: 45, sink: 500 },
      },
    ]);
  });

  it('may be a single value', () => {
    const findings = edited(['closure: "[50..70]"', 'closure: "(50..70]"']);
    expect(findings.map(({ code, counterexample }) => [code, counterexample?.['closure']])).toEqual([
      ['gap', 50],
    ]);
  });

  it('between two steps is one too, with an example from there', () => {
    const findings = edited(['closure: "< 50" }', 'closure: "<= 49" }']);
    expect(findings).toHaveLength(1);
    expect(findings[0]!.counterexample!['closure']).toBe(49.5);
  });

  it('is none where an overriding table decides', () => {
    // Below 50 ft the table for going around answers.
    expect(
      edited([
        'closure: "> 30" }, then: nose-up, because: Too fast',
        'closure: "> 30", altitude: ">= 50" }, then: nose-up, because: Too fast',
      ]),
    ).toEqual([]);
  });
});

describe('a conflict', () => {
  it('under “unique” is any overlap', () => {
    const findings = edited(['closure: "> 70" }', 'closure: ">= 70" }']);
    expect(findings).toMatchObject([
      {
        code: 'conflict',
        severity: 'error',
        path: ['tables', 0, 'rules', 1],
        message:
          'Under “unique” rules must not overlap, but “far-fast” and “far-fair” both fit in “Far to middle” when altitude is 750 ft or less and closure is 70 kt, for example altitude 475 ft, closure 70 kt, and ask for “Nose up” and “Hold”: narrow one of them, or take another hit policy.',
        counterexample: { closure: 70, altitude: 475 },
      },
    ]);
  });

  it('under “any” is an overlap of rules with different actions', () => {
    const findings = edited(['closure: "[5..30]" }', 'closure: "[5..35]" }']);
    expect(findings.map(({ code, path }) => [code, ...path])).toEqual([
      ['conflict', 'tables', 1, 'rules', 2],
      ['conflict', 'tables', 1, 'rules', 2],
    ]);
    expect(findings[0]!.message).toContain('Under “any” rules that overlap must ask for the same action');
  });

  it('is none where an overriding table decides', () => {
    expect(edited(['closure: "< 5" }', 'closure: "< 5", altitude: "-" }'])).toEqual([]);
    expect(
      edited([
        'then: nose-down, because: Falling back.',
        'then: nose-down, because: Falling back. }\n      - { id: again, when: { altitude: "< 50" }, then: hold-nose, because: Overridden.',
      ]).map(({ code }) => code),
    ).toEqual(['always-overridden']);
  });
});

describe('an idle rule', () => {
  it('fits nothing that can occur in the phase', () => {
    const findings = edited(['sink: "> 600" }', 'sink: "> 1000" }']);
    expect(findings).toMatchObject([
      {
        code: 'never-fires',
        severity: 'warning',
        path: ['tables', 2, 'rules', 0],
        message:
          'Every rule should fit some state, but “falling” fits none that can occur in “Far to middle”: mend its conditions, or take it out.',
      },
    ]);
  });

  it('is masked by those before it, of which only the needed ones are named', () => {
    const masked = '{ id: low, when: { altitude: "< 350" }';
    const findings = edited([masked, `{ id: low, when: { altitude: "> 700" }`]);
    expect(findings.map(({ code }) => code)).toEqual(['never-fires']);
    expect(findings[0]!.message).toContain('but “high” before it takes every state that “low” fits');
  });

  it('is masked by rules of a higher priority', () => {
    const findings = edited(
      ['sink: "> 400" }, then: more-power', 'sink: "> 400" }, then: less-power'],
      ['altitude: "<= 100" }', 'altitude: "-" }'],
    );
    expect(findings.map(({ code, path }) => [code, path[3]])).toEqual([
      ['never-fires', 0],
      ['never-fires', 1],
      ['pointless-rule', 2],
    ]);
    expect(findings[0]!.message).toContain(
      '“leave-low” of a higher priority takes every state that “sinking” fits',
    );
  });

  it('changes no decision', () => {
    const findings = edited([
      '{ id: low, when: { altitude: "< 350" }, then: more-power',
      '{ id: low, when: { altitude: "< 350" }, then: hold-power',
    ]);
    expect(findings).toMatchObject([
      {
        code: 'pointless-rule',
        severity: 'warning',
        path: ['tables', 2, 'rules', 2],
        message:
          'Every rule should change some decision, but without “low” all would be the same, for “steady” asks for the same action wherever it decides: take it out, or change its conditions or its action.',
      },
    ]);
  });

  it('is not pointless when it alone makes the decision critical', () => {
    expect(
      edited(['then: nose-up, critical: true,', 'then: nose-up,']).map(({ code, path }) => [code, path[3]]),
    ).toEqual([['pointless-rule', 1]]);
  });

  it('decides only between two steps', () => {
    const findings = edited([
      '{ id: low, when: { altitude: "< 350" }',
      '{ id: low, when: { altitude: "(350..355)" }',
    ]);
    expect(findings).toMatchObject([
      { code: 'between-steps', severity: 'warning', path: ['tables', 2, 'rules', 2] },
    ]);
  });

  it('is none while it decides in one of its phases', () => {
    // Altitude never goes above 400 ft in “Middle to near”, but it does in “Far to middle”.
    const findings = edited(['phases: [approach, arrival]', 'phases: [arrival]']);
    const idle = findings.filter(({ code }) => code === 'never-fires');
    expect(idle).toMatchObject([{ path: ['tables', 4, 'rules', 1] }]);
    expect(idle[0]!.message).toContain('“too-high” fits none that can occur in “Middle to near”');
  });
});

describe('a large table', () => {
  it.each([1, 2, 3])(
    'of 200 rules on 6 inputs is proved complete and free of conflicts (seed %d)',
    (seed) => {
      const deck = syntheticDeck(seed);
      expect(deck.tables![0]!.rules).toHaveLength(200);
      expect(analysed(deck)).toEqual([]);
    },
  );

  it.each([1, 2, 3])('has its gap and its conflicts found (seed %d)', (seed) => {
    const { deck, gap, conflict } = syntheticFaultyDeck(seed);
    const { procedure } = compileRules(deck);
    const findings = analysed(deck, { limit: 300 });
    const examples = (code: string) =>
      findings.filter((found) => found.code === code).map((found) => found.counterexample!);
    expect(examples('gap').length).toBeGreaterThan(0);
    for (const state of examples('gap')) {
      expect(state[gap.input]).toBeGreaterThanOrEqual(gap.from);
      expect(state[gap.input]).toBeLessThanOrEqual(gap.to);
      expect(decide(procedure!, 'leg', state).unanswered).toEqual(['large']);
    }
    expect(examples('conflict').length).toBeGreaterThan(0);
    for (const state of examples('conflict')) {
      expect(state[conflict.input]).toBeGreaterThanOrEqual(conflict.from);
      expect(state[conflict.input]).toBeLessThanOrEqual(conflict.to);
      expect(decide(procedure!, 'leg', state).conflicts[0]!.rules).toContain(conflict.rule);
    }
  });

  it('shows no more faults than asked for, and says that there are more', () => {
    const findings = analysed(syntheticFaultyDeck(1).deck, { limit: 2 });
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'error gap',
      'error conflict',
      'error conflict',
      'note analysis-incomplete',
    ]);
  });

  it('that takes more work than allowed is said to be unproved', () => {
    const findings = analysed(syntheticDeck(1), { work: 10_000 });
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'warning analysis-incomplete',
    ]);
    expect(findings[0]!.message).toContain('too tangled to be proved');
  });
});
