import type { Browser, Request } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { desktop, launchBrowser, newVisitor, open, phone, untilOffline } from './harness.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

describe.each([
  ['desktop', desktop],
  ['phone', phone],
])('the first screen on a %s', (_, size) => {
  it('opens without an error and without a breach of the policy', async () => {
    const { page, faults, close } = await newVisitor(browser, size);
    await open(page);
    await untilOffline(page);
    expect(faults).toEqual([]);
    await close();
  });

  it('is no wider than the screen', async () => {
    const { page, close } = await newVisitor(browser, size);
    await open(page);
    const overflow = await page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      return scrollWidth - clientWidth;
    });
    expect(overflow).toBe(0);
    await close();
  });
});

describe('the network', () => {
  it('is asked for files of the app only, and for nothing more once the app is on the device', async () => {
    const { page, requests, close } = await newVisitor(browser);
    await open(page);
    await untilOffline(page);
    expect(requests.length).toBeGreaterThan(2);
    expect(requests.filter((url) => !url.startsWith(inject('address')))).toEqual([]);

    const later: Request[] = [];
    page.context().on('request', (request) => later.push(request));
    for (const place of ['brief', 'drill', 'record', 'decks', 'recall']) {
      await page.evaluate((hash) => (location.hash = hash), `#/${place}`);
      await page.waitForLoadState('networkidle');
    }
    const fromNetwork: string[] = [];
    for (const request of later) {
      const response = await request.response();
      // What the service worker answers from the device is no request to the network.
      if (!response?.fromServiceWorker()) fromNetwork.push(request.url());
    }
    expect(fromNetwork).toEqual([]);
    await close();
  });
});

describe('the policy', () => {
  it('is in force: an inline script and a style attribute do nothing and are reported', async () => {
    const { page, faults, close } = await newVisitor(browser);
    await open(page);
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "broken in"';
      document.body.append(script);
      document.body.insertAdjacentHTML('beforeend', '<p style="color: red" id="styled">x</p>');
    });
    expect(await page.title()).not.toBe('broken in');
    expect(await page.locator('#styled').getAttribute('style')).toBe('color: red');
    expect(await page.locator('#styled').evaluate((p) => p.style.color)).toBe('');
    expect(faults.filter((fault) => fault.startsWith('policy: ')).length).toBeGreaterThanOrEqual(2);
    await close();
  });
});
