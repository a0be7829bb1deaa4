/** A browser's database to test with: anew for each test, and as faulty as the test wants it. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { createStore, type UseStore } from 'idb-keyval';

/** Gives the global scope an empty database. */
export function emptyBrowser(): void {
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
}

export const connect = (): UseStore => createStore('gatecall', 'record');

/** Called before and after every operation on the store; it may throw, or abort the transaction. */
type Watch = (operation: string, transaction: IDBTransaction, moment: 'before' | 'after') => void;

export function watched(use: UseStore, watch: Watch): UseStore {
  return (mode, work) => use(mode, (store) => work(watchedStore(store, watch)));
}

function watchedStore(store: IDBObjectStore, watch: Watch): IDBObjectStore {
  return new Proxy(store, {
    get(target, name) {
      const value: unknown = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      return (...given: unknown[]): unknown => {
        watch(String(name), target.transaction, 'before');
        const result = (value as (...given: unknown[]) => unknown).apply(target, given);
        watch(String(name), target.transaction, 'after');
        return result;
      };
    },
  });
}
