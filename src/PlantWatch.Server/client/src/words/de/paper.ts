import type { paper as shape } from '../en/paper';

/** Blätter für Papier, und die Ansicht für die Aufsicht. */
export const paper: typeof shape = {
  title: 'Blätter', lead: 'Blätter zum Drucken, Ablegen oder Übergeben. Jedes sagt, wer es aus welchem Betriebsbuch gedruckt hat, und zeigt Berichtigungen als Berichtigungen.',
  kind: 'Blatt', kinds: { 'day-log': 'Tagesblatt', month: 'Monatsblatt', calibration: 'Kalibrierblatt der Sonden', 'alarms-and-jobs': 'Alarme und Instandhaltung', inspection: 'Blatt für die Aufsicht' },
  says: {
    'day-log': 'Messungen in der Folge der Zeit mit versäumten Prüfungen, Sonden daneben, Grenzwerte, Zugaben, Abweichungen, Alarme, Arbeiten, Personen, Unterschriften.',
    month: 'Eine Zeile je Tag mit kleinstem, mittlerem und größtem Wert, Abweichungen, Labor, und wie weit die Sonden da waren.',
    calibration: 'Was an jeder Sonde getan wurde, in welchen Lösungen, was in ihrer Aufzeichnung korrigiert wurde und was jeder Tag davon wert ist.',
    'alarms-and-jobs': 'Alarme nach Regel und jeder einzelne, Abweichungen, Aufträge und geplante Arbeiten.',
    inspection: 'Zuerst, was gemessen und abgelesen wurde, Abweichungen mit ihrem Abschluss, Berichtigungen, Personen; Berechnetes kommt zuletzt.',
  },
  pools: 'Becken', day: 'Tag', to: 'Bis einschließlich', month: 'Monat', name: 'Gedruckt von', needName: 'Angeben, wer druckt', needPool: 'Becken wählen', needDay: 'Tag wählen', needMonth: 'Monat als Jahr und Zahl angeben, etwa 2026-03', order: 'Der letzte Tag liegt vor dem ersten',
  clock: (zone: string) => `Tage sind die von ${zone}.`, open: 'Öffnen zum Lesen oder Drucken', file: (ending: string) => ending.toUpperCase(),
  inspect: 'Für die Aufsicht', inspectLead: 'In zwei Schritten: welche Becken und Tage, dann was das Betriebsbuch dazu sagt. Was gemessen und abgelesen wurde, kommt zuerst, Berechnetes zuletzt.', toInspect: 'Für die Aufsicht, in zwei Schritten', stepOne: 'Welche Becken und Tage', fromDay: 'Von', looks: 'Wer sieht ein', show: 'Betriebsbuch zeigen', back: 'Andere Becken oder Tage',
};
