import { useEffect, useRef, useState } from 'preact/hooks';
import type { ProbeInfo } from '../contract';
import type { ProbeHistory } from '../contract.probe';
import { fixed, signed, unitText } from '../format/number';
import { fullClock } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { tickLabels } from '../pool/ticks';
import { words } from '../words';
import { BiasWords } from './BiasWords';
import { biasRuns, biasScale, dayTicks, type At, type BiasScale } from './biasScale';

const day = 86_400_000;
const box = { height: 230, left: 54, right: 12, top: 14, bottom: 24 };
type Place = { x: (t: number) => number; y: (v: number) => number; width: number };

function placeOf(s: BiasScale, width: number): Place {
  const w = width - box.left - box.right, h = box.height - box.top - box.bottom;
  return { width, x: t => box.left + w * (t - s.from) / (s.to - s.from), y: v => box.top + h * (1 - (Math.max(-s.reach, Math.min(s.reach, v)) + s.reach) / (2 * s.reach)) };
}

const path = (p: Place, points: { t: number; value: number }[]) => points.map((q, i) => `${i ? 'L' : 'M'}${p.x(q.t).toFixed(1)} ${p.y(q.value).toFixed(1)}`).join('');
const band = (p: Place, points: At[]) => points.length < 2 ? '' : path(p, points.map(q => ({ t: q.t, value: q.value + q.u }))) + [...points].reverse().map(q => `L${p.x(q.t).toFixed(1)} ${p.y(q.value - q.u).toFixed(1)}`).join('') + 'Z';

/** The lines that the bias is held against, with their names. */
function Limits({ p, s, probe, maintenanceAt, outAt }: { p: Place; s: BiasScale; probe: ProbeInfo; maintenanceAt: number; outAt: number }) {
  const line = (v: number, kind: string) => <line key={v} class={kind} x1={box.left} x2={p.width - box.right} y1={p.y(v)} y2={p.y(v)} />;
  const text = (v: number) => <text key={v} class="bias-text" x={box.left - 6} y={p.y(v) + 4} text-anchor="end">{signed(v, probe.decimals)}</text>;
  const name = (v: number, of: string) => <text class="bias-text" x={p.width - box.right} y={p.y(v) - 4} text-anchor="end">{of}</text>;
  const far = s.reach >= outAt;
  return (
    <>
      <rect class="bias-within" x={box.left} width={p.width - box.left - box.right} y={p.y(maintenanceAt)} height={p.y(-maintenanceAt) - p.y(maintenanceAt)} />
      {line(0, 'bias-zero')}{[maintenanceAt, -maintenanceAt].map(v => line(v, 'bias-limit'))}{far && [outAt, -outAt].map(v => line(v, 'bias-limit out'))}
      {[0, maintenanceAt, -maintenanceAt, ...(far ? [outAt, -outAt] : [])].map(text)}
      {name(maintenanceAt, words.probePage.bias.maintenance)}{far && name(outAt, words.probePage.bias.out)}
    </>
  );
}

function Dot({ p, q, bar }: { p: Place; q: At; bar: boolean }) {
  const x = p.x(q.t), y = p.y(q.value), r = bar ? 4 : 2.5;
  return (
    <g class={q.doubted ? 'bias-doubted' : ''}>
      {(bar || q.doubted) && <line class="bias-bar" x1={x} x2={x} y1={p.y(q.value + q.u)} y2={p.y(q.value - q.u)} />}
      {q.doubted ? <path class="bias-dot" d={`M${x} ${y - 5.5}l5.5 5.5-5.5 5.5-5.5-5.5z`} /> : <circle class="bias-dot" cx={x} cy={y} r={r} />}
    </g>
  );
}

