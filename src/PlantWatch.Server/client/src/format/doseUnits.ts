import type { UnitSystem } from '../contract';

/** A unit in which a person says how much went in, and its size in kg or in L. Exact by definition, as in the server's Units/ExactUnits.cs. */
export interface DoseUnit { name: string; of: 'kg' | 'L'; size: number }

const kg: DoseUnit = { name: 'kg', of: 'kg', size: 1 }, g: DoseUnit = { name: 'g', of: 'kg', size: 0.001 };
const litre: DoseUnit = { name: 'L', of: 'L', size: 1 }, ml: DoseUnit = { name: 'mL', of: 'L', size: 0.001 };
const lb: DoseUnit = { name: 'lb', of: 'kg', size: 0.45359237 }, oz: DoseUnit = { name: 'oz', of: 'kg', size: 0.45359237 / 16 };
const usGallon = 3.785411784, imperialGallon = 4.54609;
const us: DoseUnit[] = [{ name: 'US gal', of: 'L', size: usGallon }, { name: 'US fl oz', of: 'L', size: usGallon / 128 }];
const imperial: DoseUnit[] = [{ name: 'imp gal', of: 'L', size: imperialGallon }, { name: 'imp fl oz', of: 'L', size: imperialGallon / 160 }];

/** The units a product is measured out in at this site, the usual one first; SI is always among them. A solid has no litres. */
export function doseUnits(system: UnitSystem, liquid: boolean): DoseUnit[] {
  const own = system === 'metric' ? [] : [...(liquid ? system === 'us' ? us : imperial : []), lb, oz];
  return [...own, ...(liquid ? [litre, ml] : []), kg, g];
}
