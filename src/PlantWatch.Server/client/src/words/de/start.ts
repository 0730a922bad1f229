import type { start as shape } from '../en/start';

// Die ersten Schritte einer leeren Anlage.
export const start: typeof shape = {
  title: 'Erste Schritte', lead: 'Fünf kurze Schritte bis zum ersten Wert. Jeder wird sofort in die Anlagendatei geschrieben: jederzeit aufhören und dort weitermachen.',
  step: (n: number, all: number) => `Schritt ${n} von ${all}`, done: 'erledigt', now: 'jetzt', later: 'steht noch aus', next: 'Weiter', save: 'Speichern und weiter', saving: 'Speichert', change: 'In den Einstellungen ändern', optional: 'kann leer bleiben',
  steps: { site: 'Anlage benennen', pool: 'Becken hinzufügen', probe: 'Wählen, was gehört wird', pack: 'Grenzwertpaket wählen', value: 'Ersten Wert sehen' },
  readOnly: 'Die Anlagendatei lässt sich von hier nicht schreiben: sie oder ihr Ordner ist schreibgeschützt. Schreibbar machen oder von Hand schreiben; die Seite der Einstellungen hat den Text zum Kopieren.',
  broken: 'Die Anlagendatei hat Fehler. Diese zuerst auf der Seite der Einstellungen beheben.', toSettings: 'Zu den Einstellungen',
  why: { site: 'Erste Schritte: die Anlage', pool: 'Erste Schritte: ein Becken', probe: 'Erste Schritte: eine Sonde', pack: 'Erste Schritte: das Grenzwertpaket' },
  fileHead: '# Die Anlage, wie sie gebaut ist. Sie lässt sich hier wie auf der Seite ändern; docs/plant-file.md geht sie Schlüssel für Schlüssel durch.',
  site: {
    name: 'Name der Anlage', zone: 'Zeitzone', zoneHint: 'Entscheidet, was ein Tag ist und wann 07:30 ist. Angeboten wird die dieses Browsers.', units: 'Einheiten zum Abmessen',
    unitNames: { metric: 'metrisch', us: 'US', imperial: 'imperial' }, needName: 'Der Anlage einen Namen geben.', needZone: 'Zeitzone wählen.', long: 'Höchstens 100 Zeichen.',
  },
  pool: {
    name: 'Name des Beckens', kind: 'Wofür es ist', setting: 'Wo', disinfectant: 'Desinfektionsmittel', volume: 'Wasservolumen', volumeHint: 'Eine Schätzung genügt für den Anfang: keine Zugabe wird berechnet, bevor jemand es bestätigt hat. Länge \u00d7 Breite \u00d7 mittlere Tiefe, in Metern, ergibt m\u00b3.',
    turnover: 'Umwälzzeit', turnoverHint: 'Zeit, in der das Beckenwasser einmal umläuft, wie ausgelegt. Ohne sie wird der Volumenstrom mit nichts verglichen.',
    circuit: 'Aufbereitung', own: 'Eigene Filter, Dosierung und eigener Schwallwasserbehälter', shares: (name: string) => `Teilt die von ${name}`, circuitName: (pool: string) => `Wasser von ${pool}`,
    choose: 'Wählen', needName: 'Dem Becken einen Namen geben.', needKind: 'Angeben, wofür es ist.', needSetting: 'Angeben, wo es ist.', needDisinfectant: 'Angeben, womit es desinfiziert wird.', needVolume: 'Eine Zahl über 0, in m\u00b3.', needTurnover: 'Eine Zahl über 0, in Stunden, oder nichts.',
    stabilised: 'Stabilisiert: Cyanursäure ist im Wasser, aus Dichlor, Trichlor oder für sich.', another: 'Weiteres Becken hinzufügen', notKnown: 'Hier nicht gefragt und dann nicht bekannt: Schwallwasserbehälter, Filter, zweite Behandlung, Dosierpumpen. Jedes kommt in den Einstellungen hinzu, wenn es bekannt ist.',
    kinds: { swimming: 'Schwimmerbecken', teaching: 'Lehrschwimmbecken', leisure: 'Freizeitbecken', therapy: 'Therapiebecken', spa: 'Warmsprudelbecken', plunge: 'Tauchbecken', paddling: 'Planschbecken' }, settings: { indoor: 'In der Halle', outdoor: 'Im Freien' },
    disinfectants: { chlorine: 'Chlor, nicht stabilisiert', stabilised_chlorine: 'Chlor, stabilisiert', salt_electrolysis: 'Chlor aus Salz durch Elektrolyse', bromine: 'Brom' },
  },
  probe: {
    listening: 'Hört', broker: 'Broker', address: 'Geräte senden an', nothing: 'Noch ist nichts gehört. Topics erscheinen hier binnen einer Sekunde nach ihrer nächsten Nachricht.',
    how: 'Ein Gerät oder Gateway auf diese Adresse richten, mit QoS\u00a01 und ohne Retain. Zum Ausprobieren ohne Anlage sagt simulators/README.md, wie ein Datenstrom läuft.',
    heard: (n: number) => n === 1 ? '1 Topic gehört' : `${n} Topics gehört`, forgotten: (n: number) => n === 1 ? '1 älteres Topic wich neueren.' : `${n} ältere Topics wichen neueren.`, every: (s: string) => `alle ${s}\u00a0s`, once: 'bisher einmal', retained: 'vom Broker aufbewahrt, keine neue Messung',
    takenBy: (name: string) => `gelesen von ${name}`, take: 'Nehmen', takeNamed: (what: string) => `${what} nehmen`, asNumber: 'bloße Zahl', asSenml: 'SenML JSON', asCbor: 'SenML CBOR', filter: 'Topics zeigen mit', noneLeft: 'Kein Topic enthält diese Buchstaben.', more: (n: number) => `${n} weitere; einige Buchstaben des Topics eintippen, um eines zu finden.`,
    measurand: 'Was sie misst', name: 'Name', pool: 'Becken', mixed: 'Der gemischte Rücklauf von', origin: 'Wessen Zahl es ist', raw: 'Das eigene Signal der Sonde', rawMeans: 'PlantWatch darf es korrigieren.', panel: 'Was der Regler der Anlage zeigt und wonach er dosiert', panelMeans: 'Richtig gestellt wird es nur am Regler.',
    electrode: 'Bezugselektrode', electrodeHint: 'Millivolt bedeuten ohne sie nichts. Sie steht auf der Sonde oder in ihren Unterlagen.', unit: 'Gesendete Einheit', low: 'Niedrigster Wert, den das Gerät zeigen kann', high: 'Höchster Wert, den das Gerät zeigen kann', rangeHint: 'Eine Zahl außerhalb wird abgelehnt und aufbewahrt.', every_: 'Ein Messwert wird erwartet alle', seconds: 's',
    needMeasurand: 'Angeben, was sie misst.', needName: 'Ihr einen Namen geben.', needOrigin: 'Angeben, wessen Zahl es ist, damit nichts zweimal korrigiert wird.', needElectrode: 'Die Elektrode nennen, etwa Ag/AgCl 3\u00a0M.', needRange: 'Zwei Zahlen, die kleinere zuerst.', needEvery: 'Eine Zahl über 0, höchstens 86400.',
    save: 'Sonde hinzufügen', cancel: 'Diese nicht', added: (name: string) => `${name} ist hinzugefügt.`, goOn: 'Mit den gewählten weiter', without: 'Ohne Sonde weiter',
  },
  pack: {
    lead: 'Ein Paket ist eine Abschrift dessen, was eine Behörde verlangt. Jede Zeile wartet, bis eine Person sie mit dem Dokument verglichen hat; bis dahin begrenzt sie nichts. Die örtliche Vorschrift geht vor.',
    rows: (n: number) => n === 1 ? '1 Zeile' : `${n} Zeilen`, memory: (n: number) => `${n} aus dem Gedächtnis`, choose: 'Grenzwertpaket', needPack: 'Eines wählen oder ohne weitermachen.', take: 'Dieses Paket nehmen', without: 'Ohne weiter', older: 'Ausgaben, die eine neuere ersetzt hat',
  },
  value: {
    waiting: 'Warten auf den ersten Wert.', noProbe: 'Keine Sonde ist gewählt: Werte kommen von Hand, über die Seite Prüfung.', there: 'Der erste Wert ist da.', toOverview: 'Zu den Becken', toCheck: 'Erste Prüfung eintragen',
    remains: 'Was bleibt, wenn Zeit ist', volume: 'Das Volumen jedes Beckens bestätigen; vorher wird keine Zugabe berechnet', limits: 'Die Zeilen des Grenzwertpakets bestätigen', own: 'Ein Grenzwertpaket wählen oder jedem Becken eigene Grenzwerte geben', people: 'Die Personen nennen und was sie unterschreiben dürfen', checks: 'Angeben, welche Prüfungen wann fällig sind', pumps: 'Dosierpumpen, Produkte und Behälter hinzufügen', telling: 'Angeben, wer von Alarmen erfährt',
  },
};
