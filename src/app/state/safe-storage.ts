import type { KeyValue } from './settings.svelte.ts';

/** The browser's key-value storage; one in memory where it is forbidden. */
export function safeStorage(): KeyValue {
  try {
    localStorage.getItem('gatecall.settings');
    return localStorage;
  } catch {
    const kept = new Map<string, string>();
    return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
  }
}
