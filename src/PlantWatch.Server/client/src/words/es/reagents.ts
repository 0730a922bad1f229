// Reagents: lots, days, and what a test with an old one is worth.
import type { ReagentUse, ReagentWord } from '../../contract.reagent';
import type { reagents as shape } from '../en/reagents';

export const reagents: typeof shape = {
  title: 'Reactivos', none: 'El archivo de la instalación no nombra reactivos (docs/plant-file.md, reagents).',
  hint: 'Un análisis hecho con un reactivo caducado se guarda y se pone en duda: puede activar una alarma, pero no hace desaparecer ninguna, no abre ningún vaso y no dice nada de una sonda.',
  words: { not_noted: 'sin lote anotado', in_date: 'vigente', order: 'pedir otro', out_of_date: 'caducado' } as Record<ReagentWord, string>,
  uses: { any: '', photometer: 'fotómetro', comparator: 'comparador', tablet_count: 'recuento de tabletas', calibration: 'para calibrar' } as Record<ReagentUse, string>,
  lotSaid: (lot: string) => `Lote ${lot}`, opened: 'abierto', by: (name: string) => `anotado por ${name}`, until: (time: string) => `válido hasta ${time}`, life: (days: string) => `${days} días una vez abierto`,
  open: 'Anotar un lote', lot: 'Número de lote', lastDay: 'Último día impreso', lastDayHint: 'Si hay un mes impreso, su último día.', openedAt: 'Abierto', save: 'Anotarlo', cancel: 'Dejarlo',
  needLot: 'El número tal como está impreso.', needDay: 'El día tal como está impreso.', needOpened: 'Cuándo se abrió.', noted: (lot: string, name: string) => `Anotado el lote ${lot} de ${name}.`,
  due: { order: (name: string, time: string) => `${name}: válido hasta ${time}, pedir otro`, out_of_date: (name: string) => `${name}: caducado` },
  inForm: (name: string) => `${name}: caducado. El resultado se guarda en duda, y no hace desaparecer nada hasta que se repita con uno nuevo.`,
};
