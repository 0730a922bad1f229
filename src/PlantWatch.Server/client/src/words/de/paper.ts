import type { paper as shape } from '../en/paper';

/** Blätter für Papier, und die Ansicht für die Aufsicht. */
export const paper: typeof shape = {
  title: 'Papier', lead: 'Blätter zum Drucken, Ablegen oder Übergeben. Jedes sagt, wer es aus welchem Betriebsbuch gedruckt hat, und zeigt Korrekturen als Korrekturen.',
  kind: 'Blatt', kinds: { 'day-log': 'Tagesblatt', month: 'Monatsblatt', calibration: 'Kalibrierblatt der Sonden', 'alarms-and-jobs': 'Alarme und Instandhaltung', inspection: 'Blatt für die Aufsicht' },
  says: {
    'day-log': 'Messungen in der Reihenfolge der Zeit mit versäumten Rundgängen, Sonden daneben, Grenzwerte, Dosen, Abweichungen, Alarme, Arbeiten, Personen, Unterschriften.',
    month: 'Eine Zeile je Tag mit kleinstem, mittlerem und größtem Wert, Abweichungen, Labor, und wie weit die Sonden da waren.',
    calibration: 'Was an jeder Sonde getan wurde, in welchen Lösungen, was in ihren Aufzeichnungen korrigiert wurde und was jeder Tag davon wert ist.',
    'alarms-and-jobs': 'Alarme nach Regel und jeder einzelne, Abweichungen, Aufträge und geplante Arbeit.',
    inspection: 'Zuerst, was gemessen und gelesen wurde, Abweichungen mit ihrem Ende, Korrekturen, Personen; was errechnet ist, kommt zuletzt.',
  },
  pools: 'Becken', day: 'Tag', to: 'Bis einschließlich', month: 'Monat', name: 'Gedruckt von', needName: 'Sagen Sie, wer druckt', needPool: 'Wählen Sie ein Becken', needDay: 'Wählen Sie einen Tag', order: 'Der letzte Tag liegt vor dem ersten',
  clock: (zone: string) => `Tage sind die von ${zone}.`, open: 'Öffnen zum Lesen oder Drucken', file: (ending: string) => ending.toUpperCase(),
  inspect: 'Für die Aufsicht', inspectLead: 'In zwei Schritten: welche Becken und Tage, dann was das Betriebsbuch dazu sagt. Was gemessen und abgelesen wurde, kommt zuerst, was errechnet ist, zuletzt.', toInspect: 'Für die Aufsicht, in zwei Schritten', stepOne: 'Welche Becken und Tage', fromDay: 'Von', looks: 'Wer sieht ein', show: 'Betriebsbuch zeigen', back: 'Andere Becken oder Tage',
};
