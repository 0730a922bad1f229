// Was eine Redoxsonde sagen kann.
import type { ReferenceElectrode } from '../../contract.orp';
import type { orp as shape } from '../en/orp';

export const orp: typeof shape = {
  title: 'Was diese Redoxspannung sagen kann',
  byTheory: (celsius: string, assumed: boolean) => `Nach der Theorie bei ${celsius}\u00a0\u00b0C${assumed ? ', mangels Messwert angenommen' : ''}`,
  perPh: 'je pH-Einheit mehr', perDoubling: 'bei doppelter hypochloriger Säure',
  against: 'Derselbe Messwert gegen andere Elektroden', fromMemory: 'aus dem Gedächtnis',
  electrodes: {
    unknown: 'unbekannt', standard_hydrogen: 'Standardwasserstoff', silver_chloride3_m: 'Ag/AgCl 3\u00a0M', silver_chloride3_m5: 'Ag/AgCl 3,5\u00a0M',
    silver_chloride_saturated: 'Ag/AgCl gesättigt', calomel: 'gesättigtes Kalomel',
  } as Record<ReferenceElectrode, string>,
};
