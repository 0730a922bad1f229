// Wie ein Becken betrieben wird, und was vor dem Öffnen erfüllt sein muss.
import type { GateWord, OperatingState } from '../../contract.poolState';
import type { poolState as shape } from '../en/poolState';

export const poolState: typeof shape = {
  title: 'Wie es betrieben wird',
  states: { not_stated: 'Nicht angegeben', open: 'Geöffnet', closed: 'Geschlossen', covered: 'Abgedeckt', drained: 'Entleert' } as Record<OperatingState, string>,
  forCause: 'aus Anlass', since: 'seit', by: (name: string) => `angegeben von ${name}`,
  acts: { open: 'Öffnen', closed: 'Schließen', covered: 'Abdecken', drained: 'Entleeren' } as Record<Exclude<OperatingState, 'not_stated'>, string>,
  gate: 'Vor dem Öffnen', gateHint: 'Was PlantWatch sehen kann. Becken, Wassertiefen und Rettungsgerät ansehen, wie die eigenen Regeln es verlangen; sie gehen dieser Liste vor.',
  marks: { passed: 'erfüllt', not_passed: 'nicht erfüllt', not_known: 'nicht bekannt' } as Record<GateWord, string>,
  signers: (names: string) => `Es wurde aus Anlass geschlossen: es öffnet mit der Unterschrift von ${names}, mit Begründung.`, noSigners: 'Es wurde aus Anlass geschlossen, und die Anlagendatei nennt niemanden, der das Öffnen unterschreiben darf: Betriebsleitung, Technikleitung oder Administration.',
  history: 'Früher geöffnet und geschlossen', historyTitle: 'Geöffnete und geschlossene Becken', noHistory: 'Noch niemand hat ein Becken geöffnet oder geschlossen.', change: (before: string, now: string) => `${before} \u2192 ${now}`, byIncident: 'durch einen Vorfall', newWater: 'neues Wasser',
  test: 'Messen', why: 'Warum', cause: 'Etwas war nicht in Ordnung', refilled: 'Es enthält neues Wasser',
  refilledHint: 'Dann zählt keine frühere Messung mehr.', needWhy: 'Grund angeben.', cancel: 'Abbrechen', unreachable: 'Die Liste ist nicht abrufbar.',
};
