// What an ORP probe may say.
import type { ReferenceElectrode } from '../../contract.orp';
import type { orp as shape } from '../en/orp';

export const orp: typeof shape = {
  title: 'Lo que este redox puede decir',
  byTheory: (celsius: string, assumed: boolean) => `Según la teoría a ${celsius}\u00a0\u00b0C${assumed ? ', supuesta por falta de medida' : ''}`,
  perPh: 'por una unidad más de pH', perDoubling: 'por el doble de ácido hipocloroso',
  against: 'La misma medida respecto a otros electrodos', fromMemory: 'de memoria',
  electrodes: {
    unknown: 'desconocido', standard_hydrogen: 'estándar de hidrógeno', silver_chloride3_m: 'Ag/AgCl 3\u00a0M', silver_chloride3_m5: 'Ag/AgCl 3,5\u00a0M',
    silver_chloride_saturated: 'Ag/AgCl saturado', calomel: 'calomelanos saturado',
  } as Record<ReferenceElectrode, string>,
};