/** The bias after each check with its interval, the limits, what was done to the probe, and the forecast drawn on from now. */
export function BiasChart({ probe, history }: { probe: ProbeInfo; history: ProbeHistory }) {
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(600);
  const [days, setDays] = useState<number | null>(null);
  const limits = history.limits;
  const known = history.bias.length > 0 && limits !== null;
  useEffect(() => {
    if (!host.current) return;
    const watch = new ResizeObserver(([e]) => setWidth(Math.max(240, Math.floor(e!.contentRect.width))));
    watch.observe(host.current);
    return () => watch.disconnect();
  }, [known]);
  if (!known) return <p class="hint">{words.probe.noBias}</p>;
  const oldest = Date.parse(history.bias[0]!.at), now = serverNow();
  const offered = [30, 90].filter(d => now - oldest > d * day);
  const newest = Date.parse(history.bias.at(-1)!.at);
  const { runs, set, works } = biasRuns(history, days === null ? 0 : Math.min(newest, now - days * day));
  const ahead = (history.ahead?.points ?? []).map(q => ({ t: Date.parse(q.at), value: q.value, u: q.u, doubted: false }));
  // A short past is not pressed into a corner by a long future.
  const shown = ahead.filter(q => q.t <= now + Math.max(3 * day, (now - (set[0]?.t ?? now)) * 0.8));
  const s = biasScale(set, shown, limits.maintenanceAt, limits.outAt), p = placeOf(s, width);
  const last = set.at(-1)!, bars = set.length <= 25, label = tickLabels(zone.value);
  const ticks = dayTicks(s.from, s.to, Math.max(2, Math.floor((width - 70) / 84)));
  const d = probe.decimals;
  return (
    <>
      {offered.length > 0 && (
        <div class="segments" role="group" aria-label={words.probePage.bias.range}>
          {[...offered, null].map(n => <button key={n} type="button" class="slim" aria-pressed={days === n} onClick={() => setDays(n)}>{n === null ? words.probePage.bias.all : words.probePage.bias.days(n)}</button>)}
        </div>)}
      <div ref={host}><svg class="bias" viewBox={`0 0 ${width} ${box.height}`} role="img" data-testid="bias-chart"
        aria-label={words.probePage.bias.label(signed(last.value, d), fixed(last.u, d), `${fixed(limits.maintenanceAt, Math.max(d, 0))} ${unitText(probe.unit)}`)}>
        <Limits p={p} s={s} probe={probe} maintenanceAt={limits.maintenanceAt} outAt={limits.outAt} />
        {runs.map((run, i) => <path key={i} class="bias-interval" d={band(p, run.filter(q => !q.doubted))} />)}
        {shown.length > 1 && <><path class="bias-interval ahead" d={band(p, shown)} /><path class="bias-ahead" d={path(p, shown)} /></>}
        {runs.map((run, i) => <path key={i} class="bias-line" d={path(p, run.filter(q => !q.doubted))} />)}
        {works.filter(t => t <= s.to).map(t => <g key={t}><line class="bias-work" x1={p.x(t)} x2={p.x(t)} y1={box.top} y2={box.height - box.bottom} />
          <path class="bias-wedge" d={`M${p.x(t) - 5} ${box.top}h10l-5 8z`}><title>{fullClock(t, zone.value)}</title></path></g>)}
        {set.map((q, i) => <Dot key={i} p={p} q={q} bar={bars} />)}
        {shown.length > 1 && <><line class="bias-now" x1={p.x(now)} x2={p.x(now)} y1={box.top} y2={box.height - box.bottom} />
          <text class="bias-text" x={Math.min(p.x(now) + 4, width - 40)} y={box.height - box.bottom - 5}>{words.probePage.bias.now}</text></>}
        {label(ticks, ticks.length > 1 ? ticks[1]! - ticks[0]! : day).map((text, i) => <text key={i} class="bias-text" x={p.x(ticks[i]!)} y={box.height - 6} text-anchor="middle">{text}</text>)}
      </svg></div>
      <BiasWords probe={probe} history={history} />
      <p class="hint">{words.probePage.bias.legend}</p>
    </>
  );
}
