/** Pages that the first paint can do without. Each is fetched once; `fetchAll` brings them in when the page is quiet. */
export const lazyPages = {
  recall: () => import('./recall/Recall.svelte'),
  drill: () => import('./drill/Drill.svelte'),
  pass: () => import('./pass/Pass.svelte'),
  brief: () => import('./brief/Brief.svelte'),
  record: () => import('./record/Record.svelte'),
  sources: () => import('./sources/Sources.svelte'),
  decks: () => import('./decks/Decks.svelte'),
};

/** What the pages need once something is asked. */
const lazyStates = [
  () => import('../state/recall-session.svelte.ts'),
  () => import('../state/drill-run.svelte.ts'),
  () => import('../state/pass-flight.svelte.ts'),
  () => import('../state/pass-drill.ts'),
  () => import('../../day/deck-of-day.ts'),
  () => import('../../record/backup.ts'),
  () => import('../../record/read-backup.ts'),
  () => import('../../record/import-plan.ts'),
];

/** So that nothing has to be fetched later, when the connection may be gone. A failure is met again when the page is opened. */
export async function fetchAll(): Promise<void> {
  await Promise.allSettled([...Object.values(lazyPages), ...lazyStates].map((load) => load()));
}
