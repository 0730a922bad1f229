import { useState } from 'preact/hooks';
import type { PlantFileView } from '../contract.plantFile';
import type { HeardTopicView, HeardValue, HeardView } from '../contract.topics';
import { plain } from '../format/number';
import { Age } from '../parts/Age';
import { Field, tie } from '../parts/Field';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { everyText, type SoFar } from './file';
import { ProbeForm } from './ProbeForm';

const w = words.start.probe;
const most = 60;
const shown = (v: number) => plain(Number(v.toPrecision(6)));
const keyOf = (t: HeardTopicView, v: HeardValue) => `${t.topic} ${v.record ?? ''}`;

/** What a pump says of itself: it is no reading, and nothing is wrong with it. */
const isOfPump = (t: HeardTopicView) => t.format === null && t.values.some(v => v.takenBy);

function Facts({ topic }: { topic: HeardTopicView }) {
  const says = topic.format ? { number: w.asNumber, senml_json: w.asSenml, senml_cbor: w.asCbor }[topic.format] : topic.trouble;
  return <span class="hint">{!isOfPump(topic) && `${says}; `}{topic.retained ? w.retained : topic.everySeconds ? w.every(everyText(topic.everySeconds)) : w.once}; <Age at={Date.parse(topic.lastAt)} /></span>;
}

/** What is heard at the broker, live; what is picked becomes a probe. */
export function ProbeStep({ file, onDone, onNext }: { file: SoFar; onDone: (view: PlantFileView) => void; onNext: () => void }) {
  const { data, failed } = usePolled<HeardView>('/topics/heard', 2_000);
  // Held as it was when it was picked, and drawn beside the list: what is heard next, or a filter, takes nothing away from what is typed.
  const [picked, pick] = useState<{ topic: HeardTopicView; value: HeardValue } | null>(null);
  const [letters, setLetters] = useState('');
  const [said, say] = useState('');
  if (!data) return <p class="hint" role="status">{failed ? words.error.unreachable : w.listening}</p>;
  // By name, so that nothing jumps under the finger while messages come in.
  const all = data.topics.filter(t => t.topic.toLowerCase().includes(letters.trim().toLowerCase())).sort((a, b) => (a.topic < b.topic ? -1 : 1));
  return (
    <div class="stack">
      <p role="status" data-testid="ear">{w.broker}: {data.broker}. {w.heard(data.topics.length)}.</p>
      <p class="hint">{w.address} <code>{data.address}</code>. {w.how}</p>
      {data.topics.length === 0 && <p class="notice">{w.nothing}</p>}
      {picked && (
        <div class="stack" data-testid="picked">
          <p><code>{picked.topic.topic}</code> {picked.value.record && <code>{picked.value.record}</code>}</p>
          <ProbeForm key={keyOf(picked.topic, picked.value)} file={file} topic={picked.topic} value={picked.value} onCancel={() => pick(null)} onDone={(view, name) => { pick(null); say(w.added(name)); onDone(view); }} />
        </div>)}
      {data.topics.length > 8 && <Field name="letters" label={w.filter}><input type="search" value={letters} {...tie('letters')} onInput={e => setLetters(e.currentTarget.value)} /></Field>}
      {all.length === 0 && data.topics.length > 0 && <p class="hint">{w.noneLeft}</p>}
      <ul class="heard" data-testid="heard">
        {all.slice(0, most).map(t => (
          <li key={t.topic} data-testid={`topic-${t.topic}`}>
            <p><code>{t.topic}</code> <Facts topic={t} /></p>
            {t.format === null && !isOfPump(t) && <p class="hint"><code>{t.payload}</code></p>}
            <ul>{t.values.map(v => (
              <li key={v.record ?? ''}>
                <span>{v.record && <code>{v.record}</code>} {v.value !== null && <b class="num">{shown(v.value)}</b>} {v.unit}</span>
                {v.takenBy ? <span class="confirmed"><span aria-hidden="true">{'\u2713'} </span>{w.takenBy(v.takenBy)}</span>
                  : t.format && <button type="button" data-testid={`take-${keyOf(t, v).trim()}`} aria-label={w.takeNamed(v.record ?? t.topic)} onClick={() => { say(''); pick({ topic: t, value: v }); }}>{w.take}</button>}
              </li>))}</ul>
          </li>))}
      </ul>
      {all.length > most && <p class="hint">{w.more(all.length - most)}</p>}
      {data.forgotten > 0 && <p class="hint">{w.forgotten(data.forgotten)}</p>}
      <p role="status" class="confirmed">{said}</p>
      {!picked && <button class={file.probes.length > 0 ? 'primary' : ''} type="button" data-testid="probes-done" onClick={onNext}>{file.probes.length > 0 ? w.goOn : w.without}</button>}
    </div>
  );
}
