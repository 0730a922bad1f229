// Abweichungen: vom Messwert über die Maßnahme und die Nachmessung bis zum Abschluss.
import type { BreachGrade, Closing, OwedAct, RetestWord, StepKind } from '../../contract.exceptions';
import type { exceptions as shape } from '../en/exceptions';

const days = (n: number) => n === 1 ? '1 Tag' : `${n} Tagen`;

export const exceptions: typeof shape = {
  title: 'Abweichungen',
  lead: 'Jede Verletzung eines Grenzwerts oder Stopps ist eine Zeile: was gemessen wurde, was getan wurde, die Nachmessung und wer abschloss. Zugaben, Messungen, Spülungen und geschlossene Becken kommen von selbst hinein.',
  open: 'Offen', closed: 'Abgeschlossen', noneOpen: 'Nichts ist offen.', noneClosed: 'In dieser Zeit wurde nichts abgeschlossen.', counted: (n: number) => `${n} abgeschlossen`,
  pool: 'Becken', all: 'Alle Becken', month: 'Monat', anyMonth: 'Alle Monate', table: 'Als Tabelle (CSV)', older: 'Älter', newer: 'Neuer', pageOf: (page: number, pages: number) => `Seite ${page} von ${pages}`,
  grades: { operating: 'Betriebsgrenze', closure: 'Schließgrenze', stop: 'Stopp', laboratory: 'Laborgrenzwert' } as Record<BreachGrade, string>,
  marks: { reading: 'Messwert', action: 'Maß\u00adnahme', retest: 'Nach\u00admessung', closed: 'Abschluss' },
  notYet: 'noch nicht', nothing: 'keine', probe: 'Sonde', minutes: (n: number) => (n < 90 ? `nach ${n}\u00a0min` : n < 2880 ? `nach ${Math.floor(n / 60)}\u00a0h ${String(n % 60).padStart(2, '0')}\u00a0min` : `nach ${days(Math.floor(n / 1440))} ${Math.floor((n % 1440) / 60)}\u00a0h`),
  onDuty: 'Wer Dienst hat',
  owes: { act_and_retest: 'schuldet Maßnahme und Nachmessung', retest: 'schuldet eine Nachmessung', settle: 'schuldet eine Antwort (die Handmessung liegt innerhalb, ihr Alarm steht noch an)', resample: 'schuldet eine Nachprobe', incident: 'folgt dem Plan des Vorfalls: dessen Uhr läuft, die dieser Zeile nicht' } as Record<OwedAct, string>,
  by: (at: string) => `bis ${at}`, overdue: (span: string) => `überfällig seit ${span}`, left: (span: string) => `noch ${span}`,
  test: 'Messung eintragen', dose: 'Zugabe eintragen', resample: 'Befund eintragen', say: 'Maßnahme angeben',
  sayLead: 'Nur was keine Zugabe, Spülung, Schließung oder Messung zeigen kann: eine entlüftete Pumpe, Füllwasser zugesetzt, eine gereinigte Sonde.', text: 'Was getan wurde', when: 'Wann', save: 'Speichern', need: 'Angeben, was getan wurde.', needTime: 'Angeben, wann.',
  closing: {
    none: '', by_retest: 'durch eine Nachmessung innerhalb', corrected: 'der Messwert wurde berichtigt: es gab keine Verletzung', by_person: 'durch eine berechtigte Person', limit_gone: 'woran gemessen wurde, ist nicht mehr in Kraft', pool_gone: 'das Becken steht nicht mehr in der Anlagendatei',
    goes_on: 'nicht vorbei: was sie abschloss, wurde berichtigt; sie läuft in einer seither eröffneten Zeile weiter',
  } as Record<Closing, string>,
  withdrawn: 'durch Berichtigung zurückgenommen', readingWithdrawn: 'Der Messwert wurde durch Berichtigung zurückgenommen, und sein Alarm verlangt noch eine Messung.', course: (n: number) => `Der ganze Verlauf, ${n} ${n === 1 ? 'Schritt' : 'Schritte'}`,
  steps: {
    seen: 'gesehen', words: 'angegeben', dose: 'zugegeben', pool_closed: 'Becken geschlossen', new_water: 'neu gefüllt', filter_washed: 'Filter gespült', retest: 'nachgemessen', reading: 'erneut abgelesen', back_inside: 'Sonde wieder innerhalb', reading_corrected: 'Messwert berichtigt; vorher stand da:', reopened: 'wieder offen: was sie abschloss, wurde zurückgenommen', incident: 'Vorfall', job: 'Arbeit daran', calibrated: 'kalibriert', incident_over: 'nicht mehr absichtlich erhöht',
  } as Record<StepKind, string>,
  retests: { none: '', inside: 'innerhalb', at_limit: 'an der Grenze', outside: 'außerhalb', not_proven: 'beweist nichts' } as Record<RetestWord, string>,
  ofPool: 'Offene Abweichungen', toAll: 'Alle Abweichungen dieses Beckens',
};
