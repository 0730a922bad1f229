// Tafeln als Dateien, und die Anzeige an der Wand.
import type { BoardReader, TileKind } from '../../contract.boards';
import type { boards as shape } from '../en/boards';

const kinds: Record<TileKind, string> = {
  pools: 'Becken', readout: 'Messwerte', strip: 'Verlauf', balance: 'Wassergleichgewicht', tests: 'Letzte Handmessungen', alarms: 'Alarme', due: 'Fällig', pumps: 'Pumpen', probes: 'Sonden', trust: 'Wem zu glauben ist',
  jobs: 'Aufträge', notes: 'Aufgeschrieben', clock: 'Uhrzeit',
};
const readers: Record<BoardReader, string> = { engineer: 'Technikleitung', operator: 'Betriebspersonal', maintenance: 'Instandhaltung', manager: 'Betriebsleitung' };

export const boards: typeof shape = {
  kinds, readers,
  title: 'Tafeln', choose: 'Welche', none: 'Es gibt keine Tafel.', all: 'Alle Tafeln', pool: 'Becken', toWall: 'An der Wand zeigen', for: (who: string) => `für ${who}`, own: 'eigene der Anlage',
  noSuch: 'Diese Tafel gibt es nicht.', problems: (n: number) => (n === 1 ? '1 Fehler' : `${n} Fehler`),
  lastGood: 'Die Datei dieser Tafel hat Fehler. Zu sehen ist ihre letzte gute Fassung.', neverGood: 'Die Datei dieser Tafel hat Fehler, und eine gute Fassung gibt es noch nicht.',
  at: (file: string, line: number) => `${file}, Zeile ${line}`, tileProblem: (what: string) => `Nicht gezeigt: ${what}`,
  ownTitle: 'Eigene Tafeln', ownHow: 'Eine Tafel ist eine Datei. In den Ordner „boards“ neben der Anlagendatei gelegt, erscheint sie binnen Sekunden hier, und ebenso, was an ihr falsch ist. Eine gleichen Namens ersetzt eine Tafel, die PlantWatch mitbringt. Vor Gebrauch lässt sie sich prüfen:',
  noPools: 'Dieses Becken hat die Anlage nicht.', noProbes: 'Diese Sonde hat die Anlage nicht.', noJobs: 'Kein offener Auftrag.', noAlarm: 'Kein Alarm steht an.', noAlarmFrom: (priority: string) => `Kein Alarm ab Priorität „${priority}“ steht an.`,
  coming: 'Danach',
  deadSince: (at: string) => `seit ${at}`, neverHeard: 'noch nichts gehört', heard: 'gehört', mayGoDark: 'Dieser Browser hält den Bildschirm nicht hell.', pageOf: (n: number, of: number) => `Seite ${n} von ${of}`,
  moreTiles: (n: number) => (n === 1 ? '1 weiterer Teil' : `${n} weitere Teile`), hold: 'Seite festhalten', heldUntil: (at: string) => `Festgehalten bis ${at}, weiter`, gone: 'Die Datei dieser Tafel ist weg; so war sie zuletzt.', triesAgain: 'Neuer Versuch folgt von selbst.',
};
