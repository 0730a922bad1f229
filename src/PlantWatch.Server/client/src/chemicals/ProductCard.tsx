import type { StockView, TankView } from '../contract.stock';
import { fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { PriorityGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { amountOf, lasting, money } from './lasting';
import { UsePlot } from './UsePlot';

const w = words.chemicals;

function Tank({ tank }: { tank: TankView }) {
  const percent = tank.litres !== null && tank.tankLitres ? 100 * tank.litres / tank.tankLitres : null;
  const facts = [tank.circuit, tank.strength !== null ? w.strength(fixed(tank.strength, 1)) : '', tank.batch ? w.batch(tank.batch) : '', lasting(tank.outlook) ?? ''].filter(Boolean).join('; ');
  return (
    <li class="tank" data-testid={`tank-${tank.pumpId}`}>
      <span class="pump-head"><span>{w.tankOf(tank.name)}</span><b>{tank.litres === null ? w.noLevel : amountOf(tank.litres, 'litre')}</b></span>
      {percent !== null && <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><rect class="tank-all" width="100" height="8" /><rect class="tank-full" width={Math.max(0, Math.min(100, percent))} height="8" /></svg>}
      <span class="hint">{facts}</span>
      {tank.wrong && <p class="notice bad mark" data-testid={`wrong-${tank.pumpId}`}><PriorityGlyph priority="critical" /><span>{tank.wrong.text}</span></p>}
      {tank.filledByNobody && <p class="notice mark"><WarnGlyph /><span>{w.nobody} {dayClock(tank.filledByNobody, zone.value)}</span></p>}
    </li>
  );
}

function Cost({ product }: { product: StockView }) {
  const use = product.use, unit = product.unit;
  if (use.days === 0) return null;
  return (
    <>
      <dl class="side-by-side">
        <div><dt>{w.cost(use.days)}</dt><dd>{use.cost === null ? w.noPrice : money(use.cost)}</dd><dd class="hint">{amountOf(use.amount, unit)}</dd></div>
        <div><dt>{w.perBather}</dt><dd>{use.perBather === null ? w.noBathers : money(use.costPerBather)}</dd>{use.perBather !== null && <dd class="hint">{amountOf(use.perBather, unit)}</dd>}</div>
        <div><dt>{w.perCubicMetre}</dt><dd>{money(use.costPerCubicMetreDay)}</dd><dd class="hint">{amountOf(use.perCubicMetreDay, unit)}</dd></div>
      </dl>
      {use.cost !== null && use.unpriced > 0 && <p class="hint">{w.unpriced(amountOf(use.unpriced, unit))}</p>}
    </>
  );
}

/** A product: for how long it lasts, where it stands, what it uses and costs. */
export function ProductCard({ product: p }: { product: StockView }) {
  const said = lasting(p.outlook), wrong = p.tanks.some(t => t.wrong);
  return (
    <section class="sheet card chemical" data-testid={`chemical-${p.id}`} data-runs-out={p.runsOut}>
      <div class="pump-head"><h2>{p.name}</h2>
        {wrong ? <span class="mark"><PriorityGlyph priority="critical" /><b>{w.wrong}</b></span> : p.runsOut && <span class="mark"><WarnGlyph /><b>{w.order}</b></span>}</div>
      <p class="lasts"><b data-testid={`lasts-${p.id}`}>{said ?? p.why?.text ?? ''}</b>
        {said && p.outlook && <span class="hint">{p.outlook.middle !== null && `${w.usual(fixed(p.outlook.middle, 0))}, `}{w.perDay(amountOf(p.outlook.perDay, p.unit))}. {w.lastsHint(p.outlook.days, p.outlook.byWeekday)}{p.deliveryDays !== null && ` ${w.orderHint(fixed(p.deliveryDays, 0))}`}</span>}</p>
      <ul class="chemical-places">
        <li><span class="pump-head"><span>{w.store}{p.storePlace && `, ${p.storePlace}`}</span><b data-testid={`store-${p.id}`}>{p.store === null ? w.storeNever : amountOf(p.store, p.unit)}</b></span>
          {p.store !== null && p.store < 0 && <p class="notice">{w.storeBelow}</p>}</li>
        {p.tanks.map(t => <Tank key={t.pumpId} tank={t} />)}
      </ul>
      <UsePlot product={p} />
      <Cost product={p} />
    </section>
  );
}
