import { useState } from 'preact/hooks';
import type { SamplePoint } from '../contract';
import { toField } from '../format/zone';
import { now } from '../live/clock';
import { allPools, poolViews, site, zone } from '../live/store';
import { DueLine } from '../overview/DueLine';
import { Age } from '../parts/Age';
import { Field, Remark, tie } from '../parts/Field';
import { MendLine } from '../parts/MendLine';
import { setWho, who } from '../parts/person';
import { useReagents } from '../reagents/store';
import { words } from '../words';
import { sampleTime, type Errors } from './build';
import { CombinedPreview } from './CombinedPreview';
import { balanceTests, clearDraft, draft, edit, isTouched } from './draft';
import { PanelPart } from './PanelPart';
import { ResultRow } from './ResultRow';

const points: SamplePoint[] = ['pool', 'cell', 'outlet', 'balance_tank'];

function Where({ errors }: { errors: Errors }) {
  const d = draft.value;
  const at = sampleTime(d, zone.value, now.value);
  const foreign = Intl.DateTimeFormat().resolvedOptions().timeZone !== zone.value;
  const pools = site.value?.circuits.flatMap(c => c.pools) ?? [];
  return (
    <section class="sheet form-part">
      <Field name="pool" label={words.check.pool} error={errors['pool']}>
        <select class="tall" value={d.poolId} {...tie('pool', errors['pool'])} onChange={e => edit({ poolId: e.currentTarget.value, panel: {} })}>
          {d.poolId === '' && <option value="" />}
          {pools.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}
        </select>
      </Field>
      <Field name="when" label={words.check.when} error={errors['when']} hint={<>{at !== null && <Age at={at} />}{foreign && ` (${words.check.siteClock}, ${zone.value})`}</>}>
        <div class="inline">
          <input class="tall" type="datetime-local" value={d.whenText || toField(d.whenExact ?? now.value, zone.value)} {...tie('when', errors['when'])}
            onInput={e => edit({ whenText: e.currentTarget.value || 'none', whenExact: null })} />
          <button type="button" data-testid="when-now" onClick={() => edit({ whenText: '', whenExact: null })}>{words.check.now}</button>
        </div>
      </Field>
      <Field name="who" label={words.check.who} error={errors['who']}>
        <input class="tall" type="text" autocomplete="name" value={who.value} {...tie('who', errors['who'])} onInput={e => setWho(e.currentTarget.value)} />
      </Field>
      <Field name="point" label={words.check.point} error={errors['point']}>
        <select class="tall" value={d.point} {...tie('point', errors['point'])} onChange={e => edit({ point: e.currentTarget.value as SamplePoint })}>
          {points.map(p => <option key={p} value={p}>{words.point[p]}</option>)}
        </select>
      </Field>
      <Field name="place" label={words.check.place} error={errors['place']} hint={words.check.placeHint}>
        <input class="tall" type="text" value={d.place} {...tie('place', errors['place'])} onInput={e => edit({ place: e.currentTarget.value })} />
      </Field>
    </section>
  );
}

function Balance({ errors }: { errors: Errors }) {
  const d = draft.value;
  const wanted = poolViews.value.get(d.poolId)?.due.some(x => x.what.some(m => balanceTests.includes(m)))
    || balanceTests.some(m => d.rows[m]?.text || errors[m] || errors['dilution-' + m]);
  const [opened, open] = useState(false);
  return (
    <details class="sheet form-part" open={wanted || opened} onToggle={e => open(e.currentTarget.open)}>
      <summary data-testid="balance-tests"><h2>{words.check.balance}</h2></summary>
      {balanceTests.map(m => <ResultRow key={m} m={m} errors={errors} />)}
    </details>
  );
}

function Around({ errors }: { errors: Errors }) {
  const d = draft.value;
  const choices = [['yes', words.check.yes], ['no', words.check.no], ['', words.check.notLooked]] as const;
  return (
    <section class="sheet form-part">
      <h2>{words.check.around}</h2>
      <Field name="bottom" label={words.check.bottom} error={errors['bottom']} group>
        <div class="choices">
          {choices.map(([value, text]) => (
            <label key={value} class="choice">
              <input type="radio" name="bottom" value={value} checked={d.bottom === value} data-testid={`field-bottom-${value || 'not'}`} onChange={() => edit({ bottom: value })} />{text}
            </label>))}
        </div>
      </Field>
      <Field name="bathers" label={words.check.bathers} error={errors['bathers']}>
        <input class="big" type="text" inputMode="numeric" autocomplete="off" value={d.bathers} {...tie('bathers', errors['bathers'])} onInput={e => edit({ bathers: e.currentTarget.value })} />
      </Field>
      <Field name="note" label={words.check.note} error={errors['note']}>
        <textarea rows={2} value={d.note} {...tie('note', errors['note'])} onInput={e => edit({ note: e.currentTarget.value })} />
      </Field>
    </section>
  );
}

/** What disinfects: free and total chlorine, or bromine, of which free and combined are told together. */
function Disinfectant({ errors }: { errors: Errors }) {
  if (allPools.value.get(draft.value.poolId)?.disinfectant === 'bromine') return <><ResultRow m="bromine" errors={errors} /><p class="hint">{words.check.bromineHint}</p></>;
  return <><ResultRow m="free_chlorine" errors={errors} /><ResultRow m="total_chlorine" errors={errors} /><CombinedPreview /></>;
}

export function CheckForm({ errors, banner, onSubmit }: { errors: Errors; banner: string | null; onSubmit: () => void }) {
  const due = poolViews.value.get(draft.value.poolId)?.due ?? [];
  const touched = isTouched(draft.value);
  useReagents();
  return (
    <form class="check-form" noValidate onSubmit={e => { e.preventDefault(); onSubmit(); }}>
      <DueLine due={due} />
      {banner && <div class="notice bad" role="alert" data-testid="check-refused">{banner}</div>}
      <Where errors={errors} />
      <section class="sheet form-part">
        <h2>{words.check.results}</h2>
        <Disinfectant errors={errors} />
        <ResultRow m="ph" errors={errors} />
        <ResultRow m="temperature" errors={errors} />
      </section>
      <PanelPart errors={errors} />
      <Balance errors={errors} />
      <Around errors={errors} />
      <div class="submit-bar">
        <MendLine errors={errors} />
        <Remark name="form" text={errors['form']} />
        <button type="submit" class="primary" data-testid="submit-check">{words.check.submit}</button>
        {touched && <div class="inline spread"><span class="hint">{words.check.kept}</span>
          <button type="button" class="slim" onClick={() => { if (confirm(words.check.clearSure)) clearDraft(); }}>{words.check.clear}</button></div>}
      </div>
    </form>
  );
}
