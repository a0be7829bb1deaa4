import { describe, expect, it } from 'vitest';
import { loadDeck } from '../../../src/deck/load.ts';
import {
  actionOf,
  areOpposite,
  checklistOf,
  controlOf,
  gateIndexOf,
  gateOf,
  neutralOf,
  phaseOf,
  quantityOf,
  sourceOf,
  tableOf,
} from '../../../src/deck/lookup.ts';
import { fixtureDeckText } from './fixture.ts';

const deck = loadDeck(fixtureDeckText).deck!;
const pitch = controlOf(deck, 'pitch');
const power = controlOf(deck, 'power');

describe('looking a thing up by its id', () => {
  it.each([
    ['quantity', quantityOf, 'altitude'],
    ['gate', gateOf, 'near'],
    ['phase', phaseOf, 'arrival'],
    ['control', controlOf, 'power'],
    ['table', tableOf, 'abandon'],
    ['checklist', checklistOf, 'final-checks'],
  ] as const)('finds the %s', (_, find, id) => {
    expect(find(deck, id).id).toBe(id);
  });

  it('finds an action of a control', () => {
    expect(actionOf(pitch, 'nose-up').label).toBe('Nose up');
  });

  it('throws for an id that a checked deck would not name', () => {
    expect(() => gateOf(deck, 'altitude')).toThrow('No gate “altitude” in the deck.');
    expect(() => actionOf(pitch, 'more-power')).toThrow('No action “more-power”');
    const { checklists: _, ...without } = deck;
    expect(() => checklistOf(without, 'final-checks')).toThrow('No checklist “final-checks”');
  });
});

describe('a gate’s position in the procedure', () => {
  it('counts from 0', () => {
    expect(gateIndexOf(deck, 'far')).toBe(0);
    expect(gateIndexOf(deck, 'near')).toBe(2);
  });

  it('is -1 when there is none', () => {
    expect(gateIndexOf(deck, 'nowhere')).toBe(-1);
  });
});

describe('the source of a value', () => {
  it('is the one it names', () => {
    expect(sourceOf(deck, gateOf(deck, 'far').values['altitude']?.source).id).toBe('book');
  });

  it('is the deck’s own when it names none', () => {
    expect(sourceOf(deck, gateOf(deck, 'far').values['closure']?.source).id).toBe('notes');
  });
});

describe('the neutral action', () => {
  it('is the one marked so', () => {
    expect(neutralOf(pitch).id).toBe('hold-nose');
  });

  it('is the first when none is marked', () => {
    const unmarked = { ...pitch, actions: pitch.actions.map(({ neutral: _, ...action }) => action) };
    expect(neutralOf(unmarked).id).toBe('nose-down');
  });
});

describe('two actions', () => {
  it('are opposite when either says so', () => {
    expect(areOpposite(power, 'less-power', 'more-power')).toBe(true);
    expect(areOpposite(power, 'more-power', 'less-power')).toBe(true);
  });

  it('are not opposite otherwise', () => {
    expect(areOpposite(power, 'hold-power', 'more-power')).toBe(false);
    expect(areOpposite(power, 'more-power', 'more-power')).toBe(false);
    expect(areOpposite(pitch, 'less-power', 'more-power')).toBe(false);
  });
});
