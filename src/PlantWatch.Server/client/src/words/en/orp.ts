// What an ORP probe may say.
import type { ReferenceElectrode } from '../../contract.orp';

export const orp = {
  title: 'What this ORP may say',
  byTheory: (celsius: string, assumed: boolean) => `By theory at ${celsius}\u00a0\u00b0C${assumed ? ', taken for want of a reading' : ''}`,
  perPh: 'for a pH more', perDoubling: 'for twice the hypochlorous acid',
  against: 'The same reading against other electrodes', fromMemory: 'from memory',
  electrodes: {
    unknown: 'unknown', standard_hydrogen: 'standard hydrogen', silver_chloride3_m: 'Ag/AgCl 3 M', silver_chloride3_m5: 'Ag/AgCl 3.5 M',
    silver_chloride_saturated: 'Ag/AgCl saturated', calomel: 'saturated calomel',
  } as Record<ReferenceElectrode, string>,
};
