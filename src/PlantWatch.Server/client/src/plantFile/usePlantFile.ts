import { useEffect, useRef, useState } from 'preact/hooks';
import type { PlantFileCheck, PlantFileEdit, PlantFileView } from '../contract.plantFile';
import { onLive } from '../live/connection';
import { check as ask, draft, fetchFile, keepDraft } from './draft';

/** The file, the draft over it, and what the server says of the draft. Typing is kept at once; the server is asked when it pauses. */
export function usePlantFile() {
  const [there, setThere] = useState<PlantFileView | null>(null);
  const [failed, setFailed] = useState(false);
  const [checked, setChecked] = useState<{ text: string; over: string | undefined; answer: PlantFileCheck } | null>(null);
  const [refused, setRefused] = useState<Record<string, string>>({});
  const round = useRef(0);
  const mine = draft.value;

  const reload = async () => {
    const answer = await fetchFile();
    setFailed(!answer.ok);
    if (answer.ok) setThere(answer.value);
  };
  useEffect(() => { void reload(); return onLive(() => void reload()); }, []);

  const waiting = mine?.waiting ?? [];
  // Asked again when the file itself has changed: the difference is another one then.
  const asks = mine && (checked?.text !== mine.text || checked.over !== there?.digest || waiting.length > 0) ? JSON.stringify([mine.text, waiting, there?.digest]) : '';
  useEffect(() => {
    if (!asks || !mine) return;
    const my = ++round.current;
    const timer = setTimeout(async () => {
      const answer = await ask(mine.text, waiting);
      if (my !== round.current) return;
      setFailed(!answer.ok && !answer.problem);
      if (!answer.ok) return;
      const now = draft.value;
      if (!now || now.text !== mine.text) return;
      // What was refused is set aside with its reason; what came since waits for the next time.
      const no = answer.value.refused;
      if (no) setRefused(r => ({ ...r, [no.field]: no.text }));
      const rest = no ? now.waiting.filter(e => e.path !== no.field) : now.waiting.slice(waiting.length);
      keepDraft({ ...now, text: answer.value.text, waiting: rest });
      setChecked({ text: answer.value.text, over: there?.digest, answer: answer.value });
    }, waiting.length > 0 ? 150 : 400);
    return () => clearTimeout(timer);
  }, [asks]);

  const begin = () => draft.value ?? { digest: there!.digest, text: there!.text, waiting: [] };
  return {
    there, failed, refused, mine, reload, setThere,
    check: mine && checked?.text === mine.text ? checked.answer : null,
    last: checked?.answer ?? null,
    type: (text: string) => { setRefused({}); keepDraft(text === there?.text && there.digest === begin().digest ? null : { ...begin(), text, waiting: [] }); },
    edit: (...edits: PlantFileEdit[]) => {
      setRefused(r => Object.fromEntries(Object.entries(r).filter(([path]) => !edits.some(e => e.path === path))));
      const now = begin();
      keepDraft({ ...now, waiting: [...now.waiting, ...edits] });
    },
  };
}
