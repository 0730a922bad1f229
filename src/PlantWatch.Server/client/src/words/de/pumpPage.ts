import type { pumpPage as shape } from '../en/pumpPage';

// Eine Dosierpumpe, beurteilt nach dem, was das Wasser tut.
export const pumpPage: typeof shape = {
  verdict: 'Nach dem, was das Wasser tut', notJudged: 'Das Wasser beurteilt diese Pumpe nicht:', seeFile: 'Förderleistung, Hübe und Gehalte stehen in der Anlagendatei.',
  waiting: 'Von ihrem Wasser ist noch nichts gehört.',
  learning: (days: string, wanted: string) => `Lernt, was dieses Becken üblicherweise braucht: ${days} von ${wanted} Tagen. Bis dahin wird nur gesagt, was einzelne Proben zeigen.`,
  well: 'Sie tut, was ihre Hübe sagen, soweit das Wasser es zeigt.', suspicion: (percent: string) => `Die wahrscheinlichste Störung ist zu ${percent} wahrscheinlich.`, hardly: 'weniger als 1\u00a0%',
  since: 'anscheinend seit', missing: (litres: string) => `bisher fehlen ${litres}`, unasked: (litres: string) => `bisher kamen ${litres} ungefragt`, certain: (percent: string) => `Sicherheit ${percent}`,
  moved: (expected: string, observed: string) => `der pH-Wert hätte sich um ${expected} bewegen sollen und bewegte sich um ${observed}`, toAlarm: 'Zu ihrem Alarm', action: 'Was zu tun ist',
  amounts: 'Mengen', today: 'heute gefördert', limit: (litres: string) => `plausibel am Tag ${litres}`, over: (span: string) => `gefördert in ${span}`, fell: (span: string) => `Behälter fiel in ${span}`, unknown: 'nicht bekannt',
  beside: 'Gefördert ist, was ihre Hübe oder ihre Laufzeit liefern sollten; um so viel der Behälter fiel, so viel verließ ihn. Ob es ankam, sagt das Wasser.',
  jobs: 'Aufträge', newJob: 'Auftrag schreiben', course: 'Verlauf', spans: { 24: '24 Stunden', 72: '3 Tage', 168: '7 Tage' } as Record<number, string>, range: 'Gezeigte Spanne',
  driven: 'Gefördert', usual: 'üblich', seen: 'gesehen', expected: 'erwartet', tank: 'Behälter', unit: 'L/h', noCourse: 'Von dieser Spanne ist nichts bekannt.',
  legend: 'Durchgezogen: was war. Gestrichelt: was das Becken zu dieser Stunde üblicherweise an Chlor braucht, oder der pH-Wert, wie die Hübe ihn hätten machen sollen; alle acht Stunden beginnt das neu beim Gesehenen. Keil: ein Alarm oder ein Auftrag.',
  kept: 'Der Server antwortet nicht: so war es zuletzt.', marks: 'Alarme und Aufträge in dieser Spanne', kinds: { alarm: 'Alarm', cleared: 'Gegangen', job: 'Auftrag' }, open: 'Seite dieser Pumpe öffnen',
};
