import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { PoolInfo } from '../contract';
import type { DoseAdviceRequest, DoseAdviceView, DoseHoldView, DosesView, DoseTargetView, GivenDoseView } from '../contract.dose';
import { decimalsOf, fixed, readTyped } from '../format/number';
import { onLive } from '../live/connection';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';
import { DoseAdvice } from './DoseAdvice';
import { DoseAsk, type Asked } from './DoseAsk';
import { GivenForm } from './GivenForm';
import { GivenList } from './GivenList';
import { plain } from './incident';
import { VolumeCard } from './VolumeCard';
import { WaterFrame } from './WaterFrame';

const pause = 250;

/** Asks as soon as the form says enough, and again when the server is back. An answer to an older question is let go. */
function useAdvice(pool: string, request: DoseAdviceRequest | null) {
  const [held, hold] = useState<{ key: string; advice: DoseAdviceView | null; failed: boolean }>({ key: '', advice: null, failed: false });
  const key = request ? JSON.stringify(request) : '';
  const newest = useRef(key);
  newest.current = key;
  useEffect(() => {
    if (!request) return;
    const ask = async () => {
      const answer = await post<DoseAdviceView>(`/pools/${encodeURIComponent(pool)}/dose-advice`, request);
      if (newest.current === key) hold({ key, advice: answer.ok ? answer.value : null, failed: !answer.ok });
    };
    const timer = setTimeout(() => void ask(), pause);
    const stop = onLive(() => void ask());
    return () => { clearTimeout(timer); stop(); };
  }, [pool, key]);
  return { advice: held.key === key ? held.advice : null, failed: held.key === key && held.failed };
}

function Dose({ pool }: { pool: PoolInfo }) {
  const { data, failed, reload } = usePolled<DosesView>(`/pools/${encodeURIComponent(pool.id)}/doses`, 30_000);
  const [asked, setAsked] = useState<Asked>({ product: '', target: '', value: '', clear: null, closed: false });
  const [correcting, setCorrecting] = useState<GivenDoseView | null>(null);
  const product = data?.products.find(p => p.id === asked.product);
  const target = product?.targets.find(t => t.measurand === asked.target) ?? product?.targets[0];
  const suggestion = suggested(target, data?.hold ?? null);
  const typed = readTyped(asked.value !== '' ? asked.value : suggestion);
  const request = product && target && typed.kind === 'number'
    ? { productId: product.id, target: target.measurand, value: typed.value, bathersOut: asked.clear, closed: asked.closed } : null;
  const { advice, failed: unanswered } = useAdvice(pool.id, request);
  if (!data) return <p class="empty">{failed ? words.dose.unreachable : words.dose.working}</p>;
  return (
    <>
      {data.hold && <HoldSaid hold={data.hold} />}
      <div class="dose-page">
        <DoseAsk products={data.products} asked={asked} target={target} suggestion={suggestion} held={data.hold !== null} set={setAsked} wrong={typed.kind === 'wrong'} />
        <DoseAdvice advice={advice} waiting={request !== null} failed={unanswered} />
      </div>
      <GivenForm key={(correcting?.dose.id ?? '') + pool.id} pool={pool.id} products={data.products} chosen={asked.product} advice={advice} correcting={correcting} done={() => { setCorrecting(null); reload(); }} />
      <GivenList given={data.given} correct={setCorrecting} />
      <VolumeCard poolId={pool.id} />
    </>
  );
}

/** An incident is open in this water: what its plan wants of the chlorine, and what stands in the way. */
function HoldSaid({ hold }: { hold: DoseHoldView }) {
  const w = words.dose.hold;
  return (
    <p class="notice" data-testid="dose-hold"><b>{w.open}</b> {hold.startAt !== null && hold.highest !== null ? w.wants(plain(hold.startAt), plain(hold.highest)) : hold.why?.text}
      {hold.mayBatheIn.length > 0 && <span class="block">{w.notClosed(hold.mayBatheIn.join(', '))}</span>} <a href={link('incident', hold.poolId)}>{w.toIt}</a></p>
  );
}

/** Where a figure is best aimed at: the middle of its limits, when the test lies on the side that the product moves it from. */
function suggested(target: DoseTargetView | undefined, hold: DoseHoldView | null): string {
  // While an incident is open chlorine goes where its plan starts to count, not back to where it always is.
  if (target && hold && target.measurand === 'free_chlorine' && target.direction > 0) return hold.startAt !== null && (target.now ?? 0) < hold.startAt ? plain(hold.startAt) : '';
  if (!target || target.low === null || target.high === null) return '';
  const middle = (target.low + target.high) / 2;
  return target.now !== null && (middle - target.now) * target.direction <= 0 ? '' : fixed(middle, decimalsOf(target.measurand));
}

export function DosePage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="dose">{pool => <><p class="water-lead">{words.dose.lead}</p><Dose key={pool.id} pool={pool} /></>}</WaterFrame>;
}
