import type { Errors } from '../check/build';
import type { PumpInfo } from '../contract';
import type { ProductPlan } from '../contract.plant';
import type { StockAct, StockMoveRequest, StockView } from '../contract.stock';
import { readTyped } from '../format/number';
import { words } from '../words';

const w = words.chemicals;

/** What stands in the form of a delivery, a refill or a count. A place is the pump of a tank, or the store. */
export interface Draft {
  productId: string; place: string; amount: string; containers: string; strength: string; batch: string; madeOn: string; price: string; when: string; checkedBy: string; note: string; wentIn: boolean;
}
export const store = 'store';

const number = (text: string): number | null | undefined => { const t = readTyped(text); return t.kind === 'number' ? t.value : t.kind === 'empty' ? null : undefined; };
const plain = (name: string) => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

/** The tank is for something else, and not for the same kind: the two must not meet. */
export function isWrong(act: StockAct, draft: Draft, products: ProductPlan[], pumps: PumpInfo[]): { tank: PumpInfo; product: ProductPlan } | null {
  if (act === 'counted') return null;
  const tank = pumps.find(p => p.id === draft.place), product = products.find(p => p.id === draft.productId), holds = products.find(p => p.id === tank?.productId);
  return tank && product && product.id !== tank.productId && product.kind !== holds?.kind ? { tank, product } : null;
}

/** What is missing or cannot be, by field. */
export function wrongOf(act: StockAct, d: Draft, by: string, at: number | null): Errors {
  const amount = number(d.amount), whole = number(d.containers);
  const errors: Errors = {};
  if (!d.productId) errors['productId'] = w.needProduct;
  if (!d.place) errors['pumpId'] = w.needWhere;
  if (amount === null || amount === undefined || amount < 0 || (amount === 0 && act !== 'counted')) errors['amount'] = w.needAmount;
  if (whole === undefined || (whole !== null && (!Number.isInteger(whole) || whole < 1))) errors['containers'] = w.needWhole;
  for (const [field, text] of [['strength', d.strength], ['price', d.price]] as const) if (number(text) === undefined) errors[field] = w.needNumber;
  if (at === null) errors['happenedAt'] = w.needTime;
  if (!by.trim()) errors['by'] = words.needName;
  if (act !== 'counted' && !d.checkedBy.trim()) errors['checkedBy'] = w.needChecked;
  else if (act !== 'counted' && plain(d.checkedBy) === plain(by)) errors['checkedBy'] = w.needOther;
  return errors;
}

/** The draft as the server takes it. */
export function requestOf(d: Draft, by: string, at: number, unit: StockView['unit']): StockMoveRequest {
  const pumpId = d.place === store ? null : d.place, amount = number(d.amount) ?? 0, litres = pumpId !== null || unit === 'litre';
  return {
    productId: d.productId, pumpId, litres: litres ? amount : null, kilograms: litres ? null : amount, happenedAt: new Date(at).toISOString(), by: by.trim(), checkedBy: d.checkedBy.trim() || null, containers: number(d.containers) ?? null,
    batch: d.batch.trim() || null, strength: number(d.strength) ?? null, madeOn: d.madeOn || null, price: number(d.price) ?? null, wentIn: d.wentIn, note: d.note.trim() || null, corrects: null, correctionReason: null,
  };
}
