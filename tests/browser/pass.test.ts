import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violations } from './axe.ts';
import { callByKeyboard, callByThumb, nextPoint, wanted } from './flying.ts';
import { desktop, launchBrowser, newVisitor, open, phone } from './harness.ts';
import { savedRecord, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

const smallPhone: BrowserContextOptions = { ...phone, viewport: { width: 360, height: 640 } };

async function toPass(gate: string, size: BrowserContextOptions = desktop, change: object = {}) {
  const visitor = await newVisitor(browser, size);
  const kept = { theme: 'day', timing: null, minutes: 10, cautionSeen: true, ...change };
  await visitor.page.addInitScript((text) => {
    if (localStorage.getItem('gatecall.settings') === null) localStorage.setItem('gatecall.settings', text);
  }, JSON.stringify(kept));
  // The same air every time.
  await visitor.page.addInitScript(() => {
    crypto.getRandomValues = (array) => {
      (array as unknown as Uint8Array).fill(7);
      return array;
    };
  });
  await open(visitor.page, `#/pass/${gate}`);
  await visitor.page.getByRole('button', { name: /^Fly from/ }).waitFor();
  return visitor;
}

/** Calls until the pass is over; gives how often. */
async function flyOn(
  page: Page,
  call: (actions: Readonly<Record<string, string>>) => Promise<void>,
): Promise<number> {
  for (let calls = 0; ; calls++) {
    const phase = await nextPoint(page);
    if (phase === null) return calls;
    const actions = await wanted(page, phase);
    await settled(page);
    await call(actions);
  }
}

const outside = (page: Page) => page.locator('.gates .outside').count();

describe('a whole pass', () => {
  it('is flown from abeam to touchdown by keyboard alone, as the instruments and the rules say', async () => {
    const size = { ...desktop, reducedMotion: 'reduce' as const };
    const { page, faults, close } = await toPass('abeam', size, { passPace: 'steps' });
    await page.keyboard.press('Enter');
    expect(await flyOn(page, (actions) => callByKeyboard(page, actions))).toBeGreaterThan(20);
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/Pass over|Went around/);
    expect(await page.locator('.rules').innerText()).toContain('every call was as the rules ask');
    expect(await outside(page)).toBe(0);
    const { events } = await savedRecord(page);
    expect(events.map(({ kind }) => kind)).toEqual(['pass']);
    expect(await page.getByRole('region', { name: 'Passes flown' }).innerText()).toMatch(/From Abeam\./);
    expect(faults).toEqual([]);
    await close();
  }, 240_000);

  it('is flown by thumb on a small phone, while it moves, with the call always in sight', async () => {
    const { page, faults, close } = await toPass('alongside', smallPhone);
    await page.getByRole('button', { name: /^Fly from/ }).tap();
    await nextPoint(page);
    const fits = await page.evaluate(() => {
      const box = [...document.querySelectorAll('button')]
        .find((button) => button.textContent?.includes('Call it'))!
        .getBoundingClientRect();
      const small = [...document.querySelectorAll('.flying button')].filter((button) => {
        const { width, height } = button.getBoundingClientRect();
        return width < 44 || height < 44;
      });
      return {
        inSight: box.bottom <= innerHeight,
        wide: document.documentElement.scrollWidth > innerWidth,
        small: small.map((button) => button.textContent),
      };
    });
    expect(fits).toEqual({ inSight: true, wide: false, small: [] });
    expect(await flyOn(page, (actions) => callByThumb(page, actions))).toBeGreaterThan(4);
    expect(await outside(page)).toBe(0);
    expect((await savedRecord(page)).events.map(({ kind }) => kind)).toEqual(['pass']);
    expect(faults).toEqual([]);
    await close();
  }, 180_000);

  it('goes around by one key, and drills just what was missed by Enter', async () => {
    const { page, close } = await toPass('far-check', desktop, { passPace: 'steps' });
    await page.keyboard.press('Enter');
    for (let i = 0; i < 4; i++) {
      await nextPoint(page);
      await settled(page);
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('Enter');
    }
    await nextPoint(page);
    await page.keyboard.press('g');
    await page.locator('.verdict').waitFor();
    expect(await page.locator('.verdict').innerText()).toMatch(/Went around/);
    await page.waitForTimeout(1600);
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: /^Scenario 1 of/ }).waitFor();
    expect(new URL(page.url()).hash).toBe('#/drill');
    await close();
  });

  it('closes a window by itself, stands when paused, and leaves nothing behind when it is left', async () => {
    const { page, close } = await toPass('over-spot', desktop, { timing: 1 });
    await page.keyboard.press('Enter');
    const clock = page.locator('.leg span');
    await nextPoint(page);
    expect(await clock.innerText()).toBe('0:00');
    // Two windows of 3 s at most, and what lies between them.
    await expect.poll(() => clock.innerText(), { timeout: 15_000 }).not.toBe('0:00');
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    expect(await page.locator('.flying').isHidden()).toBe(true);
    await page.keyboard.press('Enter');
    await page.locator('.flying').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Leave the pass' }).click();
    await page.getByRole('button', { name: /^Fly from/ }).waitFor();
    expect((await savedRecord(page)).events).toEqual([]);
    await close();
  });

  it('says the state at each point to a screen reader, and the result', async () => {
    const { page, close } = await toPass('over-spot', desktop, { passPace: 'steps', passTells: true });
    await page.keyboard.press('Enter');
    await nextPoint(page);
    const status = page.getByRole('status');
    await expect.poll(() => status.innerText()).toMatch(/^Coming down on the spot, \d+ feet/);
    await settled(page);
    await page.keyboard.press('Enter');
    await expect.poll(() => status.innerText()).toMatch(/^(Right|Wrong|Partly right|Missed)\. .*Coming down/);
    await page.keyboard.press('g');
    await page.locator('.verdict').waitFor();
    expect(await status.innerText()).toMatch(/^Went around/);
    await close();
  });
});

describe.each([
  ['desktop', 'day', desktop],
  ['desktop', 'night', desktop],
  ['phone', 'day', phone],
  ['phone', 'night', phone],
])('axe finds nothing in a pass on a %s by %s', (_, theme, size) => {
  it('before it, while it is asked, told and paused, and at its end', async () => {
    const { page, close } = await toPass('far-check', size, { theme, passPace: 'steps', passTells: true });
    expect(await violations(page), 'start').toEqual([]);
    await page.keyboard.press('Enter');
    await nextPoint(page);
    expect(await violations(page), 'asked').toEqual([]);
    for (let i = 0; i < 5; i++) {
      await nextPoint(page);
      await settled(page);
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
    }
    await nextPoint(page);
    expect(await violations(page), 'told').toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    expect(await violations(page), 'paused').toEqual([]);
    await page.keyboard.press('Enter');
    for (let i = 0; i < 60 && (await nextPoint(page)); i++) {
      await settled(page);
      await page.keyboard.press('Enter');
    }
    expect(await violations(page), 'over').toEqual([]);
    await page.evaluate(() => (location.hash = '#/record'));
    await page.getByRole('heading', { name: 'Passes flown' }).waitFor();
    expect(await violations(page), 'record').toEqual([]);
    await close();
  }, 120_000);
});
