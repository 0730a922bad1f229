import type { SamplePoint } from '../contract';
import { serverNow } from '../live/clock';
import { allPools } from '../live/store';
import { Field, tie } from '../parts/Field';
import { words } from '../words';
import { Frame } from './Frame';
import { hasAir } from './guides';
import { nextScreen, type Round } from './round';
import { Steps } from './Steps';
import { editDraft, editStop, show, stopOf } from './store';

const w = words.round;
const points: SamplePoint[] = ['pool', 'cell', 'outlet', 'balance_tank'];

/** Where and how the sample is taken; its moment is the moment of the button. */
export function SampleScreen({ round }: { round: Round }) {
  const stop = stopOf(round), d = stop.draft;
  const taken = () => {
    editStop(s => ({ ...s, draft: { ...s.draft, whenExact: serverNow() } }));
    show(nextScreen(stop, 'sample'));
  };
  const traps = [...(hasAir(allPools.value.get(d.poolId)?.kind ?? '') ? [w.air] : []), ...(d.point === 'cell' ? [w.cellPoint] : [])];
  return (
    <Frame round={round} primary={round.mending ? w.look : w.taken} onPrimary={round.mending ? () => show('look') : taken}>
      <Steps id="sample" steps={w.sampling} care={[]} traps={traps} />
      <section class="sheet form-part">
        <Field name="point" label={w.point}>
          <select class="tall" value={d.point} {...tie('point')} onChange={e => editDraft({ point: e.currentTarget.value as SamplePoint })}>{points.map(p => <option key={p} value={p}>{words.point[p]}</option>)}</select>
        </Field>
        <Field name="place" label={w.place} hint={w.placeHint}><input class="tall" type="text" value={d.place} {...tie('place')} onInput={e => editDraft({ place: e.currentTarget.value })} /></Field>
      </section>
    </Frame>
  );
}
