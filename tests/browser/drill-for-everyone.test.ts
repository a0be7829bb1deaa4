import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aloud } from '../../src/app/state/drill-voice.ts';
import { start, toDrill } from './drilling.ts';
import { launchBrowser, phone } from './harness.ts';
import { answerByKeyboard, answerByThumb, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

const smallPhone: BrowserContextOptions = { ...phone, viewport: { width: 360, height: 640 } };

describe('on a phone', () => {
  it.each([
    ['390 by 844', phone],
    ['360 by 640', smallPhone],
  ])(
    'of %s five instruments, four controls and going around fit, each large enough for a thumb',
    async (_, size) => {
      const settings = { timing: null, drillLevel: 4, drillPinned: true };
      const { page, close } = await toDrill(browser, { size, settings, phase: 'abeam-leg' });
      await start(page).tap();
      for (let i = 0; i < 5; i++) {
        await page.locator('.question').waitFor();
        const seen = await page.evaluate(() => {
          const boxes = (selector: string) =>
            [...document.querySelectorAll(selector)].map((one) => one.getBoundingClientRect());
          const call = [...document.querySelectorAll('button')].find((one) =>
            /^Call it/.test(one.innerText),
          )!;
          const choices = boxes('.choice');
          return {
            gauges: boxes('.gauges [role=img]').length,
            rowHeights: new Set(boxes('.gauges [role=img]').map(({ height }) => Math.round(height))).size,
            numbersEnd: new Set(boxes('.gauges .number').map(({ right }) => Math.round(right))).size,
            figures: Math.min(
              ...[...document.querySelectorAll('.gauges .strip')].map(
                (strip) => strip.querySelectorAll('text').length,
              ),
            ),
            atOnce: boxes('.at-once').length,
            rows: boxes('.row[role=group]').length,
            smallest: Math.min(
              ...[...choices, ...boxes('.at-once'), call.getBoundingClientRect()].map(({ height }) => height),
            ),
            narrowest: Math.min(...choices.map(({ width }) => width)),
            callEnds: call.getBoundingClientRect().bottom,
            lastRowEnds: Math.max(...choices.map(({ bottom }) => bottom)),
            callBegins: call.getBoundingClientRect().top,
            cueLines: document.querySelector('h1')!.getBoundingClientRect().height / 20,
            height: innerHeight,
            tooWide: document.documentElement.scrollWidth > innerWidth,
          };
        });
        expect([seen.gauges, seen.rows, seen.atOnce, seen.tooWide]).toEqual([5, 4, 1, false]);
        expect([seen.rowHeights, seen.numbersEnd]).toEqual([1, 1]);
        expect(seen.figures).toBeGreaterThanOrEqual(2);
        expect(seen.smallest).toBeGreaterThanOrEqual(44);
        expect(seen.narrowest).toBeGreaterThanOrEqual(44);
        expect(seen.callEnds).toBeLessThanOrEqual(seen.height);
        // The longest cues take a fourth line; on the smallest screen the call then lies over the last row.
        if (seen.cueLines < 3.5) expect(seen.lastRowEnds).toBeLessThanOrEqual(seen.callBegins);
        await answerByThumb(page);
        await page.getByRole('button', { name: 'Next' }).tap();
      }
      await close();
    },
  );
});

describe('for those who listen, and those who want no motion', () => {
  it('says the state, half of the time, the close and the result, and nothing each second', async () => {
    const { page, close } = await toDrill(browser, { phase: 'abeam-leg' });
    await page.evaluate(() => {
      const heard: string[] = [];
      Object.assign(window, { heard });
      new MutationObserver(() => {
        for (const one of document.querySelectorAll('.visually-hidden[role=status], .question [role=alert]'))
          if (one.textContent && heard.at(-1) !== one.textContent && !heard.includes(one.textContent))
            heard.push(one.textContent);
      }).observe(document.body, { subtree: true, childList: true, characterData: true });
    });
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    const cue = await page.getByRole('heading', { level: 1 }).innerText();
    await page
      .locator('.question [role=alert]')
      .getByText('The window has closed')
      .waitFor({ timeout: 15_000 });
    await page.keyboard.press('Enter');
    await page.locator('.feedback').waitFor();
    await settled(page);
    const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard);
    expect(heard).toHaveLength(4);
    expect(heard[0]).toContain(`Scenario 1 of 20. ${aloud(cue)}.`);
    expect(heard[1]).toMatch(/^Half the time left: \d+ seconds\.$/);
    expect(heard[2]).toMatch(/^The window has closed/);
    expect(heard[3]).toMatch(/^(Desired|Adequate|Outside), late\. /);
    await close();
  });

  it('moves the focus to the question, and to the way on', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    const focused = () =>
      page.evaluate(
        () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent,
      );
    await expect.poll(focused).toBe('Scenario 1 of 20');
    await answerByKeyboard(page);
    await expect.poll(focused).toMatch(/Next/);
    await page.keyboard.press('Enter');
    await expect.poll(focused).toBe('Scenario 2 of 20');
    await close();
  });

  it('runs without any transition when motion is not wanted', async () => {
    const { page, close } = await toDrill(browser, { size: { reducedMotion: 'reduce' } });
    await page.keyboard.press('Enter');
    await answerByKeyboard(page);
    const moving = await page.evaluate(
      () => document.getAnimations().filter(({ playState }) => playState === 'running').length,
    );
    expect(moving).toBe(0);
    await close();
  });
});
