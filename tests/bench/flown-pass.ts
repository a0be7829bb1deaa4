/** In a real browser: the frames of a pass under way in the built app, instruments and mark moving. */
import { chromium, type Page } from 'playwright-core';
import { serve } from '../../src/cli/server/serve.ts';
import { browserArguments } from '../browser/browser-arguments.ts';
import { settled } from '../browser/pilot.ts';
import { findBrowser } from '../browser-path.ts';

export interface PassFrames {
  /** Milliseconds from frame to frame, while it moves. */
  readonly betweenMs: readonly number[];
  /** Milliseconds from a frame's begin until it is painted. */
  readonly workMs: readonly number[];
}

/**
 * Flies the first stretches of a pass at its own pace, leaving all as it is.
 * @param stretches of two seconds each. @param small a phone's size.
 */
export async function passFrames(built: string, stretches: number, small: boolean): Promise<PassFrames> {
  const serving = await serve(built, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  const browser = await chromium.launch({ executablePath: await findBrowser(), args: [...browserArguments] });
  try {
    const viewport = small ? { width: 390, height: 844 } : { width: 1280, height: 800 };
    const page = await browser.newPage({ viewport });
    // The loader that runs this file wraps named functions in a call the page doesn't know.
    await page.addInitScript('globalThis.__name = (named) => named;');
    const kept = { cautionSeen: true, timing: null, passPace: 'real' };
    await page.addInitScript((text) => localStorage.setItem('gatecall.settings', text), JSON.stringify(kept));
    await page.goto(`${serving.served.address}#/pass/abeam`);
    await page.getByRole('button', { name: /^Fly from/ }).waitFor();
    // The page works out how long it will take, and then is quiet.
    await page.waitForTimeout(1500);
    await page.keyboard.press('Enter');
    await page.locator('[data-stage=asking]').waitFor();
    await page.evaluate(watchFrames);
    for (let i = 0; i < stretches; i++) {
      await page.locator('[data-stage=asking]').waitFor();
      await settled(page);
      await page.keyboard.press('Enter');
      await page.locator('[data-stage=moving]').waitFor();
    }
    return await framesOf(page);
  } finally {
    await browser.close();
    await serving.served.close();
  }
}

interface WatchedWindow {
  frames: PassFrames & { betweenMs: number[]; workMs: number[] };
}

const framesOf = (page: Page): Promise<PassFrames> =>
  page.evaluate(() => (window as unknown as WatchedWindow).frames);

/** A message that is sent while a frame is made is heard once it is painted. */
function watchFrames(): void {
  const frames = { betweenMs: [] as number[], workMs: [] as number[] };
  (window as unknown as WatchedWindow).frames = frames;
  const channel = new MessageChannel();
  let startMs = 0;
  let lastMs: number | null = null;
  channel.port1.onmessage = () => frames.workMs.push(performance.now() - startMs);
  requestAnimationFrame(function each(nowMs) {
    const moving = document.querySelector('[data-stage=moving]') !== null;
    if (moving) {
      if (lastMs !== null) frames.betweenMs.push(nowMs - lastMs);
      startMs = nowMs;
      channel.port2.postMessage(null);
    }
    lastMs = moving ? nowMs : null;
    requestAnimationFrame(each);
  });
}
