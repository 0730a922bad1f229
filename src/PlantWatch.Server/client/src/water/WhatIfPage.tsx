import { useEffect, useRef, useState } from 'preact/hooks';
import type { PoolInfo } from '../contract';
import type { WhatIfRequest } from '../contract.whatIf';
import { decimalsOfAcid, fixed, readTyped, signed } from '../format/number';
import { clockSeconds } from '../format/zone';
import { zone } from '../live/store';
import { Remark, tie } from '../parts/Field';
import { link } from '../router';
import { words } from '../words';
import { DoseRows, kilogramsOf, type DoseDraft } from './DoseRows';
import { useImagined } from './imagine';
import { InputRow } from './InputRow';
import { inputKinds, startOf, valueOf, waterOf, type Edits, type InputKey, type Start } from './inputs';
import { LazyCurves } from './LazyCurves';
import { ShortThen, ThenNow } from './ThenNow';
import { WaterFrame } from './WaterFrame';

interface Draft { edits: Edits; doses: DoseDraft[]; curve: string; spent: boolean; volume: string }
interface Present { start: Start; at: string }
const untouched: Draft = { edits: {}, doses: [], curve: '', spent: false, volume: '' };

/** What keeps the draft from being asked: field and words. */
function slips(draft: Draft, start: Start): Record<string, string> {
  const out: Record<string, string> = {};
  for (const kind of inputKinds) if (valueOf(kind, draft.edits, start) === undefined) out[kind.key] = words.whatIf.notNumber;
  for (const d of draft.doses) if (kilogramsOf(d) === null) out['dose-' + d.product] = words.whatIf.notNumber;
  const volume = readTyped(draft.volume);
  if (volume.kind === 'wrong') out['volume'] = words.whatIf.notNumber;
  return out;
}

/** What the server is asked; without a start, the present water is meant. */
function requestOf(draft: Draft, start: Start | null): WhatIfRequest {
  const volume = readTyped(draft.volume);
  return {
    water: start && waterOf(draft.edits, start), doses: draft.doses.map(d => ({ product: d.product, kilograms: kilogramsOf(d) ?? 0 })),
    volumeM3: volume.kind === 'number' ? volume.value : null, curve: draft.curve || null, chlorineSpent: draft.spent,
  };
}

/** The server names fields by their place in the request; here they have names of their own. */
function fieldOf(path: string, doses: DoseDraft[]): string {
  const dose = /^doses\[(\d+)\]/.exec(path);
  if (dose) return 'dose-' + (doses[Number(dose[1])]?.product ?? '');
  return path === 'volumeM3' ? 'volume' : path.replace(/^water\./, '');
}

