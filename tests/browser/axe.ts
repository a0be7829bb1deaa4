/** axe-core (Deque, MPL 2.0), an independent checker of the WCAG rules, on a page as it stands. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** Those of WCAG 2.0 to 2.2, A and AA, and axe's best practices. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

export async function violations(page: Page): Promise<readonly string[]> {
  // Evaluated by the debugger, which the page's policy does not bind.
  await page.evaluate(axeSource);
  const found = await page.evaluate(async (rules) => {
    const { axe } = window as unknown as {
      axe: { run(node: Document, options: object): Promise<{ violations: Violation[] }> };
    };
    return (await axe.run(document, { runOnly: { type: 'tag', values: rules } })).violations;
  }, tags);
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary ?? ''}`),
  );
}
