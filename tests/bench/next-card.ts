/** In a real browser: from the key that answers to the grade on the screen, and from there to the next card. */
import { chromium, type Page } from 'playwright-core';
import { serve } from '../../src/cli/server/serve.ts';
import { browserArguments } from '../browser/browser-arguments.ts';
import { answerByKeyboard, beginByKeyboard, settled } from '../browser/pilot.ts';
import { findBrowser } from '../browser-path.ts';

export interface CardTimes {
  /** Milliseconds from the key going down to the frame that shows the result being painted. */
  readonly toFeedback: readonly number[];
  readonly toNextCard: readonly number[];
}

interface TimedWindow {
  paints: { readonly shown: string; readonly ms: number }[];
}

/** Answers so many cards of the demo by keyboard, or as many as there are to ask. The first ones count too: a pilot sees them as well. */
export async function timeCards(built: string, cards: number): Promise<CardTimes> {
  const serving = await serve(built, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  const browser = await chromium.launch({
    executablePath: await findBrowser(),
    args: [...browserArguments],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    // The loader that runs this file wraps named functions in a call the page doesn't know.
    await page.addInitScript('globalThis.__name = (named) => named;');
    await page.addInitScript(watchPaints);
    await page.goto(serving.served.address);
    await beginByKeyboard(page);
    for (let i = 0; i < cards; i++) {
      await answerByKeyboard(page);
      await page.keyboard.press('Enter');
      if (!(await reachesPrompt(page))) break;
    }
    return { toFeedback: await paintsOf(page, 'feedback'), toNextCard: await paintsOf(page, 'question') };
  } finally {
    await browser.close();
    await serving.served.close();
  }
}

/** Past what is read before it is asked again, past the end of a session and into the next; false when nothing is left to ask. */
async function reachesPrompt(page: Page): Promise<boolean> {
  const prompt = page.locator('.question');
  const inBetween = page.locator('.look, .finished, .home');
  for (let pages = 0; pages < 6; pages++) {
    await prompt.or(inBetween).first().waitFor();
    if ((await prompt.count()) > 0) return true;
    await settled(page);
    await page.keyboard.press('Enter');
    await settled(page);
  }
  return false;
}

const paintsOf = (page: Page, shown: string): Promise<number[]> =>
  page.evaluate(
    (what) =>
      (window as unknown as TimedWindow).paints.filter((paint) => paint.shown === what).map(({ ms }) => ms),
    shown,
  );

/** Runs in the page: after each key, waits for the prompt to turn into its grade, or the grade into a prompt. */
function watchPaints(): void {
  const timed = window as unknown as TimedWindow;
  timed.paints = [];
  let keyMs: number | null = null;
  let shown = '';
  addEventListener('keydown', (event) => (keyMs = event.timeStamp), { capture: true });
  const look = (): void => {
    const now = ['feedback', 'question'].find((name) => document.querySelector(`.${name}`)) ?? '';
    if (now === shown) return;
    const from = keyMs;
    // A prompt after anything else than a grade was not the next card: a session began.
    const follows = shown === (now === 'question' ? 'feedback' : 'question');
    shown = now;
    if (from === null || !follows) return;
    // A task queued from within a frame runs after that frame was painted.
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => timed.paints.push({ shown: now, ms: performance.now() - from });
      channel.port2.postMessage(null);
    });
  };
  addEventListener('DOMContentLoaded', () =>
    new MutationObserver(look).observe(document.body, { childList: true, subtree: true }),
  );
}