function WhatIf({ pool }: { pool: PoolInfo }) {
  const [draft, setDraft] = useState<Draft>(untouched);
  const { answer, problem, unreachable, wish } = useImagined(pool.id);
  const frozen = useRef<Present>({ start: {}, at: '' });
  const present: Present = answer ? { start: startOf(answer.inputs), at: answer.at } : { start: {}, at: '' };
  const touched = Object.keys(draft.edits).length > 0 || draft.doses.length > 0;
  // Typed before the first answer came: the rest is filled in as soon as it is known.
  if (touched && frozen.current.at === '') frozen.current = present;
  const { start, at } = touched ? frozen.current : present;
  const wrong = slips(draft, start);
  useEffect(() => { if (Object.keys(wrong).length === 0) wish(requestOf(draft, touched ? start : null)); }, [draft, touched && at]);

  const change = (next: Partial<Draft>) => {
    // What stands in the fields at the first touch is what the water is set from; it does not move under the hand.
    if (!touched) frozen.current = present;
    setDraft(d => ({ ...d, ...next }));
  };
  const edit = (key: InputKey, text: string | undefined) => {
    const edits = { ...draft.edits };
    if (text === undefined) delete edits[key]; else edits[key] = text;
    change({ edits });
  };
  const errors = { ...wrong };
  for (const e of problem?.errors ?? []) errors[fieldOf(e.field, draft.doses)] ??= e.text;
  const bad = Object.keys(errors).length > 0;
  const kinds = inputKinds.filter(k => k.key !== 'freeChlorine' || pool.disinfectant !== 'bromine');
  const then = answer?.after ?? null, now = answer?.now ?? null;
  const chosen = draft.doses.find(d => d.product === draft.curve);
  const hocl = then?.figures.hypochlorousAcid ?? null, index = then?.figures.saturationIndex ?? null;
  return (
    <div class={`what-if ${bad || unreachable ? 'stands-still' : ''}`}>
      <section class="sheet card set-water">
        <div class="card-head"><h2>{words.whatIf.inputs}</h2>
          <button type="button" class="slim" disabled={!touched && draft === untouched} data-testid="reset" onClick={() => setDraft(untouched)}>{words.whatIf.reset}</button></div>
        <p class="hint" data-testid="started">{touched && at ? words.whatIf.startedAt(clockSeconds(at, zone.value)) : words.whatIf.startedNow}</p>
        {kinds.map(k => <InputRow key={k.key} kind={k} edits={draft.edits} start={start} error={errors[k.key]} edit={text => edit(k.key, text)} />)}
        <h2>{words.whatIf.doses}</h2>
        <DoseRows products={answer?.products ?? []} doses={draft.doses} amounts={answer?.doses ?? []} errors={errors} set={doses => change({ doses })} />
        {draft.doses.length > 0 && <>
          <div class="field"><label class="label" for="f-volume">{words.whatIf.volume}</label>
            <span class="set-number wide"><input type="text" inputMode="decimal" autocomplete="off" placeholder={fixed(answer?.volumeM3, 1)} value={draft.volume} {...tie('volume', errors['volume'])}
              onInput={e => change({ volume: e.currentTarget.value })} /><span class="unit">m³</span></span>
            {draft.volume === '' && answer && <div class="hint">{words.whatIf.volumeHint(answer.volume.text)}</div>}<Remark name="volume" text={errors['volume']} /></div>
          {answer?.products.some(p => /hypochlor|chlor$|chlorine/.test(p.kind) && draft.doses.some(d => d.product === p.id)) && (
            <label class="choice"><input type="checkbox" checked={draft.spent} data-testid="spent" onChange={e => change({ spent: e.currentTarget.checked })} />{words.whatIf.spent}</label>)}
          <p class="hint">{words.whatIf.care} <a href={link('dose', pool.id)}>{words.whatIf.carePage}</a>.</p>
        </>}
      </section>
      <div class="stack set-results">
        <section class="sheet card">
          <h2>{words.whatIf.results}</h2>
          {unreachable && <p class="notice" role="alert" data-testid="what-if-unreachable">{words.whatIf.unreachable}</p>}
          {bad && <p class="notice" data-testid="what-if-stale">{words.whatIf.stale}</p>}
          {answer ? <ThenNow now={now} then={then} /> : !unreachable && <p class="hint">{words.whatIf.working}</p>}
          {answer && answer.remarks.length > 0 && <ul class="plain" data-testid="what-if-remarks">{answer.remarks.map(r => <li key={r.code + r.text}>{r.text}</li>)}</ul>}
          {index !== null && <p class="hint">{words.whatIf.claim}</p>}
          <p class="hint">{words.whatIf.closed}</p>
          <output class="sr" aria-live="polite">{touched && then && words.whatIf.spoken(fixed(then.figures.ph, 2), hocl === null ? words.whatIf.unknown : `${fixed(hocl, decimalsOfAcid(hocl))} mg/L`, index === null ? words.whatIf.unknown : signed(index, 2))}</output>
        </section>
        {answer && <LazyCurves pool={pool} answer={answer} curve={draft.curve} kilograms={chosen ? kilogramsOf(chosen) : null} choose={curve => setDraft(d => ({ ...d, curve }))} />}
      </div>
      <div class="short-bar">{(bad || unreachable) && <p class="short-still" aria-hidden="true">{unreachable ? words.error.unreachable : words.whatIf.stillShort}</p>}<ShortThen now={now} then={then} /></div>
    </div>
  );
}

export function WhatIfPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="what-if">{pool => <><p class="water-lead">{words.whatIf.lead}</p><WhatIf key={pool.id} pool={pool} /></>}</WaterFrame>;
}
