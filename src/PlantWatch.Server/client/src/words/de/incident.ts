import type { incident as shape } from '../en/incident';

// Vorfälle: Verunreinigungen des Wassers.

export const incident: typeof shape = {
  lead: 'Etwas kam ins Wasser? Zuerst alle heraus. Dann hier melden: das Becken gilt als geschlossen, bis eine Person den Vorfall abschließt.',
  advice: 'Ein Plan, der leitet, keine Anweisung. Örtliche Vorschriften und die Gesundheitsbehörde gehen vor.',
  what: 'Was ist geschehen?', kinds: {
    unknown: '', formed_stool: 'Fester Stuhl', diarrhoeal_stool: 'Weicher Stuhl oder Durchfall', vomit: 'Erbrochenes', blood: 'Blut', deck_spill: 'Körperflüssigkeit auf dem Beckenumgang',
  },
  authority: 'Wessen Zahlen?', authorityHint: 'Behörden unterscheiden sich. Die wählen, die die örtliche Vorschrift nennt; gemischt wird nie.',
  when: 'Wann?', justNow: 'Soeben', earlier: 'Früher', whenHint: 'Messungen ab dann zählen.', note: 'Sonst noch etwas', declare: 'Melden und Becken schließen', declareDeck: 'Melden',
  needKind: 'Angeben, was geschehen ist', needAuthority: 'Wählen, wessen Zahlen', needWhen: 'Angeben, wann',
  closedTo: 'Für Badegäste geschlossen', deckOpen: 'Leute von der Stelle fernhalten', declaredBy: (who: string, at: string) => `gemeldet von ${who}, ${at}`, happened: (at: string) => `geschehen ${at}`,
  word: {
    refused: 'Kein Countdown', not_started: 'Nicht begonnen', running: 'Läuft', paused: 'Angehalten', test_missing: 'Steht: Messung fehlt', reached: 'Haltezeit erreicht',
  },
  left: 'Noch nicht belegt', leftAt: (residual: string) => `bei ${residual}\u00a0mg/L`, done: 'Durch Messungen belegt', of: (done: string, all: string) => `${done} von ${all}`,
  contact: 'mg\u00b7min/L', minutes: 'min', hours: 'h', nextTest: 'Nächste Messung bis', inTime: (span: string) => `in ${span}`, late: (span: string) => `${span} zu spät`,
  earliest: 'Frühestens erreicht', earliestHint: 'wenn eine Messung dann noch den Chlorgehalt findet. Kein Versprechen.', started: 'Begonnen', reachedAt: 'Belegt um',
  enter: 'Messung eintragen', onlyTests: 'Nur Handmessungen bewegen diese Uhr, nie eine Sonde.',
  tests: 'Messungen, seit es geschah', noTests: 'Noch keine Messung.', table: { at: 'Probe', place: 'Stelle', residual: 'Cl mg/L', ph: 'pH', celsius: '\u00b0C', gained: 'Zählt' },
  lowest: 'Tiefste Stelle', counts: 'zählt', places: { Pool: 'Becken', Cell: 'Messzelle', BalanceTank: 'Schwallwasserbehälter', Unknown: 'Stelle nicht angegeben', Outlet: 'Tiefste Stelle' } as Record<string, string>,
  strip: 'Chlorgehalt im Zeitverlauf', stripSaid: (n: number, share: string) => `${n === 1 ? '1 Messung, die zählt' : `${n} Messungen, die zählen`}; ${share} Prozent der Haltezeit belegt. Der gefüllte Teil zählt.`,
  stripKey: '\u25c6 zählt \u00b7 \u25c7 zählt nicht \u00b7 gefüllt: gezählt \u00b7 \u2504 geringster Chlorgehalt',
  steps: 'Was zu tun ist', byFigures: 'Gezählt nach', others: 'Was andere Behörden verlangen', allRows: 'Alle Zeilen dieser Behörde',
  row: {
    dilute: (c: string) => `Cyanursäure über ${c}: zuerst verdünnen, kein Countdown`, none: 'Im Becken wird nichts gehalten', hold: (level: string, time: string) => `${level}\u00a0mg/L für ${time}`,
    contact: (ct: string) => `CT-Wert ${ct}\u00a0mg\u00b7min/L`, water: (ph: string, celsius: string) => `pH ${ph}, ${celsius}\u00a0\u00b0C oder wärmer`, upTo: (v: string) => `bis ${v}`,
    cyanurate: (range: string) => `Cyanursäure ${range}\u00a0mg/L`, without: 'ohne Cyanursäure', start: (v: string) => `beginnt bei ${v}\u00a0mg/L im ganzen Becken`, notCounted: 'nur gezeigt, danach wird nicht gezählt',
  },
  notes: 'Bemerkungen', noNotes: 'Noch nichts vermerkt.', addNote: 'Vermerken', noteWhat: 'Was getan oder gesehen wurde', needText: 'Angeben, was getan oder gesehen wurde',
  close: 'Vorfall abschließen', closeLead: 'Nach dem Abschluss kann das Becken geöffnet werden. PlantWatch entscheidet nichts: das tut ein Mensch. Zuerst dies ansehen.', why: 'Warum er abgeschlossen werden kann', needWhy: 'Grund angeben',
  closeNow: 'Abschließen', notReached: 'Die Haltezeit ist nicht durch Messungen belegt. Jetzt nur abschließen, wenn es kein Vorfall war oder die Behörde es sagt.',
  past: 'Abgeschlossene Vorfälle', noPast: 'Keine.', closedBy: (who: string, at: string) => `abgeschlossen von ${who}, ${at}`, poolGone: 'sein Becken steht nicht mehr in der Anlagendatei', share: (v: string) => `${v}\u00a0% der Haltezeit belegt`,
  more: 'Weiteren melden', eachPool: 'Jedes Becken dieses Wassers wird für sich gehalten und gemessen',
  inSharedWater: (name: string) => `Dieses Becken teilt sein Wasser mit ${name}, wo ein Vorfall offen ist: auch es ist geschlossen und wird für sich gemessen.`, toIt: 'Zum Vorfall',
};
