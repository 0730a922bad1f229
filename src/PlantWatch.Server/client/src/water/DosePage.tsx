import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { PoolInfo } from '../contract';
import type { DoseAdviceRequest, DoseAdviceView, DosesView, GivenDoseView } from '../contract.dose';
import { decimalsOf, fixed, readTyped } from '../format/number';
import { onLive } from '../live/connection';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { DoseAdvice } from './DoseAdvice';
import { DoseAsk, type Asked } from './DoseAsk';
import { GivenForm } from './GivenForm';
import { GivenList } from './GivenList';
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
  const typed = readTyped(asked.value !== '' ? asked.value : suggested(target));
  const request = product && target && typed.kind === 'number'
    ? { productId: product.id, target: target.measurand, value: typed.value, bathersOut: asked.clear, closed: asked.closed } : null;
  const { advice, failed: unanswered } = useAdvice(pool.id, request);
  if (!data) return <p class="empty">{failed ? words.dose.unreachable : words.dose.working}</p>;
  return (
    <>
      <div class="dose-page">
        <DoseAsk products={data.products} asked={asked} target={target} suggestion={suggested(target)} set={setAsked} wrong={typed.kind === 'wrong'} />
        <DoseAdvice advice={advice} waiting={request !== null} failed={unanswered} />
      </div>
      <GivenForm key={(correcting?.dose.id ?? '') + pool.id} pool={pool.id} products={data.products} chosen={asked.product} advice={advice} correcting={correcting} done={() => { setCorrecting(null); reload(); }} />
      <GivenList given={data.given} correct={setCorrecting} />
    </>
  );
}

/** Where a figure is best aimed at: the middle of its limits, when the test lies on the side that the product moves it from. */
function suggested(target: { measurand: DoseAdviceRequest['target']; direction: number; now: number | null; low: number | null; high: number | null } | undefined): string {
  if (!target || target.low === null || target.high === null) return '';
  const middle = (target.low + target.high) / 2;
  return target.now !== null && (middle - target.now) * target.direction <= 0 ? '' : fixed(middle, decimalsOf(target.measurand));
}

export function DosePage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="dose">{pool => <><p class="water-lead">{words.dose.lead}</p><Dose key={pool.id} pool={pool} /></>}</WaterFrame>;
}
