// Hand methods: tablet counts, what is seen in the cell, and what combined chlorine would take.
import type { CellLook } from '../../contract';
import type { methods as shape } from '../en/methods';

export const methods: typeof shape = {
  breakpoint: 'Lo que haría falta para romperlo',
  tablets: 'Tabletas', sample: 'en una muestra de', millilitres: 'mL',
  counted: (step: string) => `una tableta son ${step}\u00a0mg/L`,
  tabletsWrong: 'Un número entero de 1 a 100, en 10 a 500\u00a0mL.',
  odd: 'Color extraño', look: 'Lo que se vio en la cubeta',
  looks: { none: 'nada extraño', pink_flash: 'un destello rosa que se fue', purple: 'morado', cloudy: 'turbio' } as Record<CellLook, string>,
};
