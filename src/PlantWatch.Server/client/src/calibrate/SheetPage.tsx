import type { CalibrationView, ProbeInfo } from '../contract';
import type { PointView, SheetView } from '../contract.bench';
import { fixed, signed } from '../format/number';
import { fullClock } from '../format/zone';
import { allPools, allProbes, nameOf, site, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { DecideForm } from '../probe/DecideForm';
import { correction } from '../probe/OfferCard';
import { link } from '../router';
import { words } from '../words';
import { ReviewForm } from './ReviewForm';

const w = words.calibrate, t = w.sheet;
const nominal: Record<string, string> = { phthalate: '4.01', phosphate: '6.86', borax: '9.18', carbonate: '10.02', technical4: '4.00', technical7: '7.00', technical10: '10.01' };
const nameOfSolution = (p: PointView) => (p.label !== null ? w.other.split(':')[0]! : p.buffer !== 'unknown' ? t.buffer[p.buffer.startsWith('tech') ? 'technical' : 'reference'](nominal[p.buffer] ?? '') : w.quinhydrone[p.quinhydrone]);

function Points({ title, points, probe, slope, offset, remark }: { title: string; points: PointView[]; probe: ProbeInfo; slope: number; offset: number; remark?: string }) {
  const d = probe.measurand === 'ph' ? 2 : 0;
  return (
    <tbody>
      <tr><th colSpan={6} scope="rowgroup" class="sheet-group">{title}{remark && <span class="hint"> {remark}</span>}</th></tr>
      {points.length === 0 && <tr><td colSpan={6} class="hint">{t.notMeasured}</td></tr>}
      {points.map((p, i) => (
        <tr key={i}><th scope="row">{nameOfSolution(p)}<span class="hint block">{[p.lot, p.expires].filter(Boolean).join(', ')}</span></th>
          <td class="n">{fixed(p.celsius, 1)}</td><td class="n">{fixed(p.known, d)}</td><td class="n">{fixed(p.reading, p.inMillivolts ? 1 : d)}{p.inMillivolts && ' mV'}</td>
          <td class="n">{p.known === null || p.inMillivolts ? '\u2013' : signed(slope * p.reading + offset - p.known, d)}</td><td>{p.source === 'settled' ? t.settled : t.typed}</td></tr>))}
    </tbody>
  );
}

function Body({ c, sheet, probe }: { c: CalibrationView; sheet: SheetView; probe: ProbeInfo }) {
  const ph = probe.measurand === 'ph', d = ph ? 2 : 0, pool = probe.poolId ? allPools.value.get(probe.poolId)?.name : words.poolPage.common;
  const corrects = (c.kind === 'offset' || c.kind === 'two_point') && c.status === 'approved', now = corrects ? [c.slope, c.offset] as const : [sheet.heldSlope, sheet.heldOffset] as const;
  const when = (iso: string | null) => (iso ? fullClock(iso, zone.value) : '\u2013');
  return (
    <article class="sheet card cal-sheet" data-testid="sheet">
      <header class="bench-head"><div><h1>{t.title}</h1><p>{site.value?.name}, {pool}: <b>{nameOf(probe.id)}</b>{probe.referenceElectrode && `, ${words.strips.against(probe.referenceElectrode)}`}</p></div>
        <button type="button" class="no-print" onClick={() => print()}>{t.print}</button></header>
      <dl class="side-by-side sheet-facts">
        <div><dt>{t.by}</dt><dd>{c.proposedBy}</dd></div><div><dt>{t.from}</dt><dd>{when(sheet.startedAt)}</dd></div><div><dt>{t.to}</dt><dd>{when(c.holdsFrom)}</dd></div>
        <div><dt>{t.basis}</dt><dd>{t.basisOf[c.basis ?? 'unknown']}</dd></div><div><dt>{t.work}</dt><dd>{c.work?.length ? c.work.map(k => w.work.kinds[k]).join(', ') : t.none}</dd></div>
      </dl>
      <div class="scrolls"><table class="lines sheet-lines">
        <thead><tr><th scope="col">{t.solution}<span class="hint block">{t.lot}</span></th><th scope="col">{t.temperature}</th><th scope="col">{t.known}</th><th scope="col">{t.read}</th><th scope="col">{t.error}</th><th scope="col" /></tr></thead>
        <Points title={t.asFound} points={sheet.asFound} probe={probe} slope={sheet.heldSlope} offset={sheet.heldOffset} />
        <Points title={t.measured} points={sheet.points} probe={probe} slope={sheet.heldSlope} offset={sheet.heldOffset} />
        <Points title={t.asLeft} points={sheet.asLeft.length ? sheet.asLeft : sheet.points} probe={probe} slope={now[0]} offset={now[1]} {...(sheet.asLeft.length || !corrects ? {} : { remark: t.afterCorrection })} />
      </table></div>
      <p class={`bench-verdict v-${sheet.verdict}`}><b>{t.verdict}: {w.result.verdict[sheet.verdict]}</b></p>
      <dl class="side-by-side sheet-facts">
        {sheet.slopePercent !== null && <div><dt>{w.result.slope}</dt><dd>{fixed(sheet.slopePercent, 1)} % <span class="hint">{w.slopeLimits(fixed(sheet.limits.slopeLow, 0), fixed(sheet.limits.slopeHigh, 0))}</span></dd></div>}
        {sheet.offsetMillivolts !== null && <div><dt>{w.result.offset}</dt><dd>{signed(sheet.offsetMillivolts, 0)} mV <span class="hint">{ph ? w.offsetLimits(fixed(sheet.limits.offsetMillivolts, 0)) : w.orpLimits(fixed(sheet.limits.orpMillivolts, 0))}</span></dd></div>}
        <div><dt>{w.result.foundBy}</dt><dd>{sheet.foundError === null ? '\u2013' : signed(sheet.foundError, d)}</dd></div><div><dt>{w.result.leftBy}</dt><dd>{sheet.leftError === null ? '\u2013' : signed(sheet.leftError, d)}</dd></div>
        <div><dt>{t.correction}</dt><dd class="wraps">{c.kind === 'verification' ? words.calibrationKind.verification : correction(c, probe)}</dd></div>
      </dl>
      <ul class="plain">{sheet.why.map(s => <li key={s.code}>{s.text}</li>)}</ul>
      {c.note && <p><b>{t.remark}:</b> {c.note}</p>}
      <p data-testid="reviewer"><b>{c.objected ? t.objected : t.reviewer}:</b> {c.reviewedBy ? `${c.reviewedBy}, ${when(c.reviewedAt ?? null)}${c.review ?? c.decision ? `: ${c.review ?? c.decision}` : ''}` : t.notReviewed} {'\u00b7'} {words.calibrationStatus[c.status]}</p>
      <p class="hint">{t.common} {t.id} {c.id}</p>
    </article>
  );
}

/** The record of a calibration on one page, to be looked over, signed for by a second person, and printed. */
export function SheetPage({ id }: { id: string }) {
  const { data, failed, problem, reload } = usePolled<CalibrationView>('/calibrations/' + encodeURIComponent(id), 60_000);
  const probe = data ? allProbes.value.get(data.probeId) : undefined;
  if (!data || !probe) return <p class="empty">{failed ? problem?.title ?? words.error.unreachable : words.loading} <a href="#/">{words.back}</a></p>;
  return (
    <div class="bench-page">
      <p class="no-print"><a href={link('probe', probe.id)}>{w.done.probe}</a></p>
      {data.sheet ? <Body c={data} sheet={data.sheet} probe={probe} /> : <p class="empty">{words.pageMissing}</p>}
      {data.status === 'proposed' && <DecideForm probe={probe} proposal={data} onDone={reload} />}
      {data.waitsForReview && <ReviewForm calibration={data} onDone={reload} />}
    </div>
  );
}
