import type { Errors } from '../check/build';
import { change } from '../plantFile/draft';
import type { PlantFileEdit, PlantFileView } from '../contract.plantFile';
import { refetch } from '../live/connection';
import { who } from '../parts/person';
import { words } from '../words';
import type { Answer } from '../api/http';

const w = words.start;
const empty = `${w.fileHead}\nsite: {}\n\ncircuits: []\n`;

/** Writes a step to the plant file; the page then knows the plant anew. */
export async function write(edits: (view: PlantFileView) => PlantFileEdit[], why: string): Promise<Answer<PlantFileView>> {
  const answer = await change(edits, who.value.trim(), why, empty);
  if (answer.ok) await refetch();
  return answer;
}

/** What is missing of a form, by its fields; empty when nothing is. */
export const missing = (...said: [string, boolean, string][]): Errors => Object.fromEntries(said.filter(([, wrong]) => wrong).map(([field, , text]) => [field, text]));
