// What the browser remembers. Storage may be denied or full: then the page works, it only forgets.

const prefix = 'plantwatch.';

export function recall(key: string): string | null {
  try { return localStorage.getItem(prefix + key); } catch { return null; }
}

/** False when the browser would not keep it. */
export function remember(key: string, value: string | null): boolean {
  try {
    if (value === null) localStorage.removeItem(prefix + key);
    else localStorage.setItem(prefix + key, value);
    return true;
  } catch { return false; }
}

export function recallJson<T>(key: string): T | null {
  try { return JSON.parse(recall(key) ?? 'null') as T | null; } catch { return null; }
}
