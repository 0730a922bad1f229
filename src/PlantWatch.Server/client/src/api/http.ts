import type { Problem } from '../contract';
import { language } from '../format/language';
import { chosenUnits } from '../format/units';

export type Answer<T> = { ok: true; value: T } | { ok: false; problem: Problem | null };

const patience = 12_000;

/** Statuses that say "later", not "no". */
const later = (status: number) => status >= 500 || [401, 403, 408, 425, 429].includes(status);

function asProblem(body: unknown, status: number): Problem {
  const b = (body ?? {}) as Partial<Problem>;
  return { type: b.type ?? 'about:blank', title: b.title ?? `HTTP ${status}`, status, errors: Array.isArray(b.errors) ? b.errors : [] };
}

/** Who reads the answer: in which language, and in which units where this device asks for its own. */
const reader = (): Record<string, string> => ({ 'Accept-Language': language, ...chosenUnits.value ? { 'Accept-Units': chosenUnits.value } : {} });

/** One request. A null problem means that the server could not be reached or was not able to answer. */
export async function ask<T>(method: string, path: string, body?: unknown, more: Record<string, string> = {}): Promise<Answer<T>> {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), patience);
  try {
    const response = await fetch('/api/v1' + path, {
      method, signal: stop.signal, cache: 'no-store',
      headers: { Accept: 'application/json', ...reader(), ...body === undefined ? {} : { 'Content-Type': 'application/json', ...more } },
      body: body === undefined ? null : JSON.stringify(body),
    });
    const text = await response.text();
    let json: unknown = null;
    // A page of somebody else's gateway is no answer of the server.
    try { json = JSON.parse(text); } catch { if (response.ok) return { ok: false, problem: null }; }
    if (response.ok) return { ok: true, value: json as T };
    return { ok: false, problem: later(response.status) ? null : asProblem(json, response.status) };
  } catch {
    return { ok: false, problem: null };
  } finally {
    clearTimeout(timer);
  }
}

export const get = <T>(path: string) => ask<T>('GET', path);
export const put = <T>(path: string, body: unknown, more?: Record<string, string>) => ask<T>('PUT', path, body, more);
export const post = <T>(path: string, body: unknown) => ask<T>('POST', path, body);

/** A query string from the parts that are set. */
export function query(parts: Record<string, string | number | null | undefined>): string {
  const q = new URLSearchParams();
  for (const [key, value] of Object.entries(parts)) if (value !== null && value !== undefined) q.set(key, String(value));
  const text = q.toString();
  return text ? '?' + text : '';
}
