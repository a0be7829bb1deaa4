import { describe, expect, it } from 'vitest';
import { askToPersist, estimateSpace, type StorageOffice } from '../../../../src/record/store/persist.ts';

const says = (granted: boolean) => () => Promise.resolve(granted);
const fails = () => Promise.reject(new Error('not in this context'));

describe('asking to persist', () => {
  it.each<[string, StorageOffice | undefined, string]>([
    ['granted', { persist: says(true) }, 'kept'],
    ['refused', { persisted: says(false), persist: says(false) }, 'at-risk'],
    ['granted earlier, without asking again', { persisted: says(true), persist: fails }, 'kept'],
    ['not possible', {}, 'unknown'],
    ['failing', { persist: fails }, 'unknown'],
  ])('that is %s', async (_, storage, outcome) => {
    expect(await askToPersist(storage)).toBe(outcome);
  });
});

describe('the estimate of space', () => {
  it('is given in bytes', async () => {
    const storage = { estimate: () => Promise.resolve({ usage: 1000, quota: 5000 }) };
    expect(await estimateSpace(storage)).toEqual({ usedBytes: 1000, quotaBytes: 5000 });
  });

  it.each<[StorageOffice]>([[{}], [{ estimate: () => Promise.resolve({}) }], [{ estimate: fails }]])(
    'is null when the browser doesn’t say',
    async (storage) => {
      expect(await estimateSpace(storage)).toBeNull();
    },
  );
});
