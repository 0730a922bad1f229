import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { LimitBand, Measurand, ProbeInfo } from '../contract';
import { now, serverNow } from '../live/clock';
import { headingOf } from '../live/store';
import { limitOf } from '../parts/beyond';
import { words } from '../words';
import { gestures } from './gestures';
import type { Compared } from './ghost';
import type { Look } from './look';
import { newDraft, type NoteDraft } from './noteDraft';
import { NoteForm } from './NoteForm';
import { painted, type NoteSpan } from './notes';
import { Chosen, Lanes, nothingOpened, usePast, type Opened } from './Overlays';
import { ProbeStrip, type Overlay } from './ProbeStrip';
import { StripsBar } from './StripsBar';
import { GhostLine, StripTools } from './StripTools';
import { TestStrip } from './TestStrip';
import type { Around } from './useAround';
import { useChecks } from './useChecks';
import { following, followed, held, shownSignal, spans, type SpanName } from './window';

export type { Around };
export interface StripsProps { poolId: string | null; probes: ProbeInfo[]; limits: readonly LimitBand[]; tests: Measurand[]; fresh: string; first?: SpanName; chart?: boolean; overlay?: Overlay | undefined; around?: Around | undefined }

/** All strips of a page under one time axis. Those of a pool have what happened and what was noted over them, and tools. */
export default function Strips({ poolId, probes, limits, tests, fresh, first, chart, overlay, around }: StripsProps) {
  const shown = useMemo(() => { const s = shownSignal(serverNow()); if (first) s.value = following(spans[first], serverNow()); if (around) s.value = held(around.from, around.to, serverNow()); return s; }, []);
  const cursor = useSignal<number | null>(null), look = useSignal<Look>('both'), compared = useSignal<Compared | null>(null), corrected = useSignal(false);
  const draft = useSignal<NoteDraft | null>(null), opened = useSignal<Opened>(nothingOpened), noted = useSignal<readonly NoteSpan[]>([]);
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const tools = chart ? poolId : null;
  const checks = useChecks(poolId, shown, fresh), past = usePast(tools, shown, fresh);
  const spansText = JSON.stringify(painted(past.notes));
  useEffect(() => { noted.value = JSON.parse(spansText) as NoteSpan[]; }, [spansText]);

  const choose = (from: number, to: number) => {
    const [a, b] = [Math.min(from, to), Math.min(Math.max(from, to), serverNow())];
    draft.value = draft.peek() && !draft.peek()!.retract ? { ...draft.peek()!, from: Math.min(a, b), to: b } : newDraft(a, b);
  };
  // Whoever wrote a note goes on where it was begun; where that is gone, or it was drawn, at the way to write one.
  const begunFrom = useRef<Element | null>(null);
  const back = () => {
    const from = begunFrom.current;
    begunFrom.current = null;
    requestAnimationFrame(() => (from?.isConnected ? from as HTMLElement : host.current?.parentElement?.querySelector<HTMLElement>('[data-opens="note"]'))?.focus({ preventScroll: true }));
  };
  // A note that is being written is not begun over another one.
  const write = () => { if (!draft.peek()) begunFrom.current = document.activeElement; draft.value ??= newDraft(shown.peek().from, Math.min(shown.peek().to, serverNow())); opened.value = nothingOpened; };

  useSignalEffect(() => { shown.value = followed(shown.peek(), now.value); });
  useEffect(() => {
    const h = host.current!;
    const watch = new ResizeObserver(() => setWidth(Math.floor(h.clientWidth)));
    watch.observe(h);
    const stop = gestures(h, shown, () => {
      const over = h.querySelector('.u-over')?.getBoundingClientRect();
      return over ? { left: over.left, width: over.width } : null;
    }, tools === null ? undefined : { armed: () => draft.peek() !== null && !draft.peek()!.retract, choose, write });
    return () => { watch.disconnect(); stop(); };
  }, [tools]);

  const common = { shown, cursor, width, checks, look, compared, noted, corrected, onOpen: (id: string) => { if (past.marks.some(m => m.id === id)) opened.value = { marks: [id], note: null }; } };
  const count = probes.length + tests.length;
  return (
    <div class="sheet strips">
      <StripsBar shown={shown} cursor={cursor} />
      {tools !== null && <StripTools poolId={tools} shown={shown} width={width} look={look} compared={compared} corrected={corrected.value} onNote={write} />}
      {compared.value && <GhostLine compared={compared.value} shown={shown} />}
      {tools !== null && draft.value && <NoteForm key={`${draft.value.mends?.id} ${draft.value.retract}`} draft={draft} poolId={tools} back={back} />}
      {tools !== null && width > 0 && <Lanes past={past} poolId={tools} shown={shown} width={width} opened={opened} draft={draft} />}
      <div class={`strips-host ${draft.value ? 'choosing' : ''}`} ref={host} tabIndex={0} role="group" aria-label={words.strips.label} aria-describedby="strips-keys" data-testid="strips">
        {width > 0 && probes.map((p, i) => <ProbeStrip key={p.id} {...common} probe={p} heading={headingOf(p, probes)} limit={limitOf(limits, p.measurand)} overlay={overlay?.probeId === p.id ? overlay : undefined} axis={i === count - 1} />)}
        {width > 0 && tests.map((m, i) => <TestStrip key={m} {...common} measurand={m} limit={limitOf(limits, m)} happenings={overlay?.probeId === m ? overlay.happenings : undefined} axis={probes.length + i === count - 1} />)}
        {tools !== null && <Chosen draft={draft} shown={shown} width={width} />}
      </div>
      <p class="hint strips-keys" id="strips-keys"><span class="key-line" aria-hidden="true">{words.strips.legend}{overlay && ` ${overlay.legend ?? `${words.probePage.strips.doubted} \u00b7 ${words.probePage.strips.event}`}${overlay.flowSwitch ? ` \u00b7 ${words.probePage.strips.shaded}` : ''}.`}</span> {words.strips.touch} <span class="keys-only">{words.strips.keys} {tools !== null && words.stripTools.keys}</span></p>
    </div>
  );
}
