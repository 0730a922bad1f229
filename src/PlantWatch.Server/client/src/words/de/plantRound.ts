// Der Rundgang durch den Technikraum.
import type { RoundWord } from '../../contract.plantRound';
import type { plantRound as shape } from '../en/plantRound';

export const plantRound: typeof shape = {
  title: 'Technikrundgang', lead: 'Einmal am Tag durch den Technikraum. Was leer bleibt, ist ausgelassen.', none: 'Noch ist kein Kreislauf bekannt.', circuit: 'Technikraum',
  words: { due: 'heute fällig', walked: 'heute gemacht', overdue: 'überfällig' } satisfies Record<RoundWord, string>,
  dueAt: (clock: string) => `bis ${clock}`, wasDue: (clock: string) => `war fällig bis ${clock}`, walkedBy: (who: string, clock: string) => `gemacht von ${who}, ${clock}`, never: 'noch nie gemacht',
  last: (v: string, age: string) => `zuletzt ${v}, vor ${age}`, inOrder: 'in Ordnung', notInOrder: 'nicht in Ordnung', notLooked: 'nicht geschaut', remark: 'Was nicht stimmt', limits: (l: string) => `in Ordnung: ${l}`, notToday: 'diesmal nicht fällig',
  who: 'Wer ihn gemacht hat', note: 'Was sonst gesehen wurde', save: 'Rundgang speichern', saved: 'Technikrundgang gespeichert', waiting: 'Auf diesem Gerät aufbewahrt: er geht von selbst hinaus, sobald der Server erreichbar ist.', refused: 'Der Server hat diesen Rundgang nicht angenommen', dropSure: 'Diesen Rundgang endgültig verwerfen?', again: 'Weiterer Rundgang',
  allWell: 'Alles Abgelesene ist in Ordnung.', needSomething: 'Mindestens eines ablesen oder schreiben, was gesehen wurde.', number: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.', storageFull: 'Dieses Gerät kann ihn nicht aufbewahren, und der Server ist nicht erreichbar. Diese Seite nicht schließen.',
  impossible: (low: string, high: string, unit: string) => `Ein Messgerät zeigt ${low} bis ${high}\u00a0${unit}: noch einmal ablesen.`, meterFar: (more: string, holds: string) => `${more}\u00a0m\u00b3 mehr als zuvor, bei Becken mit ${holds}\u00a0m\u00b3: noch einmal ablesen`,
  draft: 'Die Eingaben bleiben auf diesem Gerät.', wash: 'Spülung vermerken', jobs: 'Auftrag schreiben', deliveries: 'Lieferungen, Nachfüllungen, Badegäste', meterBack: 'weniger als zuvor: noch einmal ablesen', asHeard: 'wie dieses Gerät zuletzt hörte',
};
