import type { JobState } from '../../contract.words';
import type { jobs as shape } from '../en/jobs';

// Aufträge der Instandhaltung: was zu tun ist, wer daran ist, ob es half.

const state: Record<JobState, string> = { open: 'Offen', in_hand: 'In Arbeit', waiting_for_parts: 'Wartet auf Teile', done: 'Erledigt' };

export const jobs: typeof shape = {
  title: 'Aufträge', lead: 'Was defekt ist, wer daran ist und ob die Reparatur half. Das Letzte sagen die Pumpen und Sonden selbst, binnen eines Tages.', state,
  failed: 'Reparaturen, die nicht halfen', open: 'Offen', in_hand: 'In Arbeit', waiting_for_parts: 'Wartet auf Teile', watched: 'Erledigt, Wirkung wird beobachtet', over: 'Vorbei',
  none: 'Kein Auftrag hier.', nothing: 'Nichts ist defekt, was jemand aufgeschrieben hätte.', newJob: 'Neuer Auftrag', carryOn: 'Weiterführen', again: 'Wieder aufnehmen', asset: 'Woran', alarm: 'Antwort auf den Alarm', noAlarm: 'keiner',
  seen: 'Was gesehen wurde', done: 'Was getan wurde', stateLabel: 'Stand', save: 'Auftrag speichern', needAsset: 'Wählen, woran.', needSeen: 'Angeben, was gesehen wurde.', needDone: 'Angeben, was getan wurde.',
  linked: 'antwortet auf einen Alarm', minutes: 'Arbeitszeit insgesamt, Minuten', needMinutes: 'Ganze Minuten, 0 bis 10.080.', parts: 'Eingebaute Teile', part: 'Teil', count: 'Wie viele', number: 'Teilenummer', addPart: 'Teil hinzufügen', dropPart: 'Entfernen', needPart: 'Teil nennen und Anzahl angeben, 1 bis 10.000.',
  parted: (n: number, name: string) => `${n} \u00d7 ${name}`, worked: (m: number) => `${m}\u00a0min Arbeit`, judgedBy: 'beurteilt nach', since: (who: string) => `zuerst geschrieben von ${who}`, watching: 'Die Signale werden beobachtet; ein ruhiger Tag beweist es.',
  draft: 'Der Entwurf bleibt auf diesem Gerät; Bilder, sobald sie angekommen sind.', unkept: 'Dieses Gerät hat keinen Platz für den Entwurf: erst speichern, dann diese Seite verlassen.', unsaved: 'Geschrieben und nicht gespeichert', goOn: 'Weiterschreiben',
  pictures: 'Bilder', addPicture: 'Bild aufnehmen oder wählen', dropPicture: 'Weglassen', pictureOf: 'Bild dieses Auftrags', pictureNo: (n: number, of: string) => `Bild ${n} von: ${of}`, pictureHint: 'Von der Störung und der Reparatur; keine Personen. Es wird hier verkleinert, und der Aufnahmeort wird nicht gesendet.',
  pictureRefused: 'Der Server hat dieses Bild nicht angenommen.', going: 'unterwegs', waits: 'wartet auf den Server; geht von selbst hinaus, solange dieses Formular offen ist', notRead: (name: string) => `${name}: nicht als Bild lesbar`, needPictures: 'Ein Bild ist noch nicht angekommen: warten oder weglassen.',
  kit: 'Reagenzien, Puffer und Lösungen', toKit: 'Zu den Chargen', replaceBy: (at: string) => `zu ersetzen bis ${at}`, noLot: 'keine Charge vermerkt', orderNow: 'Binnen zwei Wochen: Ersatz bestellen.',
  planned: 'Geplante Arbeiten', noPlanned: 'Die Anlagendatei plant keine Arbeiten.', every: (d: string) => d === '1' ? 'jeden Tag' : `alle ${d} Tage`, due: 'fällig', overdue: 'überfällig', last: 'zuletzt getan', neverDone: 'hier nie getan', writeDown: 'Aufschreiben', planOf: 'geplant',
  often: 'Wie oft etwas ausfiel', thing: 'Gerät', failures: 'Ausfälle', mean: 'Mittlere Zeit dazwischen, Tage', between: '90\u00a0% der Zeit dazwischen', repair: 'Mittlere Reparaturzeit, h', offender: 'fällt immer wieder aus', atLeast: (d: string) => `mindestens ${d}`,
  oftenNote: 'Aus dem letzten Jahr, nach den hier geschriebenen Aufträgen; geplante Arbeiten zählen nicht. Das Mittel ist Betriebszeit durch Ausfälle, sein Bereich der einer Zählung seltener Ereignisse: wenige Ausfälle sagen wenig.',
  assets: { circuits: 'Kreislauf', pools: 'Becken', probes: 'Sonde', pumps: 'Pumpe', filters: 'Filter' },
};
