import { describe, expect, test } from 'vitest';
import { Settings, themeAfter, type KeyValue } from '../../../src/app/state/settings.svelte.ts';

function storage(text?: string): KeyValue & { text: string | undefined } {
  return {
    text,
    getItem() {
      return this.text ?? null;
    },
    setItem(_key, value) {
      this.text = value;
    },
  };
}

describe('the light', () => {
  test.each([
    [false, ['night', 'day', 'auto']],
    [true, ['day', 'night', 'auto']],
  ] as const)('changes at the first tap, whatever the system has (dark: %s)', (dark, expected) => {
    const first = themeAfter('auto', dark);
    const second = themeAfter(first, dark);
    expect([first, second, themeAfter(second, dark)]).toEqual(expected);
  });
});

describe('settings', () => {
  test('what is chosen is there at the next start, untimed too', () => {
    const kept = storage();
    new Settings(kept).change({
      theme: 'night',
      timing: Infinity,
      minutes: 20,
      deck: 'x',
      cautionSeen: true,
    });
    const next = new Settings(kept);
    expect([next.theme, next.timing, next.minutes, next.deck, next.cautionSeen]).toEqual([
      'night',
      Infinity,
      20,
      'x',
      true,
    ]);
  });

  test.each(['', 'null', '[]', '{', '{"theme":"pink","minutes":-4,"timing":7,"cautionSeen":"yes","deck":3}'])(
    'unusable text %j gives the defaults',
    (text) => {
      const settings = new Settings(storage(text));
      expect([
        settings.theme,
        settings.timing,
        settings.minutes,
        settings.deck,
        settings.cautionSeen,
      ]).toEqual(['auto', 1, 10, null, false]);
    },
  );

  test('a choice holds even when it cannot be kept', () => {
    const full: KeyValue = {
      getItem: () => null,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    const settings = new Settings(full);
    settings.change({ minutes: 5 });
    expect(settings.minutes).toBe(5);
  });
});
