// A shelf for what is large and may be lost: the outbox must not have to share its room with it. Where a browser has none, or denies it, nothing is kept.

const store = 'kept';
let opened: Promise<IDBDatabase> | null = null;

function open(): Promise<IDBDatabase> {
  opened ??= new Promise((done, failed) => {
    const request = indexedDB.open('plantwatch', 1);
    request.onupgradeneeded = () => request.result.createObjectStore(store);
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
  return opened;
}

async function ask<T>(mode: IDBTransactionMode, work: (of: IDBObjectStore) => IDBRequest<T>): Promise<T | null> {
  try {
    const request = work((await open()).transaction(store, mode).objectStore(store));
    return await new Promise<T>((done, failed) => { request.onsuccess = () => done(request.result); request.onerror = () => failed(request.error); });
  } catch {
    opened = null;
    return null;
  }
}

export const shelve = async (key: string, value: unknown): Promise<void> => { await ask('readwrite', s => s.put(value, key)); };
export const fromShelf = async <T>(key: string): Promise<T | null> => (await ask<T>('readonly', s => s.get(key) as IDBRequest<T>)) ?? null;
