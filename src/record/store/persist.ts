/** Asking the browser to treat the record as the pilot's own data, not as a cache it may clear. */

/** What is needed of `navigator.storage`; old browsers have none of it, or not all. */
export interface StorageOffice {
  persisted?(): Promise<boolean>;
  persist?(): Promise<boolean>;
  estimate?(): Promise<{ readonly usage?: number; readonly quota?: number }>;
}

/** `kept`: the browser won't clear it by itself. `at-risk`: it may, when space gets short. */
export type Persistence = 'kept' | 'at-risk' | 'unknown';

/**
 * Asks once more, or finds that it has been granted. Some browsers ask the pilot, so do this after the
 * first answers, not at the first sight of the page. Never throws.
 */
export async function askToPersist(
  storage: StorageOffice | undefined = browserStorage(),
): Promise<Persistence> {
  try {
    if (!storage?.persist) return 'unknown';
    const kept = (await storage.persisted?.()) || (await storage.persist());
    return kept ? 'kept' : 'at-risk';
  } catch {
    return 'unknown';
  }
}

export interface Space {
  readonly usedBytes: number;
  /** What the browser would let this site use at most. */
  readonly quotaBytes: number;
}

/** Roughly the space used and allowed; null when the browser doesn't say. Never throws. */
export async function estimateSpace(
  storage: StorageOffice | undefined = browserStorage(),
): Promise<Space | null> {
  try {
    const { usage, quota } = (await storage?.estimate?.()) ?? {};
    return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
  } catch {
    return null;
  }
}

function browserStorage(): StorageOffice | undefined {
  return typeof navigator === 'undefined' ? undefined : navigator.storage;
}
