// Wörter der Seiten, die nicht vom Server kommen; was das Wasser betrifft, hat eigene Dateien daneben.
import type {
  AlarmChange, AlarmState, CalibrationKind, CalibrationStatus, Measurand, PoolWord, Priority, PumpActivity, SamplePoint, Standing, TestMethod,
  Tier, Verdict,
} from '../../contract';
import type { frame as shape } from '../en/frame';
import { inText } from './inText';

const measurand: Record<Measurand, string> = {
  none: '', ph: 'pH-Wert', orp: 'Redoxspannung', temperature: 'Temperatur', conductivity: 'Leitfähigkeit', free_chlorine: 'Freies Chlor',
  total_chlorine: 'Gesamtchlor', combined_chlorine: 'Gebundenes Chlor', total_alkalinity: 'Säurekapazität',
  calcium_hardness: 'Calciumhärte', cyanuric_acid: 'Cyanursäure', dissolved_solids: 'Gelöste Stoffe', sample_flow: 'Messwasser', circulation_flow: 'Umwälzung', filter_pressure: 'Filterdruck', turbidity: 'Trübung', bromine: 'Gesamtbrom',
};
const pool: Record<PoolWord, string> = {
  unknown: 'Unbekannt', normal: 'Normal', due: 'Prüfung fällig', attention: 'Beachten', alarm: 'Alarm', stop: 'Stopp',
};
const standing: Record<Standing, string> = {
  unknown: 'Noch kein Nachweis', good: 'Gut', maintenance_required: 'Wartungsbedarf', out_of_specification: 'Außerhalb der Spezifikation',
  check_function: 'Funktionskontrolle', failure: 'Ausfall',
};
const standingShort: Record<Standing, string> = {
  unknown: 'kein Nachweis', good: 'gut', maintenance_required: 'Wartung', out_of_specification: 'außer Spez.',
  check_function: 'Kontrolle', failure: 'Ausfall',
};
const verdict: Record<Verdict, string> = {
  not_comparable: 'Nicht vergleichbar', agrees: 'Stimmt überein', probe_drifts: 'Die Sonde driftet', check_suspect: 'Die Handmessung steht allein: wiederholen',
  learning: 'Lernt noch',
};
const priority: Record<Priority, string> = { note: 'Hinweis', low: 'Niedrig', medium: 'Mittel', high: 'Hoch', critical: 'Kritisch' };
const alarmState: Record<AlarmState, string> = {
  normal: 'Normal', unacknowledged: 'Steht an, nicht quittiert', acknowledged: 'Steht an, quittiert',
  returned_unacknowledged: 'Gegangen, nicht quittiert', latched_unacknowledged: 'Selbsthaltend, nicht quittiert',
  latched_acknowledged: 'Selbsthaltend, quittiert', shelved: 'Zurückgestellt', suppressed_by_design: 'Planmäßig unterdrückt', out_of_service: 'Außer Betrieb',
};
/** Worum es in einem Alarm neben einer Messgröße gehen kann: zwei Messungen zusammen, oder was ein Labor zählt. */
const watched: Record<string, string> = {
  combined_per_free: 'gebundenes zu freiem Chlor', combined_per_total: 'gebundenes zu Gesamtchlor', cyanurate_per_free: 'Cyanursäure zu freiem Chlor',
  colony_count: 'Koloniezahl', escherichia_coli: 'E. coli', pseudomonas_aeruginosa: 'Pseudomonas aeruginosa', legionella: 'Legionellen',
};
const alarmChange: Record<AlarmChange, string> = {
  none: '', raised: 'Gekommen', cleared: 'Gegangen', acknowledged: 'Quittiert', shelved: 'Zurückgestellt', unshelved: 'Zurückstellung beendet',
  suppressed: 'Planmäßig unterdrückt', released: 'Wieder freigegeben', reset: 'Zurückgesetzt', retired: 'Entfallen',
  taken_out_of_service: 'Außer Betrieb genommen', returned_to_service: 'Wieder in Betrieb', re_alarmed: 'Steht noch an, erneut gemeldet', made_safe: 'Als gesichert vermerkt',
};
const pump: Record<PumpActivity, string> = { unknown: 'Noch nicht gehört', stopped: 'Steht', running: 'Läuft', fault: 'Störung' };
const method: Record<TestMethod, string> = {
  unknown: 'nicht angegeben', photometer: 'Photometer', comparator: 'Komparator', tablet_count: 'Tablettenzählung', meter: 'Messgerät',
};
const point: Record<SamplePoint, string> = {
  unknown: 'Nicht angegeben', pool: 'Im Becken', cell: 'Ablauf der Messzelle', balance_tank: 'Schwallwasserbehälter', outlet: 'Tiefste Stelle oder Beckenablauf',
};
const calibrationKind: Record<CalibrationKind, string> = {
  offset: 'Nullpunkt', two_point: 'Steilheit, zwei Punkte', panel_adjustment: 'Abgleich am Regler der Anlage',
  verification: 'Angesehen und belassen',
};
const calibrationStatus: Record<CalibrationStatus, string> = {
  proposed: 'Vorgeschlagen', approved: 'Freigegeben', rejected: 'Abgelehnt', adjusted: 'Am Regler erledigt',
};
const tier: Record<Tier, string> = {
  raw: 'Einzelwerte', minute: '1 Minute', quarter_hour: '15 Minuten', hour: '1 Stunde', day: '1 Tag',
};
const kinds: Record<string, string> = {
  swimming: 'Schwimmerbecken', teaching: 'Lehrschwimmbecken', leisure: 'Freizeitbecken', therapy: 'Therapiebecken', spa: 'Warmsprudelbecken', plunge: 'Tauchbecken', paddling: 'Planschbecken',
  indoor: 'Halle', outdoor: 'Freibad', chlorine: 'Chlor', stabilised_chlorine: 'stabilisiertes Chlor', salt_electrolysis: 'Salzelektrolyse',
  bromine: 'Brom', uv: 'UV', ozone: 'Ozon',
};
const balance: Record<string, string> = { corrosive: 'kalklösend', balanced: 'im Gleichgewicht', scale_forming: 'kalkabscheidend' };

