/** Whether the browser promises to keep what is stored, and how much room there is: for the line "where is my work". */

export type Persistence =
  /** Kept until a person clears it. */
  | 'granted'
  /** May be cleared by the browser when room is short, or after some days without a visit. */
  | 'refused'
  /** The browser does not say. */
  | 'unknown';

export type StorageStatus = {
  readonly persistence: Persistence;
  /** Bytes; null when the browser does not say. */
  readonly usedBytes: number | null;
  readonly roomBytes: number | null;
};

type Manager = Partial<Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>>;

/** Asks the browser to keep this page's storage: after the first save, when there is something to keep. */
export async function askToPersist(manager: Manager | null = browserManager()): Promise<Persistence> {
  try {
    if (manager?.persist === undefined) return 'unknown';
    const isKept = (await manager.persisted?.()) === true || (await manager.persist());
    return isKept ? 'granted' : 'refused';
  } catch {
    return 'unknown';
  }
}

/** Reads where things stand, asking for nothing. */
export async function readStorageStatus(manager: Manager | null = browserManager()): Promise<StorageStatus> {
  try {
    const isKept = await manager?.persisted?.();
    const estimate = await manager?.estimate?.();
    return {
      persistence: isKept === undefined ? 'unknown' : isKept ? 'granted' : 'refused',
      usedBytes: estimate?.usage ?? null,
      roomBytes: estimate?.quota ?? null,
    };
  } catch {
    return { persistence: 'unknown', usedBytes: null, roomBytes: null };
  }
}

function browserManager(): Manager | null {
  return typeof navigator !== 'undefined' && 'storage' in navigator ? navigator.storage : null;
}
