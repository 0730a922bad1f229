import type { calibrate as shape } from '../en/calibrate';

// Kalibrieren am Platz: Schritt für Schritt, auch für Müde.

export const calibrate: typeof shape = {
  title: (probe: string) => `${probe} kalibrieren`, open: 'Kalibrieren oder reinigen', due: (day: string) => `Kalibrierung fällig ${day}`, overdue: (day: string) => `Kalibrierung war fällig ${day}`, every: (days: string) => `alle ${days} Tage laut Anlagendatei`,
  stepOf: (n: number, all: number) => `Schritt ${n} von ${all}`, next: 'Weiter', back: 'Zurück', again: 'Neu beginnen', againAsk: 'Dieses Blatt verwerfen und neu beginnen?', kept: 'Eingaben bleiben bis zur Unterschrift auf diesem Gerät.',
  limits: 'Grenzen der Anlagendatei', slopeLimits: (low: string, high: string) => `Steilheit ${low}\u2009\u2013\u2009${high}\u00a0%`, offsetLimits: (mv: string) => `Nullpunkt \u00b1${mv}\u00a0mV`, orpLimits: (mv: string) => `\u00b1${mv}\u00a0mV zur Lösung`,
  start: {
    ph: 'Nötig sind zwei frische Pufferlösungen, mindestens 2 pH auseinander, ein Thermometer, Spülwasser und ein weiches Tuch. Es dauert etwa zehn Minuten.', orp: 'Nötig sind eine frische Prüflösung, ihr Wert bei ihrer Temperatur, ein Thermometer und Spülwasser. Es dauert etwa fünf Minuten.',
    other: 'Hier vermerken, was an der Sonde getan wurde. Während der Arbeit zählen ihre Messwerte nicht.', panel: 'Diese Zahl kommt vom Regler der Anlage: in den Lösungen ansehen, am Regler nach dessen Menü kalibrieren, noch einmal ansehen. Hier wird nichts korrigiert.',
    caution: 'Ventile der Messzelle vor dem Öffnen schließen und die Dosierregelung nach Brauch der Anlage anhalten: sie darf nicht nach einer Sonde dosieren, die nicht in der Messzelle steckt. PlantWatch befiehlt nichts.',
    go: 'Ausbauen und beginnen', goOn: 'Fortfahren', marks: 'Ab jetzt gelten ihre Messwerte als Funktionskontrolle, höchstens eine halbe Stunde.', busy: (who: string) => `${who} arbeitet an dieser Sonde.`,
  },
  working: (until: string) => `Messwerte gelten bis ${until} als Funktionskontrolle.`, notWorking: 'Die halbe Stunde ist um: Messwerte gelten wieder als Beckenwasser.', markAgain: 'Noch eine halbe Stunde', cannotMark: 'Der Server ist nicht erreichbar: ihre Messwerte lassen sich jetzt nicht als Funktionskontrolle kennzeichnen. Weitermachen und das Abgelesene eintragen.',
  found: { title: 'Vorgefunden', lead: 'Vor dem Reinigen oder Ändern: wie weit lag sie daneben? Abspülen und so, wie sie ist, hineinstellen.', skip: 'So nicht messbar', skipped: 'Der vorgefundene Zustand wurde nicht gemessen.' },
  points: { title: 'Kalibrieren', lead: 'Gut abspülen und abtupfen, nicht reiben. Nie einen Puffer in den nächsten verschleppen.' },
  place: (n: number, all: number) => (all > 1 ? `Lösung ${n} von ${all}` : 'Lösung'),
  which: 'Welche Flasche?', family: { technical: 'Technische Puffer', reference: 'Referenzpuffer', unknown: '' }, other: 'Andere Flasche: ihr Etikett', labelValue: (unit: string) => `Wert auf dem Etikett bei dieser Temperatur${unit ? `, ${unit}` : ''}`,
  trap: 'Flasche genau lesen: 7,00 und 6,86 sind zwei verschiedene Puffer.', quinhydrone: { phthalate: 'Chinhydron in Puffer pH\u00a04', phosphate: 'Chinhydron in Puffer pH\u00a07', unknown: '' },
  orpReference: 'Diese Werte gelten gegen Ag/AgCl in Kaliumchlorid 3,33\u00a0mol/L. Bei anderer Bezugselektrode gilt das Etikett der Flasche.',
  celsius: 'Temperatur der Lösung, \u00b0C', is: (value: string) => `Sollwert bei dieser Temperatur: ${value}`, outOfTable: 'Für diese Temperatur steht kein Wert in der Tabelle',
  bottle: 'Charge und Verfall der Flasche', lot: 'Charge', expires: 'Verfällt', expired: 'Diese Flasche ist abgelaufen: eine frische öffnen.',
  putIn: 'Sie steht jetzt in der Lösung', wait: 'Warten, bis der Wert ruht', settling: (span: string, most: string) => `in dieser Zeit um ${span} bewegt; bis ${most} gilt als ruhig`, collecting: (done: string, all: string) => `bisher ${done} von ${all}\u00a0s Messwerte;`,
  settled: 'Ruhig', take: (value: string) => `${value} übernehmen`, taken: (value: string) => `Übernommen: ${value}`, takenTyped: 'eingetippt', retake: 'Noch einmal', noReadings: 'Von dieser Sonde kommen keine Messwerte. Das Abgelesene eintragen.', noServer: 'Der Server ist nicht erreichbar. Das Abgelesene eintragen.',
  orType: 'oder das Abgelesene eintragen', typed: 'Ablesung', inMv: 'mV', inPh: 'pH', mvHint: 'mV beurteilen die Elektrode; sie ändern keine Korrektur.', leave: 'Zweiten Puffer weglassen', leaveHint: 'Ein Puffer zeigt den Nullpunkt, keine Steilheit.',
  need: { celsius: 'Angeben, wie warm die Lösung ist', label: 'Angeben, was auf dem Etikett steht', reading: 'Warten, bis der Wert ruht, oder das Abgelesene eintragen', wrong: 'Eine Zahl wird erwartet' },
  work: {
    title: 'Was getan wurde', lead: 'Jetzt reinigen, wenn es nötig ist. Dann angeben, was getan wurde.', nothing: 'Nichts wurde angefasst: weiter mit dem Vorgefundenen', onPanel: 'Jetzt am Regler kalibrieren, nach dessen Menü, dann weiter.', need: 'Angeben, was getan wurde, oder dass nichts angefasst wurde',
    kinds: { cleaned: 'Gereinigt', electrode_replaced: 'Elektrode ersetzt', polished: 'Poliert', membrane_replaced: 'Membran gewechselt', electrolyte_refilled: 'Elektrolyt erneuert' },
    starts: { cleaned: '', electrode_replaced: 'Was von der alten Elektrode gelernt war, zählt nicht mehr.', polished: 'Die gelernte Kennlinie dieses Beckens beginnt neu.', membrane_replaced: 'Was von dieser Sonde gelernt war, beginnt neu.', electrolyte_refilled: 'Was von dieser Sonde gelernt war, beginnt neu.' },
  },
  result: {
    title: 'Ergebnis', computing: 'Wird berechnet\u2026', slope: 'Steilheit', offset: 'Nullpunkt', foundBy: 'Vorgefunden lag sie daneben um', leftBy: 'Nach den letzten Ablesungen, nach der Unterschrift', verdict: { within: 'Innerhalb der Grenzen', outside: 'Außerhalb der Grenzen', unknown: 'Nichts gemessen' },
    what: { offset: 'Die Unterschrift verschiebt ihren Wert ab jetzt um einen festen Betrag.', two_point: 'Die Unterschrift stellt Steilheit und Nullpunkt ab jetzt richtig.', verification: 'Die Unterschrift ändert keine Korrektur.', panel_adjustment: 'Die Unterschrift hält fest, was am Regler verstellt wurde.' },
    waits: 'Die Unterschrift ändert noch nichts: eine zweite Person muss freigeben.', review: 'Eine zweite Person sieht es danach durch.', noServer: 'Der Server ist nicht erreichbar. Das Blatt bleibt auf diesem Gerät: zum Unterschreiben wiederkommen.', putBack: 'Wieder in die Messzelle einbauen, Ventile öffnen und die Dosierregelung erst freigeben, wenn der Wert ruht.',
    sign: 'Unterschreiben', note: 'Bemerkung', signLead: 'Zuerst die Sonde wieder einbauen.',
  },
  done: { title: 'Unterschrieben', held: 'Es gilt ab jetzt.', waiting: 'Es wartet auf eine zweite Person.', sheet: 'Blatt zeigen', probe: 'Zurück zur Sonde', check: 'Jetzt von Hand messen: Sonde und Handmessung sollen übereinstimmen.' },
  sheet: {
    title: 'Kalibrierblatt', by: 'Durchgeführt von', from: 'Aus der Messzelle', to: 'Wieder eingebaut', work: 'Arbeit', none: 'keine', basis: 'Gegen', asFound: 'Vorgefunden', measured: 'Kalibriert mit', asLeft: 'Hinterlassen', solution: 'Lösung', temperature: '\u00b0C', known: 'Soll', read: 'Ist', error: 'Fehler', lot: 'Charge, Verfall',
    verdict: 'Urteil', correction: 'Korrektur', held: 'vorher', holds: 'jetzt', reviewer: 'Durchgesehen von', notReviewed: 'noch nicht durchgesehen', objected: 'Beanstandet von', print: 'Drucken', remark: 'Bemerkung', settled: 'ruhig', typed: 'eingetippt', id: 'Blatt', notMeasured: 'nicht gemessen', afterCorrection: 'aus denselben Ablesungen mit der neuen Korrektur berechnet',
    buffer: { technical: (ph: string) => `Technisch ${ph}`, reference: (ph: string) => `Referenz ${ph}` },
    basisOf: { unknown: 'nichts gemessen', checks: 'Prüfungen von Hand', buffers: 'Puffer', check_solution: 'Prüflösung' }, common: 'Grenzen und Fristen der Anlagendatei; wo sie nichts sagt, sind sie gängige Praxis.',
  },
  unseen: (probe: string) => `${probe}: eine Kalibrierung wartet auf Durchsicht`,
  review: { title: 'Wartet auf Durchsicht', lead: (who: string) => `Durchgeführt von ${who}. Eine andere Person sieht es durch: Flaschen, Ablesungen, Urteil.`, accept: 'Durchgesehen, gilt', object: 'Beanstanden', why: 'Was gesehen wurde oder falsch ist' },
  drift: { slope: (day: string) => `Nach der Steilheit ist sie verbraucht etwa ${day}`, earliest: (day: string) => `(nicht vor ${day})`, title: 'Von Kalibrierung zu Kalibrierung', perMonth: (v: string, u: string) => `${v} \u00b1 ${u} im Monat`, of: (n: number) => (n === 1 ? 'über 1 Abschnitt' : `über ${n} Abschnitte`) },
};
