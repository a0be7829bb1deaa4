/** In a real browser: the frames of five instruments that move with each of them. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { serve } from '../../src/cli/server/serve.ts';
import { browserArguments } from '../browser/browser-arguments.ts';
import { findBrowser } from '../browser-path.ts';

export interface FrameTimes {
  /** Milliseconds from frame to frame. */
  readonly betweenMs: readonly number[];
  /** Milliseconds from a frame's begin until it is painted. */
  readonly workMs: readonly number[];
}

/** The page of the instruments, in a new folder. */
export async function builtGauges(): Promise<string> {
  const built = mkdtempSync(join(tmpdir(), 'gauges-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: fileURLToPath(new URL('gauges', import.meta.url)),
    base: './',
    plugins: [svelte({ configFile: fileURLToPath(new URL('../../svelte.config.js', import.meta.url)) })],
    build: { outDir: built, emptyOutDir: true, assetsInlineLimit: 0 },
  });
  return built;
}

/** @param compact the low rows of a phone, at its size. */
export async function movingGauges(built: string, compact: boolean): Promise<FrameTimes> {
  const serving = await serve(built, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  const browser = await chromium.launch({
    executablePath: await findBrowser(),
    args: [...browserArguments],
  });
  try {
    const viewport = compact ? { width: 390, height: 844 } : { width: 1280, height: 800 };
    const page = await browser.newPage({ viewport });
    await page.goto(`${serving.served.address}${compact ? '#compact' : ''}`);
    await page.waitForFunction(() => 'moved' in window, null, { timeout: 60_000 });
    const frames = await page.evaluate(
      () => (window as unknown as { moved: { betweenMs: number; workMs: number }[] }).moved,
    );
    return {
      betweenMs: frames.map(({ betweenMs }) => betweenMs),
      workMs: frames.map(({ workMs }) => workMs),
    };
  } finally {
    await browser.close();
    await serving.served.close();
  }
}
