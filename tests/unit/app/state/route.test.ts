import { describe, expect, test } from 'vitest';
import { hrefOf, pages, readRoute } from '../../../../src/app/state/route.svelte.ts';

describe('the address', () => {
  test('every page has one, and it reads back', () => {
    for (const page of pages) expect(readRoute(hrefOf(page, 'a b/c'))).toEqual({ page, rest: 'a b/c' });
  });

  test.each(['', '#', '#/', '#/nowhere', '#deck=xyz', '#/../brief'])('%j leads to the first page', (hash) => {
    expect(readRoute(hash).page).toBe('recall');
  });

  test('a damaged address does no harm', () => {
    expect(readRoute('#/drill/%E0%A4%A')).toEqual({ page: 'drill', rest: '' });
  });
});
