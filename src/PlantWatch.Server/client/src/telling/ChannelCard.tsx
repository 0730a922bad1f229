import { useEffect, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { ChannelView, TestMessageAnswer } from '../contract.telling';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.telling;

/** One word for how it fares; the sign beside it only says it again. */
function Standing({ channel }: { channel: ChannelView }) {
  const word = channel.fails ? w.fails : channel.trouble !== null ? w.tries : channel.lastDeliveredAt ? w.delivers : w.unused;
  return (
    <p class="tell-word" data-testid={`channel-word-${channel.id}`}>
      {channel.trouble !== null ? <WarnGlyph /> : channel.lastDeliveredAt ? <TickGlyph /> : null}
      <b>{word}</b>{channel.failingSince && <span class="hint">{w.since(dayClock(channel.failingSince, zone.value))}</span>}
    </p>
  );
}

export function ChannelCard({ channel, reload, onName }: { channel: ChannelView; reload: () => void; onName: (error: string | undefined) => void }) {
  const [answer, setAnswer] = useState<TestMessageAnswer | null>(null);
  const { busy, errors, run } = useAction<TestMessageAnswer>(a => { setAnswer(a); reload(); });
  useEffect(() => onName(errors['by']), [errors]);
  const test = () => { setAnswer(null); void run(() => post<TestMessageAnswer>(`/telling/${channel.id}/test`, { by: who.value })); };
  return (
    <li class={`tell-channel${channel.fails ? ' is-failing' : ''}`} data-testid={`channel-${channel.id}`}>
      <h3>{channel.name} <span class="hint">{w.kind[channel.kind]} {'\u00b7'} {channel.where} {'\u00b7'} {w.told(words.priority[channel.from])}</span></h3>
      <Standing channel={channel} />
      {channel.trouble !== null && <p class="tell-trouble">{channel.trouble}</p>}
      <dl class="tell-facts">
        <div><dt>{w.last}</dt><dd>{channel.lastDeliveredAt ? dayClock(channel.lastDeliveredAt, zone.value) : w.never}</dd></div>
        <div><dt>{w.waiting}</dt><dd class="n">{channel.waiting}</dd></div>
        {channel.givenUp > 0 && <div><dt>{w.givenUp}</dt><dd class="n">{channel.givenUp}</dd></div>}
      </dl>
      <p><button type="button" onClick={test} disabled={busy} aria-label={`${w.test}: ${channel.name}`}>{busy ? w.sending : w.test}</button></p>
      <p role="status" data-testid={`test-answer-${channel.id}`}>
        {errors['form'] ?? (answer && (answer.delivered ? (answer.to.length ? w.sentTo(answer.to.join(', ')) : w.sent) : w.notSent(answer.trouble ?? '')))}
      </p>
    </li>
  );
}
