// Hand methods: tablet counts, what is seen in the cell, and what combined chlorine would take.
import type { CellLook } from '../../contract';

export const methods = {
  breakpoint: 'What it would take to break it down',
  tablets: 'Tablets', sample: 'in a sample of', millilitres: 'mL',
  counted: (step: string) => `one tablet is ${step} mg/L`,
  tabletsWrong: 'A whole number from 1 to 100, in 10 to 500 mL.',
  odd: 'Odd colour', look: 'What was seen in the cell',
  looks: { none: 'nothing odd', pink_flash: 'a flash of pink that went', purple: 'purple', cloudy: 'cloudy' } as Record<CellLook, string>,
};
