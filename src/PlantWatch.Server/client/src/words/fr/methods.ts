import type { CellLook } from '../../contract';
import type { methods as shape } from '../en/methods';

// Hand methods: tablet counts, what is seen in the cell, and what combined chlorine would take.
export const methods: typeof shape = {
  breakpoint: 'Ce qu’il faudrait pour le détruire',
  tablets: 'Pastilles', sample: 'dans un échantillon de', millilitres: 'mL',
  counted: (step: string) => `une pastille vaut ${step}\u00a0mg/L`,
  tabletsWrong: 'Un nombre entier de 1 à 100, dans 10 à 500\u00a0mL.',
  odd: 'Couleur étrange', look: 'Ce qui a été vu dans la cuve',
  looks: { none: 'rien d’étrange', pink_flash: 'un éclair rose disparu', purple: 'violet', cloudy: 'trouble' } as Record<CellLook, string>,
};
