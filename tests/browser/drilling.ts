/** The way to the drill, for tests of it. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { newVisitor, open } from './harness.ts';

const experienced = { theme: 'day', timing: 1, minutes: 10, deck: null, cautionSeen: true, drillLength: 20 };

/** A pilot who knows the app, at the start of the drill. */
export async function toDrill(
  browser: Browser,
  options: { size?: BrowserContextOptions; settings?: object; phase?: string } = {},
): ReturnType<typeof newVisitor> {
  const visitor = await newVisitor(browser, options.size);
  await visitor.page.addInitScript(
    (text) => {
      if (localStorage.getItem('gatecall.settings') === null) localStorage.setItem('gatecall.settings', text);
    },
    JSON.stringify({ ...experienced, ...options.settings }),
  );
  await open(visitor.page, `#/drill${options.phase ? `/${options.phase}` : ''}`);
  await start(visitor.page).waitFor();
  return visitor;
}

/** The button that begins a run. */
export const start = (page: Page) => page.getByRole('button', { name: /^Start \d+ scenarios/ });
