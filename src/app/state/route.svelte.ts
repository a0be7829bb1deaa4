/** The page shown, kept in the address's fragment so that links, back and reload work offline. */

export const pages = ['brief', 'recall', 'drill', 'pass', 'record', 'decks', 'sources'] as const;
export type Page = (typeof pages)[number];

export interface Route {
  readonly page: Page;
  /** What follows the page: `#/drill/groove` -> "groove". */
  readonly rest: string;
}

export function readRoute(hash: string): Route {
  const [page, ...rest] = hash.replace(/^#\/?/, '').split('/');
  const known = pages.find((name) => name === page);
  return known ? { page: known, rest: safeDecode(rest.join('/')) } : { page: 'recall', rest: '' };
}

function safeDecode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

export const hrefOf = (page: Page, rest = ''): string =>
  `#/${page}${rest ? `/${encodeURIComponent(rest)}` : ''}`;
