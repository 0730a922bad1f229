import type { Iso, Said } from './contract';

// Chemicals in stock, as the server's Contracts.Stock.cs writes them.
export type StockUnit = 'unknown' | 'litre' | 'kilogram';
export type StockAct = 'unknown' | 'delivered' | 'refilled' | 'counted';
export interface StockOutlookView { earliest: number | null; middle: number | null; latest: number | null; perDay: number; byWeekday: boolean; days: number }
export interface TankView {
  pumpId: string; name: string; circuit: string; litres: number | null; usable: number | null; tankLitres: number | null; strength: number | null; batch: string | null; outlook: StockOutlookView | null;
  wrong: Said | null; filledByNobody: Iso | null;
}
export interface StockUseView {
  amount: number; cost: number | null; unpriced: number; days: number; bathers: number; perBather: number | null; costPerBather: number | null; perCubicMetreDay: number | null; costPerCubicMetreDay: number | null;
}
export interface StockDayView { day: string; amount: number; cost: number | null; whole: boolean }
export interface StockView {
  id: string; name: string; kind: string; unit: StockUnit; strengthPlan: number | null; storePlace: string | null; store: number | null; tanks: TankView[]; total: number | null; outlook: StockOutlookView | null;
  why: Said | null; deliveryDays: number | null; runsOut: boolean; unitPrice: number | null; use: StockUseView; days: StockDayView[];
}
export interface ProductMonthView { productId: string; name: string; unit: StockUnit; amount: number; cost: number | null }
export interface StockMonthView { month: string; cost: number | null; products: ProductMonthView[] }
export interface StockBookView { today: string; from: string; products: StockView[]; months: StockMonthView[]; tooClose: Said[] }
export interface StockMove {
  id: string; act: StockAct; productId: string; product: string; pumpId: string | null; amount: number; unit: StockUnit; containers: number | null; batch: string | null; strength: number | null; madeOn: string | null;
  price: number | null; book: number | null; happenedAt: Iso; by: string; checkedBy: string; wentIn: boolean; note: string | null; corrects: string | null; correctionReason: string | null;
}
export interface StockMoveView { move: StockMove; place: string | null; arrivedAt: Iso; corrected: boolean; advice: Said[]; wrong: Said | null }
export interface StockMoveRequest {
  productId: string; pumpId: string | null; litres: number | null; kilograms: number | null; happenedAt: Iso; by: string; checkedBy: string | null; containers: number | null; batch: string | null; strength: number | null;
  madeOn: string | null; price: number | null; wentIn: boolean; note: string | null; corrects: string | null; correctionReason: string | null;
}
export interface BathersRequest { poolId: string; day: string; number: number; by: string }
export interface BathersView { id: string; poolId: string; pool: string; day: string; number: number; by: string; saidAt: Iso }
