import { computed, signal } from '@preact/signals';
import { recall, remember } from '../api/kept';
import type { Measurand, UnitSystem } from '../contract';
import { fixed, unitOf } from './number';

/** The units of the site. */
export const siteUnits = signal<UnitSystem>('metric');

const systems: readonly string[] = ['metric', 'us', 'imperial'] satisfies UnitSystem[];
const kept = recall('units');

/** The units that whoever uses this device asks for; null for those of the site. */
export const chosenUnits = signal<UnitSystem | null>(kept !== null && systems.includes(kept) ? kept as UnitSystem : null);

/** The units in use. What travels is in SI; here people are met in theirs. */
export const units = computed<UnitSystem>(() => chosenUnits.value ?? siteUnits.value);

export function chooseUnits(next: UnitSystem | null): void {
  chosenUnits.value = next;
  remember('units', next);
}

const isFahrenheit = (m: Measurand) => m === 'temperature' && units.value !== 'metric';

export const toFahrenheit = (celsius: number) => celsius * 9 / 5 + 32;
export const toCelsius = (fahrenheit: number) => (fahrenheit - 32) * 5 / 9;

/** The unit in which a person types a measurand. */
export const typedUnit = (m: Measurand): string => isFahrenheit(m) ? '\u00b0F' : unitOf(m);

/** What was typed, in SI. A thousandth of a degree is beyond every thermometer. */
export const asSi = (m: Measurand, typed: number): number => isFahrenheit(m) ? Math.round(toCelsius(typed) * 1000) / 1000 : typed;

/** An SI figure as a person would type it. */
export const asTyped = (m: Measurand, si: number): number => isFahrenheit(m) ? Math.round(toFahrenheit(si) * 100) / 100 : si;

/** The figure in the site's own unit, to stand beside the one in SI; nothing where both are one. */
export const beside = (m: Measurand, si: number | null | undefined): string =>
  isFahrenheit(m) && si != null ? `${fixed(toFahrenheit(si), 1)}\u00a0\u00b0F` : '';
