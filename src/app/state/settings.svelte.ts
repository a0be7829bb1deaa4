/** What the pilot chose for this device. Small, so kept where it can be read before the first paint. */

import type { PassPace } from '../../record/types.ts';
import { readKeptDays, type KeptDays } from './day-set.ts';

export type Theme = 'auto' | 'day' | 'night';
/** Factor on every response window; Infinity is untimed. */
export type Timing = 1 | 1.5 | 2 | typeof Infinity;

export const themes: readonly Theme[] = ['auto', 'day', 'night'];
export const timings: readonly Timing[] = [1, 1.5, 2, Infinity];
export const sessionMinutes: readonly number[] = [5, 10, 15, 20, 30];
/** Scenarios in a run of the drill. */
export const drillLengths: readonly number[] = [10, 15, 20, 25, 30];

/** How fast a pass moves between two calls. */
export const passPaces: readonly PassPace[] = ['compressed', 'real', 'steps'];
/** Factor on a pass's errors at the start and on restless air. */
export const passRoughnesses: readonly number[] = [0, 1, 2];

interface Kept {
  theme: Theme;
  /** null stands for untimed: JSON has no Infinity. */
  timing: number | null;
  minutes: number;
  deck: string | null;
  cautionSeen: boolean;
  drillLength: number;
  /** A place on the drill's ladder of difficulty; null before the first run. */
  drillLevel: number | null;
  drillPinned: boolean;
  passPace: PassPace;
  passRoughness: number;
  passTells: boolean;
  days: KeptDays;
}

type Changeable = keyof Kept;

const key = 'gatecall.settings';

export interface KeyValue {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

function read(storage: KeyValue): Partial<Kept> {
  try {
    const value: unknown = JSON.parse(storage.getItem(key) ?? '{}');
    return value !== null && typeof value === 'object' ? value : {};
  } catch {
    // Unreadable or forbidden storage: the defaults serve.
    return {};
  }
}

export class Settings {
  theme = $state<Theme>('auto');
  timing = $state<Timing>(1);
  minutes = $state(10);
  deck = $state<string | null>(null);
  cautionSeen = $state(false);
  drillLength = $state(20);
  drillLevel = $state<number | null>(null);
  /** The difficulty stays where the pilot put it. */
  drillPinned = $state(false);
  passPace = $state<PassPace>('compressed');
  passRoughness = $state(1);
  /** Right or wrong is said after each call of a pass, not only at the end. */
  passTells = $state(false);
  /** What was set of the day, by deck. */
  days = $state.raw<KeptDays>({});
  readonly #storage: KeyValue;

  constructor(storage: KeyValue) {
    this.#storage = storage;
    const kept = read(storage);
    if (themes.includes(kept.theme as Theme)) this.theme = kept.theme as Theme;
    const timing = kept.timing === null ? Infinity : kept.timing;
    if (timings.includes(timing as Timing)) this.timing = timing as Timing;
    if (sessionMinutes.includes(kept.minutes as number)) this.minutes = kept.minutes as number;
    if (typeof kept.deck === 'string') this.deck = kept.deck;
    this.cautionSeen = kept.cautionSeen === true;
    if (drillLengths.includes(kept.drillLength as number)) this.drillLength = kept.drillLength as number;
    if (typeof kept.drillLevel === 'number') this.drillLevel = kept.drillLevel;
    this.drillPinned = kept.drillPinned === true;
    if (passPaces.includes(kept.passPace as PassPace)) this.passPace = kept.passPace as PassPace;
    if (passRoughnesses.includes(kept.passRoughness as number))
      this.passRoughness = kept.passRoughness as number;
    this.passTells = kept.passTells === true;
    this.days = readKeptDays(kept.days);
  }

  /** As plain data: for this device's storage, and to take along in a backup. */
  get kept(): Readonly<Record<string, unknown>> {
    const kept: Kept = {
      theme: this.theme,
      timing: this.timing === Infinity ? null : this.timing,
      minutes: this.minutes,
      deck: this.deck,
      cautionSeen: this.cautionSeen,
      drillLength: this.drillLength,
      drillLevel: this.drillLevel,
      drillPinned: this.drillPinned,
      passPace: this.passPace,
      passRoughness: this.passRoughness,
      passTells: this.passTells,
      days: this.days,
    };
    return { ...kept };
  }

  change(values: Partial<Pick<Settings, Changeable>>): void {
    Object.assign(this, values);
    try {
      this.#storage.setItem(key, JSON.stringify(this.kept));
    } catch {
      // A choice that can't be kept still holds until the page is closed.
    }
  }
}

/**
 * The theme a tap gives: first the one that isn't seen, then the one the system has, then its choice again.
 * So that every tap but the last changes what is seen.
 * @param systemDark whether the system asks for a dark page.
 */
export function themeAfter(theme: Theme, systemDark: boolean): Theme {
  const system: Theme = systemDark ? 'night' : 'day';
  if (theme === 'auto') return systemDark ? 'day' : 'night';
  return theme === system ? 'auto' : system;
}

export const sayTiming = (timing: Timing): string => (timing === Infinity ? 'Untimed' : `×${timing}`);
