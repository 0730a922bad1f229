import type { Measurand } from '../contract';
import { decimal } from './language';

const minus = '\u2212';

/** Days of the month that drifts are said by: a twelfth of 365.2425. */
export const daysAMonth = 30.44;

/** Decimals that people write a measurand with. */
export function decimalsOf(measurand: Measurand): number {
  if (measurand === 'ph' || measurand.endsWith('_chlorine')) return 2;
  return measurand === 'temperature' || measurand === 'bromine' ? 1 : 0;
}

/** A number as written for people: fixed decimals, the language's decimal sign, a true minus sign, no minus before a zero. */
export function fixed(value: number | null | undefined, decimals: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return '\u2013';
  const text = Math.abs(value).toFixed(decimals);
  const shown = text.replace('.', decimal);
  return value < 0 && Number(text) !== 0 ? minus + shown : shown;
}

/** Decimals for a value and for the limit that it lies beyond: their own, and more, for both, only while the two would look equal. */
export function apart(value: number, limit: number, ofValue: number, ofLimit = ofValue): [ofValue: number, ofLimit: number] {
  const look = (a: number, b: number) => Number(value.toFixed(a)) === Number(limit.toFixed(b));
  if (value === limit || !look(ofValue, ofLimit)) return [ofValue, ofLimit];
  let both = Math.max(ofValue, ofLimit) + 1;
  while (both < 6 && look(both, both)) both++;
  return [both, both];
}

/** A number with as many decimals as it has. */
export const plain = (value: number): string => String(value).replace('.', decimal).replace('-', minus);

/** A number of unknown size: whole ones whole, from ten on with at most one decimal, smaller ones with so many. */
export function coarse(value: number | null, decimals: number): string {
  if (value === null || Number.isInteger(value)) return fixed(value, 0);
  return fixed(value, value < 10 ? decimals : Number.isInteger(Math.round(value * 10) / 10) ? 0 : 1);
}

/** Decimals for an amount of hypochlorous acid: with cyanurate in the water there is so little that hundredths would all look alike. */
export const decimalsOfAcid = (value: number | null | undefined): number => value != null && Math.abs(value) < 0.1 ? 3 : 2;

/** The same for its share in per cent. */
export const decimalsOfShare = (percent: number | null | undefined): number => percent != null && Math.abs(percent) < 10 ? 1 : 0;

/** The same with its sign always shown. */
export function signed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return text.startsWith(minus) || !/[1-9]/.test(text) ? text : '+' + text;
}

/** Whole numbers with thin spaces between thousands. */
export function grouped(value: number): string {
  return String(Math.trunc(value)).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

/** A unit as people write it; pH is its own unit and is not repeated after the number. */
export function unitText(unit: string): string {
  if (unit === 'degC') return '\u00b0C';
  if (unit === 'uS/cm') return '\u00b5S/cm';
  if (unit === 'm3/h') return 'm\u00b3/h';
  return unit === 'pH' ? '' : unit;
}

/** The unit of a measurand. */
export function unitOf(measurand: Measurand): string {
  switch (measurand) {
    case 'ph': case 'sample_flow': case 'none': return '';
    case 'orp': return 'mV';
    case 'temperature': return '\u00b0C';
    case 'conductivity': return '\u00b5S/cm';
    case 'circulation_flow': return 'm\u00b3/h';
    case 'filter_pressure': return 'kPa';
    case 'turbidity': return 'NTU';
    default: return 'mg/L';
  }
}

export type Typed = { kind: 'empty' } | { kind: 'number'; value: number } | { kind: 'wrong' };

/** Reads what a person typed: comma or point for the decimals, spaces ignored. Two separators are wrong, not guessed at. */
export function readTyped(text: string): Typed {
  const bare = text.replace(/[\s\u00a0\u202f]/g, '').replace(minus, '-');
  if (bare === '') return { kind: 'empty' };
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(bare)) return { kind: 'wrong' };
  const value = Number(bare.replace(',', '.'));
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'wrong' };
}
