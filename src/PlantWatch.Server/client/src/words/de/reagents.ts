// Reagenzien: Chargen, Tage, und was eine Messung mit einem alten wert ist.
import type { ReagentUse, ReagentWord } from '../../contract.reagent';
import type { reagents as shape } from '../en/reagents';

export const reagents: typeof shape = {
  title: 'Reagenzien', none: 'Die Anlagendatei nennt keine Reagenzien (docs/plant-file.md, reagents).',
  hint: 'Eine Messung mit abgelaufenem Reagenz wird aufbewahrt und gilt als zweifelhaft: sie kann einen Alarm auslösen, lässt aber keinen gehen, öffnet kein Becken und sagt nichts über eine Sonde.',
  words: { not_noted: 'keine Charge vermerkt', in_date: 'haltbar', order: 'Ersatz bestellen', out_of_date: 'abgelaufen' } as Record<ReagentWord, string>,
  uses: { any: '', photometer: 'Photometer', comparator: 'Komparator', tablet_count: 'Tablettenzählung', calibration: 'zum Kalibrieren' } as Record<ReagentUse, string>,
  lotSaid: (lot: string) => `Charge ${lot}`, opened: 'geöffnet', by: (name: string) => `vermerkt von ${name}`, until: (time: string) => `haltbar bis ${time}`, life: (days: string) => days === '1' ? 'geöffnet 1 Tag haltbar' : `geöffnet ${days} Tage haltbar`,
  open: 'Charge vermerken', lot: 'Chargennummer', lastDay: 'Aufgedruckter letzter Tag', lastDayHint: 'Bei einem aufgedruckten Monat dessen letzter Tag.', openedAt: 'Geöffnet', save: 'Vermerken', cancel: 'Abbrechen',
  needLot: 'Die Nummer wie aufgedruckt.', needDay: 'Den Tag wie aufgedruckt.', needOpened: 'Wann sie geöffnet wurde.', noted: (lot: string, name: string) => `Charge ${lot} von ${name} ist vermerkt.`,
  due: { order: (name: string, time: string) => `${name}: haltbar bis ${time}, Ersatz bestellen`, out_of_date: (name: string) => `${name} ist abgelaufen` },
  inForm: (name: string) => `${name} ist abgelaufen: das Ergebnis wird aufbewahrt, gilt als zweifelhaft und klärt nichts, bis es mit frischem wiederholt ist.`,
};
