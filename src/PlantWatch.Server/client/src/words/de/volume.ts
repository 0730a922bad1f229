import type { volume as shape } from '../en/volume';

// Das Volumen der Anlagendatei und was Zugaben und Nachmessungen darüber sagen.
export const volume: typeof shape = {
  title: 'Was die Zugaben über das Volumen sagen', more: 'Mehr Wasser, als die Anlagendatei sagt?', less: 'Weniger Wasser, als die Anlagendatei sagt?', rests: (n: number) => n === 1 ? 'Die eine Nachmessung' : `Die ${n} Nachmessungen`,
  when: 'Nachmessung', by: 'Wert und Produkt', tells: 'Sagt', weight: 'Gewicht', apart: 'abseits der anderen', none: 'nichts bewegte sich, wie es sollte', toDoses: 'Zu den Zugaben',
};
