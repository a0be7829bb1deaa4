/** A real browser on the built app, and what a test may want to know of it. */
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { browserArguments } from './browser-arguments.ts';

/** The two sizes every page must be good at. */
export const desktop: BrowserContextOptions = { viewport: { width: 1280, height: 800 } };
export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
};

/** Starts the browser with an empty profile. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: inject('browserPath'), args: [...browserArguments] });
}

/** One pilot's device: its own storage and service worker, and a log of what went wrong. */
export interface Visitor {
  readonly page: Page;
  /** Errors on the console, thrown errors, and breaches of the policy, in order. */
  readonly faults: string[];
  /** Addresses asked for so far, by the page and its service worker. */
  readonly requests: string[];
  close(): Promise<void>;
}

/** A first-time visitor with nothing open yet. `options` are the browser context's (size, colour scheme…). */
export async function newVisitor(
  browser: Browser,
  options: BrowserContextOptions = desktop,
): Promise<Visitor> {
  const context = await browser.newContext(options);
  const faults: string[] = [];
  const requests: string[] = [];
  context.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  context.on('weberror', (error) => faults.push(String(error.error())));
  context.on('request', (request) => requests.push(request.url()));
  await context.exposeFunction('reportBreach', (breach: string) => faults.push(breach));
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const { reportBreach } = window as unknown as { reportBreach(breach: string): Promise<void> };
      void reportBreach(`policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
    });
  });
  const page = await context.newPage();
  return { page, faults, requests, close: () => context.close() };
}

/**
 * Opens a page of the app, by its place in the address: `open(page, '#/brief')`; '' is the first screen.
 * Resolves when the app has drawn something.
 */
export async function open(page: Page, path = '', address = inject('address')): Promise<void> {
  await page.goto(new URL(path, address).href);
  await page.locator('#app > *').first().waitFor();
}

/** Resolves when the service worker has everything on the device and is in charge of the page. */
export async function untilOffline(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller) return;
    await new Promise((done) =>
      navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }),
    );
  });
}
