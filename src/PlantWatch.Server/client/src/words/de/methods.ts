// Handmethoden: Tablettenzählung, was in der Küvette zu sehen ist, und was gebundenes Chlor brauchte.
import type { CellLook } from '../../contract';
import type { methods as shape } from '../en/methods';

export const methods: typeof shape = {
  breakpoint: 'Was der Abbau kosten würde',
  tablets: 'Tabletten', sample: 'in einer Probe von', millilitres: 'mL',
  counted: (step: string) => `eine Tablette ist ${step}\u00a0mg/L`,
  tabletsWrong: 'Eine ganze Zahl von 1 bis 100, in 10 bis 500\u00a0mL.',
  odd: 'Farbe?', look: 'Was in der Küvette zu sehen war',
  looks: { none: 'nichts Auffälliges', pink_flash: 'kurz rosa, dann farblos', purple: 'violett', cloudy: 'trüb' } as Record<CellLook, string>,
};