export const frame: typeof shape = {
  measurand, watched, pool, standing, standingShort, verdict, priority, alarmState, alarmChange, pump, method, point, calibrationKind,
  calibrationStatus, tier, kinds, balance, inText, quoted: (text: string) => `„${text}“`,
  product: 'PlantWatch',
  ago: (age: string) => `vor ${age}`,
  flow: 'fließt', noFlow: 'steht',
  below: (v: string) => `unter ${v}`, above: (v: string) => `über ${v}`,
  justNow: 'jetzt',
  never: 'nie',
  nav: { overview: 'Becken', check: 'Prüfung', alarms: 'Alarme', pumps: 'Pumpen', record: 'Buch', skip: 'Zum Inhalt', label: 'Seiten' },
  theme: { label: 'Hell oder dunkel', auto: 'Auto', light: 'Hell', dark: 'Dunkel' },
  live: {
    live: 'Live', connecting: 'Verbindet', not: 'Nicht live',
    banner: 'Nicht live', since: (clock: string) => `seit ${clock}.`, silentFor: (age: string) => `(${age})`,
    first: 'Noch keine Antwort vom Server. Neuer Versuch folgt von selbst.', values: 'Zu sehen ist, was zuletzt ankam. Neuer Versuch folgt von selbst.',
    plantFile: 'Die neueste Anlagendatei wurde nicht angenommen; es gilt die vorige.',
    last: (state: string) => `zuletzt: ${state}`,
  },
  bar: {
    more: (n: number) => (n === 1 ? '1 weiterer' : `${n} weitere`), nothing: 'Nichts wird überwacht',
    none: 'Kein Alarm', noneThen: 'Kein Alarm beim letzten Kontakt', noneButUnknown: (n: number) => n === 1 ? 'Kein Alarm, aber ein Becken ist unbekannt' : `Kein Alarm, aber ${n} Becken sind unbekannt`, label: 'Alarme', allSeen: 'Alle quittiert', unknown: 'Alarme unbekannt',
    dead: 'Nicht live', outOfService: (n: number) => `${n} außer Betrieb`,
    state: {
      normal: '', unacknowledged: 'neu', acknowledged: 'quittiert', returned_unacknowledged: 'gegangen', latched_unacknowledged: 'selbsthaltend', latched_acknowledged: 'selbsthaltend',
      shelved: 'zurückgestellt', suppressed_by_design: 'unterdrückt', out_of_service: 'außer Betrieb',
    } satisfies Record<AlarmState, string>,
    title: { dead: (own: string) => `Nicht live \u00b7 ${own}`, calls: (n: number, own: string) => `(${n}) \u25b2 ${own}` },
  },
  overview: {
    title: 'Becken', empty: 'Es gilt noch keine Anlagendatei, darum ist kein Becken zu zeigen.', begin: 'Mit den ersten Schritten beginnen', waiting: 'Warten auf den Server.',
    noState: 'Von diesem Becken ist noch nichts gehört.', check: 'Prüfung eintragen', open: 'Becken öffnen', tests: 'Letzte Handmessungen', balance: 'Sättigungs\u00adindex',
    noTest: 'noch nicht gemessen', due: 'Fällig', overdue: 'Überfällig', dueAt: (what: string, clock: string) => `${what}: ${clock}`, more: (n: number) => `und ${n} weitere`,
    suspect: 'zweifelhaft', notVisible: 'Beckenboden beim letzten Blick nicht sichtbar', shared: 'Gemeinsames Wasser des Kreislaufs', last: 'letzte 3 Stunden',
    alarmsStand: (n: number) => (n === 1 ? '1 Alarm steht an' : `${n} Alarme stehen an`), alarmsGone: () => 'gegangen, nicht quittiert', alarmsWord: (n: number) => (n === 1 ? 'Alarm' : 'Alarme'),
    noLimits: 'Keine Grenzwerte in Kraft: nichts kann normal heißen.', allWell: 'Innerhalb der Grenzwerte, Sonden verlässlich, nichts fällig.', limit: 'Grenzwerte', silent: 'still', doubted: 'zweifelhaft', believed: (v: string, u: string) => `Bestwert ${v}\u00a0\u00b1\u00a0${u}`, noReading: 'noch kein Messwert',
  },
  check: {
    title: 'Prüfung von Hand', pool: 'Becken', who: 'Wer gemessen hat', when: 'Probe genommen um', now: 'Jetzt', siteClock: 'nach der Uhr der Anlage',
    point: 'Probenahmestelle', place: 'Genaue Stelle', placeHint: 'zum Beispiel: tiefer Teil, links, 30\u00a0cm tief',
    results: 'Desinfektion, pH-Wert, Temperatur', bromineHint: 'Als Br\u2082. Was ein Chlorprogramm zeigt, mal 2,25, ist Brom.', balance: 'Härte und Säurekapazität', panel: 'Was der Regler zeigt', panelHint: 'Im Augenblick der Probenahme ablesen.', panelAsked: 'Die Pumpen folgen dieser Zahl. Im Augenblick der Probenahme ablesen.', panelOthers: 'Weitere Zahlen am Regler',
    receivedNow: (v: string) => `Empfangen: jetzt ${v}`, testedNow: (v: string) => `von Hand ${v}`, panelDiffers: 'Das ist nicht die Zahl, die empfangen wird: Skalierung und Einheit ansehen, und welche Sonde es ist.',
    around: 'Rund ums Becken', method: 'Methode', bound: 'Wert oder Schranke', equals: '=', below: '< unter Messbereich', above: '> über Messbereich',
    dilution: 'Verdünnung', dilutionHint: 'Verdünnt: ein Teil in', result: (v: string) => `Ergebnis ${v}`, combined: 'Gebundenes Chlor',
    combinedMissing: 'erscheint, sobald freies und Gesamtchlor eingetragen sind', freeAboveTotal: 'Freies Chlor liegt über Gesamtchlor. Eines von beiden ist falsch: Messung wiederholen.',
    bottom: 'Beckenboden sichtbar', yes: 'Ja', no: 'Nein', notLooked: 'Nicht geschaut', bathers: 'Badegäste im Wasser', note: 'Bemerkung', submit: 'Prüfung speichern',
    sending: 'Speichert\u2026', another: 'Weitere Prüfung eintragen', clear: 'Formular leeren', clearSure: 'Alle Eingaben löschen?', kept: 'Entwurf bleibt auf diesem Gerät.',
    notNumber: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.', negative: 'Kann nicht negativ sein.', whole: 'Bitte eine ganze Zahl.', needWho: 'Angeben, wer gemessen hat.', needPool: 'Becken wählen.',
    needTime: 'Datum und Uhrzeit angeben.', future: 'Das liegt in der Zukunft.', needSomething: 'Mindestens ein Ergebnis oder eine Beobachtung eintragen.',
    phRange: 'Der pH-Wert liegt zwischen 0 und 14.', dilutionLow: 'Eins oder mehr.', mend: (n: number) => n === 1 ? 'Ein Feld ist zu berichtigen.' : `${n} Felder sind zu berichtigen.`,
    noPools: 'Die Becken der Anlage sind auf diesem Gerät noch nicht bekannt. Einmal verbinden, dann geht das Formular auch ohne Netz.',
    storageFull: 'Dieser Browser kann die Prüfung nicht aufbewahren. Sie bleibt im Formular; erneut versuchen, sobald der Server erreichbar ist.',
  },
  answer: {
    saved: 'Prüfung gespeichert', panel: 'Regler', believed: 'Bestwert', probe: 'Sonde', test: 'Hand', expected: 'Erwartet', difference: 'Differenz', noProbes: 'Keine Sonde zum Vergleich mit dieser Prüfung.', remarks: 'Einen zweiten Blick wert', inDoubt: 'aus einer zweifelhaften Messung', notJudged: 'Noch ist nichts beurteilt: bis dahin zählen die eigene Messung und die Anweisungen der Anlage.',
    queued: 'Auf diesem Gerät aufbewahrt', queuedMore: 'Der Server ist nicht erreichbar. Die Prüfung geht von selbst hinaus, sobald er es ist.', arrived: 'Inzwischen gesendet.',
    refused: 'Der Server hat diese Prüfung nicht angenommen', refusedMore: 'Markierte Felder berichtigen und erneut speichern. Es ging nichts verloren.',
    refusedBare: 'Der Server hat sie abgelehnt, ohne ein Feld zu nennen.',
  },
  outbox: {
    title: 'Auf diesem Gerät', waiting: 'wartet auf das Senden', refused: 'Abgelehnt', edit: 'Im Formular öffnen', drop: 'Verwerfen', dropSure: 'Diese Prüfung endgültig verwerfen?',
    sendNow: 'Jetzt versuchen', keepsTime: (time: string) => `Es behält seine Zeit: ${time}.`, timeNow: 'Jetzige Zeit nehmen', badge: (n: number) => n === 1 ? '1 wartet' : `${n} warten`,
  },
  strips: {
    gap: 'kein Messwert', partFlow: (percent: string) => `Durchfluss in ${percent}\u00a0% der Zeit`, corrected: 'korrigiert', raw: 'roh', test: 'Handmessung', expected: 'aus der Handmessung erwartet', failed: 'Die Messwerte sind nicht abrufbar.', empty: 'Keine Messwerte in dieser Zeit.',
    tier: (t: string) => `Mittel und Spanne über ${t}`, against: (e: string) => `gegen ${e}`, noTests: 'Keine Handmessung in dieser Zeit.', testsOnly: 'Handmessungen', now: 'Jetzt',
    range: 'Gezeigte Zeit', earlier: 'Früher', later: 'Später', closer: 'Näher', wider: 'Weiter', label: 'Verläufe',
    spans: { hour: 'Stunde', six_hours: '6\u00a0h', day: 'Tag', week: 'Woche', month: 'Monat', year: 'Jahr', five_years: '5\u00a0Jahre' },
    legend: '\u25c6 Handmessung mit Unsicherheit \u00b7 \u2504 roh neben \u2501 korrigiert \u00b7 getönt: Grenzwerte.',
    touch: 'Ziehen verschiebt, zwei Finger zoomen.', keys: 'Auch das Mausrad zoomt (nach einem Klick); Tasten: Pfeile, Bild auf und ab, + und \u2212; Pos\u00a01 geht zum Jetzt.',
  },
  poolPage: {
    balance: 'Wassergleichgewicht', hocl: 'Anteil HOCl am freien Chlor',
    manual: 'Letzte Handmessungen', measurand: 'Was', value: 'Wert', method: 'Methode', age: 'Alter', probes: 'Sonden', standing: 'Zustand', bias: 'Abweichung', believed: 'Bestwert', panel: 'Regler',
    testColumn: 'Hand', expectedColumn: 'Erwartet', reads: 'Zeigt', pumps: 'Dosierpumpen', due: 'Fällig', nothingDue: 'Nichts ist fällig.', alarms: 'Offene Alarme', noAlarms: 'Kein offener Alarm.', checks: 'Prüfungen der letzten 14 Tage', noChecks: 'Keine Prüfung in den letzten 14 Tagen.',
    bathers: 'Badegäste', bottom: 'Beckenboden', visible: 'sichtbar', notVisible: 'nicht sichtbar', origin: { raw: 'eigenes Signal', panel_scaled: 'wie am Regler' }, noProbes: 'Dieses Becken hat keine Sonde.', noPumps: 'Keine Dosierpumpe.',
    common: 'gemeinsamer Rücklauf', volume: (v: string) => `${v}\u00a0m\u00b3`, noTests: 'Noch nichts von Hand gemessen.', turnover: (h: string) => `Umwälzzeit ${h}\u00a0h`,
  },
  alarms: {
    title: 'Alarme', standing: 'Steht jetzt an', none: 'Kein Alarm steht an.', cause: 'Ursache', consequence: 'Wenn nichts geschieht', action: 'Was zu tun ist', time: 'Zeit zum Handeln', acknowledge: 'Quittieren', reset: 'Zurücksetzen', oneShot: 'Nur bis er geht', shelve: 'Zurückstellen',
    unshelve: 'Zurückstellung aufheben', comment: 'Kommentar', why: 'Grund', needWhy: 'Grund angeben.', shelveFor: 'Zurückstellen für', minutes: (n: number) => n === 1 ? '1 Minute' : `${n} Minuten`,
    hours: (n: number) => (n === 1 ? '1 Stunde' : `${n} Stunden`), raised: 'Gekommen', cleared: 'gegangen', acknowledgedBy: (who: string) => `quittiert von ${who}`,
    shelvedBy: (who: string, until: string) => `zurückgestellt von ${who} bis ${until}`, history: 'Die letzten 7 Tage', noHistory: 'In den letzten 7 Tagen geschah nichts.',
  },
  pumps: {
    title: 'Pumpen', since: 'seit', low: 'nachfüllen', write: 'Auftrag schreiben', notes: 'Aufträge zu Pumpen und Sonden', newNote: 'Neuer Auftrag',
  },
  record: {
    title: 'Betriebsbuch', sumsTitle: 'Summenprobe', explain: 'Über alles, was ankam, ist Rechenschaft gegeben: empfangen = gespeichert + doppelt + abgelehnt + unterwegs.',
    sums: { received: 'empfangen', stored: 'gespeichert', duplicates: 'doppelt', refused: 'abgelehnt', inFlight: 'unterwegs' },
    closes: 'Die Summen gehen auf.', open: 'Die Summen gehen nicht auf: Messwerte fehlen oder sind doppelt gezählt.',
    identity: (device: string, packet: string, atLeast: string) => `Gespeichert nach Gerätezeit ${device}, nach Paket ${packet}, mindestens einmal ${atLeast}.`,
    messages: (n: string) => n === '1' ? '1 Nachricht.' : `${n} Nachrichten.`, circuit: 'Kreislauf', unclaimed: 'Topics, die zu nichts gehören', refusals: 'Abgelehntes', noRefusals: 'Nichts wurde abgelehnt.', bytes: (n: string) => `${n} Byte`, noText: '(leer)',
  },
  probe: {
    noBias: 'Noch keine Prüfung war mit dieser Sonde vergleichbar.', biasLabel: (v: string, u: string) => `Abweichung im Zeitverlauf, jetzt ${v} \u00b1 ${u}`, biasTitle: 'Abweichung nach jeder Prüfung: was sie zeigte minus was sie sollte',
    offer: 'Angebot aus den Prüfungen', noOffer: 'Keine Kalibrierung im Angebot', adjustPanel: (a: string) => `Wert am Regler um ${a} ändern`, shift: (a: string) => `korrigiert = roh ${a}`, slope: (s: string, a: string) => `korrigiert = ${s} \u00d7 roh ${a}`,
    restsOn: (n: number) => (n === 1 ? 'Beruht auf 1 Prüfung.' : `Beruht auf ${n} Prüfungen.`), judged: 'beurteilt', raw: 'Wie gemessen', corrected: 'Korrigiert', olderChecks: (n: number) => n === 1 ? '1 ältere zeigen' : `${n} ältere zeigen`, panelHint: 'Die Pumpen folgen dem Regler, darum ist der Regler richtig zu stellen; hier wird nicht zusätzlich korrigiert.',
    rawHint: 'Rohwerte werden nie geändert; die Korrektur gilt ab einem Zeitpunkt.', propose: 'Vorschlagen', waiting: 'Wartet auf Entscheidung', proposedBy: (who: string, at: string) => `vorgeschlagen von ${who}, ${at}`,
    engineer: 'Technikleitung', doneAt: 'Am Regler erledigt um', holdsFrom: 'Gilt ab', markDone: 'Als am Regler erledigt vermerken', approve: 'Freigeben', reject: 'Ablehnen', history: 'Kalibrierungen', noHistory: 'Hier nie kalibriert.',
    decidedBy: (what: string, who: string, at: string) => `${what}, ${who}, ${at}`, range: (r: string) => `Messbereich ${r}`, judgements: 'Was die Prüfungen sagten', noJudgements: 'Noch keine Prüfung.',
  },
  pageMissing: 'Diese Seite gibt es nicht.', back: 'Zurück zu den Becken', retry: 'Erneut versuchen', loading: 'Lädt\u2026',
  error: { unreachable: 'Der Server ist nicht erreichbar.', kept: 'Die Eingaben sind noch da; erneut versuchen.', refused: 'Abgelehnt' },
  name: 'Ihr Name', needName: 'Namen angeben.', cancel: 'Abbrechen',
};
