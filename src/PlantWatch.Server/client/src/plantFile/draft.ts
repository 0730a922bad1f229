import { signal } from '@preact/signals';
import { get, post, put, type Answer } from '../api/http';
import { recallJson, remember } from '../api/kept';
import { refetch } from '../live/connection';
import type { PlantFileCheck, PlantFileEdit, PlantFileView } from '../contract.plantFile';

// What somebody has changed and not saved yet. It is kept on the device until it is saved or given up: no reload, no dead connection and no refusal loses it.

/** A version that begins at what was read under a digest. `waiting` are changes that the server has not worked into the text yet. */
export interface Draft { digest: string; text: string; waiting: PlantFileEdit[] }

const key = 'plant-file';
export const draft = signal<Draft | null>(recallJson<Draft>(key));

export function keepDraft(next: Draft | null): void {
  draft.value = next;
  remember(key, next ? JSON.stringify(next) : null);
}

export const fetchFile = () => get<PlantFileView>('/plant-file');
export const check = (text: string | null, edits: PlantFileEdit[] = []) => post<PlantFileCheck>('/plant-file/check', { text, edits });

/** Saves the file. What it names, the site first, is asked for anew: it stands on every page. */
export async function save(text: string, digest: string, by: string, why: string): Promise<Answer<PlantFileView>> {
  const answer = await put<PlantFileView>('/plant-file', { text, by, why }, { 'If-Match': `"${digest}"` });
  if (answer.ok) void refetch();
  return answer;
}

/** The file there is, changed and saved in one go. Somebody else's change in between is no hindrance: the same is done to what he left. */
export async function change(edits: (view: PlantFileView) => PlantFileEdit[], by: string, why: string, begin = ''): Promise<Answer<PlantFileView>> {
  for (let tries = 0; ; tries++) {
    const there = await fetchFile();
    if (!there.ok) return there;
    if (there.value.fault) return { ok: false, problem: { type: '', title: '', status: 409, errors: [{ field: '', code: there.value.fault.code, text: there.value.fault.text }] } };
    const tried = await check(there.value.text || begin, edits(there.value));
    if (!tried.ok) return tried;
    const { refused, problems, text } = tried.value;
    if (refused || problems.length) {
      const errors = refused ? [{ field: refused.field, code: refused.code, text: refused.text }] : problems.map(p => ({ field: p.key, code: 'plant_file.problem', text: p.text }));
      return { ok: false, problem: { type: '', title: '', status: 400, errors } };
    }
    const saved = await save(text, there.value.digest, by, why);
    if (saved.ok || saved.problem?.status !== 412 || tries > 2) return saved;
  }
}
