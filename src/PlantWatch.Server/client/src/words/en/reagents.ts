// Reagents: lots, days, and what a test with an old one is worth.
import type { ReagentUse, ReagentWord } from '../../contract.reagent';

export const reagents = {
  title: 'Reagents', none: 'The plant file names no reagents (docs/plant-file.md, reagents).',
  hint: 'A test made with a reagent that is out of date is kept and doubted: it may raise an alarm and clears none, opens no pool and says nothing of a probe.',
  words: { not_noted: 'no lot noted', in_date: 'in date', order: 'order another', out_of_date: 'out of date' } as Record<ReagentWord, string>,
  uses: { any: '', photometer: 'photometer', comparator: 'comparator', tablet_count: 'tablet count', calibration: 'for calibration' } as Record<ReagentUse, string>,
  lotSaid: (lot: string) => `Lot ${lot}`, opened: 'opened', by: (name: string) => `noted by ${name}`, until: (time: string) => `good until ${time}`, life: (days: string) => `${days} days once opened`,
  open: 'Note a lot', lot: 'Lot number', lastDay: 'Last day printed on it', lastDayHint: 'Of a printed month its last day.', openedAt: 'Opened', save: 'Note it', cancel: 'Leave it',
  needLot: 'The number as printed.', needDay: 'The day as printed.', needOpened: 'When it was opened.', noted: (lot: string, name: string) => `Lot ${lot} of ${name} is noted.`,
  due: { order: (name: string, time: string) => `${name}: good until ${time}, order another`, out_of_date: (name: string) => `${name} is out of date` },
  inForm: (name: string) => `${name} is out of date: the result is kept, doubted, and clears nothing until it is repeated with a fresh one.`,
};
