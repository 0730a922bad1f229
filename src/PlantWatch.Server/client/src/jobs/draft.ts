import { signal } from '@preact/signals';
import { recallJson, remember } from '../api/kept';
import type { JobRequest, JobView } from '../contract.jobs';

/** What a form begins with; under which key it was kept where it goes on. */
export interface Beginning { job: JobView | null; asset: string | null; task?: { id: string; name: string } | null; key?: string }

/** The form as typed. */
export type Draft = Omit<JobRequest, 'by' | 'minutes' | 'pictures' | 'after'> & { minutes: string };

/** A job that was written and not saved: its form, the pictures that had arrived, and which job it carries on, as that stood then. */
export interface Kept { id: string; after: string | null; carriesOn: boolean; task: { id: string; name: string } | null; draft: Draft; pictures: string[] }

/** One for each thing that somebody began to write: what was planned, what is carried on, and a new one for each asset it was begun from. */
export const keyOf = ({ job, asset, task, key }: Beginning): string => key ?? (job ? `job ${job.id}` : task ? `task ${task.id}` : `new ${asset ?? ''}`);

/** On the device, so that a job that was written while no server answered is there again. */
export const kept = signal<Record<string, Kept>>(recallJson<Record<string, Kept>>('jobs') ?? {});

/** What the device kept for a form; a count that was no number comes back as none. */
export function recalled(key: string): Kept | null {
  const k = kept.peek()[key];
  return k ? { ...k, draft: { ...k.draft, parts: k.draft.parts.map(p => ({ ...p, count: p.count ?? Number.NaN })) } } : null;
}

/** Keeps it, or forgets it. False when the browser would not. */
export function keep(key: string, what: Kept | null): boolean {
  const { [key]: _, ...others } = kept.peek();
  kept.value = what ? { ...others, [key]: what } : others;
  return remember('jobs', Object.keys(kept.value).length > 0 ? JSON.stringify(kept.value) : null);
}

/** Every field as it stands. */
const typed = (d: Draft) => JSON.stringify([d.asset, d.seen.trim(), d.done?.trim() ?? '', d.state, d.alarmId, d.minutes.trim(), d.parts]);

/** Whether anything was typed that the beginning had not. */
export const isTouched = (d: Draft, pictures: string[], began: Draft, hung: string[]): boolean => typed(d) !== typed(began) || pictures.join() !== hung.join();

/** What a kept form goes on from; a job that is carried on is known by its id alone while the list cannot be had. */
export const beginningOf = (key: string, k: Kept, jobs: JobView[]): Beginning => ({ job: jobs.find(j => k.carriesOn && j.id === k.id) ?? null, asset: k.draft.asset || null, task: k.task, key });
