import type { filters as shape } from '../en/filters';

// Umwälzung und Filter eines Kreislaufs, und wie sie gespült werden.
export const filters: typeof shape = {
  title: 'Umwälzung und Filter', flow: 'Umwälzung', low: (limit: string) => `niedrig unter ${limit}`, isLow: 'niedrig', noFlow: 'nicht gemessen',
  across: 'Druckverlust', clean: (text: string) => `sauber ${text}`, rise: (now: string, due: string) => `um ${now} gestiegen, Spülung fällig bei ${due}`, noPressure: 'Druck nicht gemessen.', noClean: 'Druckverlust des sauberen Filters noch nicht bekannt',
  washed: 'Gespült', by: (name: string) => `von ${name}`, never: 'Noch keine Spülung vermerkt', every: (days: string) => `spätestens alle ${days} Tage`, due: 'Spülung fällig',
  turnover: 'Umwälzzeit', takes: (hours: string, mean: string) => `${hours} bei ${mean}, dem Mittel der letzten Stunde`, design: (hours: string, flow: string) => `ausgelegt auf ${hours} bei ${flow}`, short: 'reicht nicht', noHour: 'noch keine ganze Stunde gemessen',
  rate: (speed: string) => `Filtergeschwindigkeit ${speed}`,
  drained: (m3: string) => `${m3} abgelassen`, water: 'Abgelassenes Wasser, m\u00b3', usual: (m3: string) => `Leer gelassen gilt das Übliche, ${m3}. Es ist Verdünnung: Füllwasser tritt an seine Stelle.`, noUsual: 'Spülstrom mal Minuten, Erstfiltrat eingeschlossen. Es ist Verdünnung: Füllwasser tritt an seine Stelle.',
  needWater: 'Das Wasser als Zahl in Kubikmetern angeben oder leer lassen.',
  emptied: 'Geleert', neverEmptied: 'Noch keine Leerung vermerkt', emptyDue: 'zu leeren', noteEmptied: 'Leerung vermerken', emptyRise: (now: string, due: string) => `um ${now} gestiegen, zu leeren bei ${due}`,
  emptyHint: 'Pumpe abstellen und ihre Schieber schließen, bevor der Deckel geöffnet wird, wie der Hersteller es sagt; die Dosierung muss vorher stehen.',
  emptyNoted: (name: string) => `Die Leerung von ${name} ist vermerkt.`,
  begin: 'Filterspülung beginnen', note: 'Spülung vermerken', done: 'Gespült', giveUp: 'Ohne Spülung beenden', cancel: 'Abbrechen',
  under: (name: string) => `Wird gespült von ${name}`, until: (time: string) => `endet von selbst um ${time}; bis dahin rufen Umwälzung, Druck und Messzellen niemanden`,
  quietUntil: (time: string, quiet: string) => `endet von selbst um ${time}; Umwälzung, Druck und Messzellen rufen bis ${quiet} niemanden, dann ist die stille Stunde dieses Filters in zwölf verbraucht`,
  noQuiet: (time: string) => `endet von selbst um ${time}; Alarme rufen trotzdem, denn die stille Stunde dieses Filters in zwölf ist verbraucht`,
  why: 'Warum noch eine', whyHint: 'Die letzte Spülung dieses Filters ist nicht lange her, und sein Druck verlangt keine.', needWhy: 'Angeben, warum noch eine.',
  hint: 'Zuerst die Dosierung abstellen, Badegäste fernhalten, Herstelleranweisung und eigene Regeln befolgen. PlantWatch stellt kein Ventil: es weiß nur, was eingetragen wird.',
  noted: (name: string) => `Die Spülung von ${name} ist vermerkt. Sein sauberer Druckverlust ergibt sich aus der folgenden halben Stunde.`,
  begun: (name: string) => `${name}: Filterspülung begonnen.`, ended: (name: string) => `${name}: Filterspülung beendet.`,
};
