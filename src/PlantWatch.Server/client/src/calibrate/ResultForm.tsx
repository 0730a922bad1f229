import { useEffect, useMemo, useState } from 'preact/hooks';
import { post, put } from '../api/http';
import type { CalibrationView, ProbeInfo } from '../contract';
import type { SheetResult } from '../contract.bench';
import { fixed, signed } from '../format/number';
import { onLive } from '../live/connection';
import { Field, OtherRemarks, Remark, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import type { BenchDraft } from './draft';
import { sheetOf } from './sheet';

const w = words.calibrate.result;

/** The verdict in figures and sentences. */
export function Figures({ result, probe }: { result: SheetResult; probe: ProbeInfo }) {
  const { sheet } = result, ph = probe.measurand === 'ph', d = ph ? 2 : 0, unit = ph ? '' : ' mV';
  return (
    <>
      <p class={`bench-verdict v-${sheet.verdict}`} data-testid="verdict" data-verdict={sheet.verdict}><b>{w.verdict[sheet.verdict]}</b></p>
      <dl class="side-by-side bench-figures">
        {sheet.slopePercent !== null && <div><dt>{w.slope}</dt><dd class="figure small" data-testid="slope">{fixed(sheet.slopePercent, 1)} %</dd></div>}
        {sheet.offsetMillivolts !== null && <div><dt>{w.offset}</dt><dd class="figure small" data-testid="offset">{signed(sheet.offsetMillivolts, 0)} mV</dd></div>}
        {sheet.foundError !== null && <div><dt>{w.foundBy}</dt><dd class="figure small">{signed(sheet.foundError, d)}{unit}</dd></div>}
        {sheet.leftError !== null && <div><dt>{w.leftBy}</dt><dd class="figure small">{signed(sheet.leftError, d)}{unit}</dd></div>}
      </dl>
      <ul class="plain">{sheet.why.map(s => <li key={s.code}>{s.text}</li>)}</ul>
    </>
  );
}

/** What follows from the readings, what signing does, and the signature. Without a server everything stays on the device. */
export function ResultForm({ probe, draft, secondPerson, onChange, onSigned }: {
  probe: ProbeInfo; draft: BenchDraft; secondPerson: boolean; onChange: (change: Partial<BenchDraft>) => void; onSigned: (view: CalibrationView) => void;
}) {
  const [result, setResult] = useState<SheetResult | null>(null);
  const [refused, setRefused] = useState<string[]>([]);
  const [away, setAway] = useState(false);
  const sheet = useMemo(() => sheetOf(draft, who.value, null), [draft]);
  const { busy, errors, run, setErrors } = useAction<CalibrationView>(onSigned);
  useEffect(() => {
    let gone = false;
    const load = async () => {
      const answer = await post<SheetResult>(`/bench/${encodeURIComponent(probe.id)}/result`, sheet);
      if (gone) return;
      setAway(!answer.ok && answer.problem === null);
      setResult(answer.ok ? answer.value : null);
      setRefused(answer.ok ? [] : answer.problem?.errors.map(e => e.text) ?? []);
    };
    void load();
    const stop = onLive(() => void load());
    return () => { gone = true; stop(); };
  }, [sheet, probe.id]);
  const sign = () => who.value.trim()
    ? void run(() => put(`/bench/${encodeURIComponent(probe.id)}/sheets/${draft.sheetId}`, { ...sheet, by: who.value.trim(), endedAt: null }))
    : setErrors({ by: words.needName });
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); sign(); }} data-testid="result">
      {away && <p class="notice" role="alert" data-testid="result-away">{w.noServer}</p>}
      {!away && !result && refused.length === 0 && <p class="hint">{w.computing}</p>}
      {refused.map(text => <Remark key={text} name="sheet" text={text} />)}
      {result && (
        <>
          <Figures result={result} probe={probe} />
          <p><b>{result.status === 'proposed' ? w.waits : w.what[result.kind]}</b> {result.status !== 'proposed' && secondPerson && w.review}</p>
          <p class="notice">{w.putBack}</p>
          <Field name="bench-note" label={w.note} error={errors['note']}><input type="text" value={draft.note} {...tie('bench-note', errors['note'])} onInput={e => onChange({ note: e.currentTarget.value })} /></Field>
          <NameField name="bench-by" error={errors['by']} />
          <OtherRemarks errors={errors} shown={['note', 'by']} />
          <div class="submit-bar"><button type="submit" class="primary" disabled={busy} data-testid="sign">{w.sign}</button></div>
        </>)}
    </form>
  );
}

