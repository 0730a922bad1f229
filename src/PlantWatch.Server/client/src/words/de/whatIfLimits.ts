// Was wäre, wenn die Grenzwerte andere wären: die Frage, der Lauf und die Antwort.
import type { RunState } from '../../contract.whatIfLimits';
import type { whatIfLimits as shape } from '../en/whatIfLimits';

const alarms = (n: number) => n === 1 ? '1 Alarm' : `${n} Alarme`;

export const whatIfLimits: typeof shape = {
  title: 'Was wäre, Grenzwerte',
  lead: 'Die gespeicherte Geschichte wird zweimal durchgespielt, einmal mit der geltenden Anlagendatei und einmal mit den eingetippten Grenzwerten. Nichts ändert sich dadurch, weder das Betriebsbuch noch die Anlagendatei noch ein anstehender Alarm.',
  loading: 'Es wird abgefragt, was gilt.', nothing: 'Kein Becken hat eine Größe, die sich begrenzen ließe.', ask: 'Die Frage', pool: 'Becken', quantity: 'Größe', low: 'Untergrenze', high: 'Obergrenze', days: 'Tage zurück ab jetzt',
  inForce: 'In Kraft', noLimit: 'kein Grenzwert', own: 'eigener der Anlage', row: (id: string) => `Zeile ${id} des Pakets`, stop: (low: string, high: string) => `Den Stopp, der immer gilt, ${low} bis ${high}, ändert kein Grenzwert.`,
  byHand: 'Hier überwacht es keine Sonde: nur Handmessungen werden damit verglichen.',
  from: (low: string) => `ab ${low}`, upTo: (high: string) => `bis ${high}`, between: (low: string, high: string) => `${low} bis ${high}`,
  leaveEmpty: 'Leer gelassen: dort kein eigener Grenzwert.', more: 'Totband und Verzögerungen', deadband: 'Totband', onDelay: 'Außerhalb seit, bis zum Alarm', offDelay: 'Wieder innerhalb seit, bis er geht', usual: (v: string) => `Leer gelassen: ${v}`,
  looser: 'Lockerer als das Paket', looserMeans: 'Nur wo Technikleitung oder Administration mit Begründung dafür einsteht. Eine Schließgrenze lockert niemand.', looserBy: 'Wer dafür einsteht', looserWhy: 'Warum', nobody: 'Niemand unter den Personen der Anlagendatei darf.',
  source: 'Dokument und Abschnitt', sourceHint: 'Woher der Grenzwert stammt; es kommt in die Zeile der Anlagendatei.',
  recordBegins: (at: string) => `Die Aufzeichnung beginnt ${at}.`, run: 'Durchspielen', again: 'Anderes fragen', notNumber: 'Eine Zahl, etwa 7,4', needOne: 'Untergrenze, Obergrenze oder beide', needDays: (most: string) => `Von 1 bis ${most} Tage`,
  state: { waiting: 'Wartet', running: 'Spielt durch', done: 'Fertig', cancelled: 'Abgebrochen', failed: 'Fehlgeschlagen' } as Record<RunState, string>,
  ahead: (n: number) => n === 1 ? 'Ein anderer kommt davor.' : `${n} andere kommen davor.`, cancel: 'Abbrechen', percent: (p: string) => `${p}\u00a0%`, gone: 'Dieser Lauf ist nicht mehr bekannt: der Server behält die letzten acht, bis er anhält.',
  answer: 'Die Antwort',
  sentence: (days: string, lost: number, gained: number) => {
    const over = days === '1' ? 'Über 1 Tag' : `Über ${days} Tage`;
    return lost === 0 && gained === 0 ? `${over}: dieselben Alarme.` : `${over}: ${lost === 0 ? 'kein Alarm weniger' : `${alarms(lost)} weniger`}, ${gained === 0 ? 'keiner mehr' : `${gained} mehr`}`;
  },
  critical: (n: number) => n === 0 ? 'keiner, der das Schließen verlangte, ging verloren' : n === 1 ? '1, der das Schließen verlangte, ging verloren' : `${n}, die das Schließen verlangten, gingen verloren`,
  load: (told: string, before: string, hours: string, hoursBefore: string) => told === before && hours === hoursBefore ? 'Personen würden ebenso oft gerufen, und die Alarme stünden ebenso lange an.'
    : `Personen würden ${told}-mal statt ${before}-mal gerufen; Alarme stünden insgesamt ${hours} statt ${hoursBefore} Stunden an.`,
  span: (from: string, to: string) => `${from} bis ${to}`, asStands: 'Wie es steht', changed: 'Geändert', figure: 'Kennzahl', alarms: 'Alarme', stoodHours: 'Stunden, die Alarme anstanden, zusammengezählt', calls: 'Rufe an Personen', perHour: 'Rufe je Stunde',
  byRule: 'Nach Regel', rule: 'Regel', lostShort: 'Weg', gainedShort: 'Neu', lost: 'Weggefallen', gained: 'Hinzugekommen', lostMeans: 'Kommen mit der geltenden Anlagendatei, mit der Änderung zu keiner Zeit.', gainedMeans: 'Kommen nur mit der Änderung.',
  none: 'Keine.', firstOf: (n: number, all: number) => `Die ersten ${n} von ${all}.`, stood: (length: string) => `stand ${length} an`, stands: 'steht am Ende noch an', silent: 'rief niemanden', strip: 'Verläufe rundherum', stripOf: (what: string) => `Verläufe des Beckens rund um: ${what}`,
  minutes: (m: string) => `${m}\u00a0min`, hours: (h: string) => `${h}\u00a0h`, priority: 'Priorität',
  lines: 'Zeilen für die Anlagendatei', linesMeans: 'PlantWatch schreibt die Anlagendatei nie. Um dies in Kraft zu setzen, kopiert eine berechtigte Person die Zeile unter die Grenzwerte des Beckens, an die Stelle der bisherigen für dieselbe Größe.', under: (pool: string) => `Unter Grenzwerte von ${pool}`, copy: 'Kopieren', copied: 'Kopiert',
  sure: 'Wie sicher das ist', fidelity: (found: string, recorded: string, more: string) => `Von ${recorded} Alarmen, die das Betriebsbuch aus dieser Zeit hat, findet das Durchspielen wie es steht ${found} wieder, und ${more} darüber hinaus.`, took: (readings: string, seconds: string) => `${readings} Messwerte in ${seconds}\u00a0s.`,
};
