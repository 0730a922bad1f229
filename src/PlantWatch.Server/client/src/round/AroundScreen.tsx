import { serverNow } from '../live/clock';
import { unitText } from '../format/number';
import { typedUnit } from '../format/units';
import { probesOfPool, zone } from '../live/store';
import { Field, tie } from '../parts/Field';
import { focusFirstWrong } from '../parts/mending';
import { words } from '../words';
import { Frame } from './Frame';
import { nextScreen, type Round } from './round';
import { editDraft, show, stopOf } from './store';
import { wrongOn } from './wrong';

const w = words.round;

/** What is seen beside the tests: the bottom, bathers, and the panel that the pumps obey. */
export function AroundScreen({ round }: { round: Round }) {
  const stop = stopOf(round), d = stop.draft;
  const panels = probesOfPool(d.poolId).filter(p => p.origin === 'panel_scaled');
  const errors = wrongOn(stop, 'around', zone.value, serverNow()), isWrong = Object.keys(errors).length > 0;
  const go = () => isWrong ? focusFirstWrong() : show(nextScreen(stop, 'around', round.mending));
  const enter = (e: KeyboardEvent) => { if (e.key === 'Enter') go(); };
  return (
    <Frame round={round} primary={round.mending ? w.look : w.next} onPrimary={go}>
      <section class="sheet form-part">
        <Field name="bottom" label={w.bottom} group>
          <div class="choices">{([['yes', words.check.yes], ['no', words.check.no], ['', words.check.notLooked]] as const).map(([value, text]) => (
            <label key={value} class="choice"><input type="radio" name="bottom" checked={d.bottom === value} data-testid={`field-bottom-${value || 'not'}`} onChange={() => editDraft({ bottom: value })} />{text}</label>))}</div>
        </Field>
        {panels.map(p => (
          <Field key={p.id} name={'panel-' + p.id} label={`${w.panel}: ${p.name}`} error={errors['panel-' + p.id]}>
            <div class="result-line"><input class="big" type="text" inputMode="decimal" autocomplete="off" value={d.panel[p.id] ?? ''} {...tie('panel-' + p.id, errors['panel-' + p.id])} onInput={e => editDraft({ panel: { ...d.panel, [p.id]: e.currentTarget.value } })} />
              <span class="unit">{p.measurand === 'temperature' ? typedUnit(p.measurand) : unitText(p.unit)}</span></div>
          </Field>))}
        <Field name="bathers" label={w.bathers} error={errors['bathers']}><input class="big" type="text" inputMode="numeric" autocomplete="off" enterkeyhint="next" value={d.bathers} {...tie('bathers', errors['bathers'])} onKeyDown={enter} onInput={e => editDraft({ bathers: e.currentTarget.value })} /></Field>
        <Field name="note" label={w.note}><textarea rows={2} value={d.note} {...tie('note')} onInput={e => editDraft({ note: e.currentTarget.value })} /></Field>
      </section>
    </Frame>
  );
}
