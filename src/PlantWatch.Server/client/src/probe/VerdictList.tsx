import { useEffect, useState } from 'preact/hooks';
import { get, query } from '../api/http';
import type { Iso, JudgementView, ProbeInfo } from '../contract';
import type { JudgementPage, ProbeHistory } from '../contract.probe';
import { words } from '../words';
import { VerdictRow } from './VerdictRow';

const atFirst = 8;

/** What changed since a verdict was given; undefined while it stands as it was said. */
function since(j: JudgementView, doubted: ReadonlySet<string>, takenIn: ReadonlySet<string>): string | undefined {
  if (j.verdict === 'check_suspect' && takenIn.has(j.checkId)) return words.probePage.verdicts.since;
  return j.verdict !== 'check_suspect' && doubted.has(j.checkId) ? words.probePage.verdicts.nowDoubted : undefined;
}

/** Every verdict, latest first; the older ones come from the record page by page. */
export function VerdictList({ probe, history }: { probe: ProbeInfo; history: ProbeHistory }) {
  const [more, setMore] = useState<JudgementView[]>([]);
  const [older, setOlder] = useState<Iso | null>(history.older);
  const [all, setAll] = useState(false);
  const [state, setState] = useState<'idle' | 'busy' | 'failed'>('idle');
  useEffect(() => { if (more.length === 0) setOlder(history.older); }, [history.older]);
  const doubted = new Set(history.doubted), takenIn = new Set(history.takenIn);
  // A check that came meanwhile moves the first page: what the pages share is shown once.
  const seen = new Set<string>();
  const list = [...history.judgements, ...more].filter(j => !seen.has(j.checkId) && seen.add(j.checkId));
  const shown = all ? list : list.slice(0, atFirst);
  const fetchMore = async () => {
    if (!all && list.length > atFirst) return setAll(true);
    setState('busy');
    const answer = await get<JudgementPage>(`/probes/${encodeURIComponent(probe.id)}/judgements` + query({ before: older, limit: 40 }));
    setState(answer.ok ? 'idle' : 'failed');
    if (!answer.ok) return;
    setAll(true);
    setMore(m => [...m, ...answer.value.judgements]);
    setOlder(answer.value.older);
  };
  return (
    <section class="sheet card later" data-testid="judgements">
      <h2>{words.probePage.verdicts.title}</h2>
      {list.length === 0 ? <p class="hint">{words.probePage.verdicts.none}</p> : (
        <ul class="verdicts">{shown.map(j => <VerdictRow key={j.checkId} j={j} probe={probe} since={since(j, doubted, takenIn)} doubted={doubted.has(j.checkId) || (j.verdict === 'check_suspect' && !takenIn.has(j.checkId))} />)}</ul>)}
      {(shown.length < list.length || older !== null) && (
        <button type="button" disabled={state === 'busy'} data-testid="older-checks" onClick={() => void fetchMore()}>{state === 'busy' ? words.probePage.verdicts.loading : words.probePage.verdicts.older}</button>)}
      {state === 'failed' && <p class="hint" role="alert">{words.probePage.verdicts.failed}</p>}
    </section>
  );
}
