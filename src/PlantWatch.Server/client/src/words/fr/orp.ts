import type { ReferenceElectrode } from '../../contract.orp';
import type { orp as shape } from '../en/orp';

// What an ORP probe may say.
export const orp: typeof shape = {
  title: 'Ce que ce redox peut dire',
  byTheory: (celsius: string, assumed: boolean) => `Selon la théorie à ${celsius}\u00a0°C${assumed ? ', valeur admise faute de mesure' : ''}`,
  perPh: 'pour un pH de plus', perDoubling: 'pour deux fois plus d’acide hypochloreux',
  against: 'La même valeur par rapport à d’autres électrodes', fromMemory: 'de mémoire',
  electrodes: {
    unknown: 'inconnue', standard_hydrogen: 'hydrogène standard', silver_chloride3_m: 'Ag/AgCl 3\u00a0M', silver_chloride3_m5: 'Ag/AgCl 3,5\u00a0M',
    silver_chloride_saturated: 'Ag/AgCl saturé', calomel: 'calomel saturé',
  } as Record<ReferenceElectrode, string>,
};
