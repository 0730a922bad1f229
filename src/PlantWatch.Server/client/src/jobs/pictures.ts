// Pictures of jobs: made small here, which leaves behind what the phone wrote beside them, where they were taken above all.
import type { Problem } from '../contract';
import { words } from '../words';

export interface PictureView { hash: string; width: number; height: number; bytes: number }

/** A picture in the form: on its way, waiting for the server, refused with the reason, or taken in under its name. */
export interface Item { key: string; preview: string; blob: Blob | null; state: 'going' | 'waits' | 'refused' | 'there'; hash: string | null; why: string | null }

export type Sent = { kind: 'there'; view: PictureView } | { kind: 'refused'; why: string } | { kind: 'unreachable' };

export const longestSide = 1600;
const quality = 0.82;
const patience = 60_000;

/** The size that a picture is sent in: whole when it is small enough, else its longer side cut to the limit. */
export function fitted(width: number, height: number): { width: number; height: number } {
  const by = Math.min(1, longestSide / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * by)), height: Math.max(1, Math.round(height * by)) };
}

/** Draws it anew, the right way up, and nothing but that. Throws for what the browser cannot read as a picture. */
export async function redraw(file: Blob): Promise<Blob> {
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const { width, height } = fitted(image.width, image.height);
  const canvas = document.createElement('canvas');
  canvas.width = width; canvas.height = height;
  canvas.getContext('2d')!.drawImage(image, 0, 0, width, height);
  image.close();
  return new Promise((done, failed) => canvas.toBlob(blob => blob ? done(blob) : failed(new Error('no picture')), 'image/jpeg', quality));
}

export const asData = (blob: Blob): Promise<string> => new Promise((done, failed) => {
  const reader = new FileReader();
  reader.onload = () => done(String(reader.result));
  reader.onerror = () => failed(reader.error);
  reader.readAsDataURL(blob);
});

/** Sends it. What the server cannot answer now it is asked again later. */
export async function send(blob: Blob): Promise<Sent> {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), patience);
  try {
    const response = await fetch('/api/v1/pictures', { method: 'POST', body: blob, signal: stop.signal, cache: 'no-store', headers: { 'Content-Type': 'application/octet-stream' } });
    const body: unknown = await response.json().catch(() => null);
    if (response.ok && body) return { kind: 'there', view: body as PictureView };
    const said = (body as Partial<Problem> | null)?.errors?.[0]?.text;
    // Whoever stands before the server may refuse without our words.
    return response.status >= 400 && response.status < 500 ? { kind: 'refused', why: said ?? words.jobs.pictureRefused } : { kind: 'unreachable' };
  } catch {
    return { kind: 'unreachable' };
  } finally {
    clearTimeout(timer);
  }
}

export const pathOf = (hash: string) => `/api/v1/pictures/${hash}`;
