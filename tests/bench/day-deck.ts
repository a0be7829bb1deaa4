/** In a real browser: the demo deck worked out for another day. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { deckModules } from '../../src/cli/deck-plugin.ts';
import { serve } from '../../src/cli/server/serve.ts';
import { browserArguments } from '../browser/browser-arguments.ts';
import { findBrowser } from '../browser-path.ts';

export interface DayTimes {
  /** Milliseconds for each day, in the order of the days: the first ones run unprepared. */
  readonly times: readonly number[];
  /** Values that moved, over all days. */
  readonly moved: number;
}

export async function dayTimes(): Promise<DayTimes> {
  const built = mkdtempSync(join(tmpdir(), 'days-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: fileURLToPath(new URL('day', import.meta.url)),
    base: './',
    plugins: [deckModules()],
    build: { outDir: built, emptyOutDir: true },
  });
  const serving = await serve(built, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  const browser = await chromium.launch({
    executablePath: await findBrowser(),
    args: [...browserArguments],
  });
  try {
    const page = await browser.newPage();
    await page.goto(serving.served.address);
    await page.waitForFunction(() => 'days' in window, null, { timeout: 60_000 });
    return await page.evaluate(() => (window as unknown as { days: DayTimes }).days);
  } finally {
    await browser.close();
    await serving.served.close();
    rmSync(built, { recursive: true });
  }
}
