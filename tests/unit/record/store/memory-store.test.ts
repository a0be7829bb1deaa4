import { describe, expect, it } from 'vitest';
import { MemoryDisk, memoryStore } from '../../../../src/record/store/memory-store.ts';
import { evening } from '../examples.ts';
import { failingContract, storeContract } from './contract.ts';

const newPlace = () => {
  const disk = new MemoryDisk();
  return {
    open: () => memoryStore(disk),
    setFault: (reason: typeof disk.fault) => void (disk.fault = reason),
  };
};

storeContract('a store in memory', newPlace);
failingContract('a store in memory', newPlace);

describe('a store in memory', () => {
  it('that has room for some of a backup takes the first ones and holds the rest', async () => {
    const disk = new MemoryDisk();
    disk.room = 13;
    const store = memoryStore(disk);
    const events = evening(30);
    expect(await store.appendMany(events)).toMatchObject({ ok: false, reason: 'full' });
    expect(store.pending).toEqual(events.slice(13));
    disk.room = 40;
    expect(await store.flush()).toEqual({ ok: true });
    expect((await memoryStore(disk).load()).events).toEqual(events);
  });

  it('refuses what a database could not hold, at once', async () => {
    const unclonable = { look: () => 1 };
    await expect(async () => await memoryStore().writeSetting('view', unclonable)).rejects.toThrow();
  });
});
