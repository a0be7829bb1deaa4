import { mount } from 'svelte';
import { createScheduler } from '../memory/scheduler.ts';
import { eventIds } from '../record/event-id.ts';
import { openRecord } from '../record/live.ts';
import { idbStore } from '../record/store/idb-store.ts';
import AppView from './App.svelte';
import { fetchAll } from './pages/lazy-pages.ts';
import { watchForUpdate } from './offline.ts';
import { App } from './state/app.svelte.ts';
import { Settings } from './state/settings.svelte.ts';
import { firstDeck } from './state/shipped-decks.ts';
import { safeStorage } from './state/safe-storage.ts';
import './theme/tokens.css';
import './theme/base.css';

const settings = new Settings(safeStorage());
document.documentElement.dataset['theme'] = settings.theme;

const scheduler = createScheduler();
const store = idbStore({ locks: navigator.locks });
const record = await openRecord({
  store,
  scheduler,
  ids: eventIds((count) => crypto.getRandomValues(new Uint8Array(count))),
  channel: 'BroadcastChannel' in globalThis ? new BroadcastChannel('gatecall-record') : undefined,
});

const app = new App({
  settings,
  record,
  store,
  scheduler,
  nowMs: () => Date.now(),
  monotonicMs: () => performance.now(),
  newSeed: () => crypto.getRandomValues(new Uint32Array(1))[0]!,
  stillness: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
  hash: () => location.hash,
  goTo: (hash) => {
    location.hash = hash;
  },
});
addEventListener('hashchange', () => app.followAddress());
// A tab that slept may have missed what the others wrote.
document.addEventListener('visibilitychange', () => {
  if (!document.hidden) void record.lookAgain();
});

await app.chooseDeck(settings.deck ?? firstDeck);
mount(AppView, { target: document.getElementById('app')!, props: { app } });
void fetchAll();
void record.settle();
watchForUpdate((apply) => (app.update = apply));
