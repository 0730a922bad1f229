import type { alarmList as listShape, alarmPage as pageShape, makeSafe as safeShape } from '../en/alarms';

/** Wörter für den Vermerk, dass die Anlage gesichert wurde. */
export const makeSafe: typeof safeShape = {
  open: 'Maßnahmen vermerken', legend: 'Was getan wurde', save: 'Als gesichert vermerken', first: 'Zurücksetzen geht erst, wenn vermerkt ist, dass die Anlage gesichert wurde.',
  bathersOut: 'Die Badegäste sind aus dem Wasser', pumpsIsolated: 'Beide Dosierpumpen sind abgesperrt', circulationHeld: 'Die Umwälzung bleibt stehen, bis die Leitungen sicher sind',
  roomLeft: 'Alle haben den Raum verlassen, und niemand ging zurück, bevor die Luft nachweislich rein war', tankDealtWith: 'Wer dafür befähigt ist, hat sich um den Inhalt des Behälters gekümmert',
  ofTank: { legend: 'Was an diesem Behälter getan wurde', pumpsIsolated: 'Die Pumpe dieses Behälters ist abgesperrt' },
  all: 'Vermerkt wird erst, wenn alle drei Punkte erledigt sind.', done: (who: string) => `als gesichert vermerkt von ${who}`,
};

/** Wörter der Alarmliste: was etwas verlangt, was beiseitesteht und durch wen. */
export const alarmList: typeof listShape = {
  asks: 'Verlangt etwas', aside: 'Beiseitegestellt', nothingAsks: 'Nichts verlangt jetzt etwas.',
  follow: (n: number) => (n === 1 ? 'und 1, der daraus folgt' : `und ${n}, die daraus folgen`),
  latched: 'Selbsthaltend: steht an, bis er zurückgesetzt wird', suppressedBy: (what: string) => `planmäßig unterdrückt: ${what}`,
  outOfService: (who: string) => `außer Betrieb, durch ${who}`, outUntil: (at: string) => `bis ${at}`, oneShot: 'bis er einmal gegangen ist', again: (n: number) => (n === 1 ? 'einmal erneut gemeldet' : `${n}-mal erneut gemeldet`),
  several: 'Mehrere quittieren \u2026', severalTitle: 'Mehrere mit einem Kommentar quittieren', severalLead: 'Die beim Öffnen gezeigten. Was kritisch ist oder unter einem anderen eingeklappt, wird einzeln quittiert.',
  severalComment: 'Kommentar für alle', needComment: 'Angeben, was für alle gilt.', needOne: 'Mindestens einen wählen.', acknowledgeN: (n: number) => `${n} quittieren`,
  notTaken: (n: number) => (n === 1 ? '1 wurde nicht angenommen:' : `${n} wurden nicht angenommen:`), silence: 'Diesen stumm schalten', out: 'Wieder in Betrieb',
};

/** Wörter der Seite eines Alarms. */
export const alarmPage: typeof pageShape = {
  back: 'Alle Alarme', gone: 'Diesen Alarm gibt es nicht.', over: 'Dieser Alarm ist vorbei. Hier steht, was das Betriebsbuch von ihm weiß.', newer: 'Er steht wieder an: zum neueren',
  kept: 'Der Server ist nicht erreichbar. Hier steht, was zuletzt ankam.',
  rule: 'Die Regel dahinter', usual: 'Übliche Ursache', clears: 'Geht', allRules: 'Alle Regeln', course: 'Wie es verlief', raisedHere: 'gekommen',
  cause: 'Er folgt aus', consequences: 'Was aus ihm folgt', history: 'Was mit ihm geschah', noHistory: 'Das Betriebsbuch hat noch nichts von ihm.',
  earlier: 'Früher, in den 30 Tagen davor', noEarlier: 'In den 30 Tagen davor kam er nicht.', onBehalf: 'von selbst', since: 'seit', line: 'der überschrittene Grenzwert', none: 'nichts davon ist eine Kurve',
  legend: '\u25bc was mit dem Alarm geschah',
};
