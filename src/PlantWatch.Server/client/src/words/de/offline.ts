// Seiten ohne Server: was ein Gerät dann kann und was es zeigt.
import type { Reach } from '../../offline/worker';
import type { offline as shape } from '../en/offline';

export const offline: typeof shape = {
  newer: 'Auf diesem Gerät liegt eine neuere Fassung dieser Seiten.', take: 'Jetzt nehmen',
  asHeard: (time: string) => `Stand: zuletzt gehört um ${time}.`, asHeardMore: 'Nichts hier ist von jetzt. Neuer Versuch beim Server folgt von selbst.',
  title: 'Ohne Netz',
  reach: {
    starting: 'Die Seiten werden auf dieses Gerät gelegt; diese einen Augenblick offen lassen.',
    ready: 'Dieses Gerät öffnet die Seiten auch ohne Netz, auch nachdem es aus war.',
    insecure: 'Diese Adresse ist einfaches http: der Browser behält dann keine Seiten. Einmal geschlossen, öffnen sie sich nicht ohne den Server. Eine https-Adresse mit einem Zertifikat, dem dieses Gerät vertraut, behebt es.',
    unsupported: 'Dieser Browser behält keine Seiten: einmal geschlossen, öffnen sie sich nicht ohne den Server.',
    failed: 'Die Seiten ließen sich nicht auf dieses Gerät legen: einmal geschlossen, öffnen sie sich nicht ohne den Server.',
  } satisfies Record<Reach, string>,
  can: [
    'Eine offene Seite arbeitet ohne Netz weiter. Eingaben liegen auf diesem Gerät, bis der Server sie bestätigt hat, und gehen von selbst hinaus.',
    'Zwei offene Tabs teilen sich, was wartet; einer sendet es. Was zweimal gesendet wurde, wird einmal aufbewahrt.',
    'Was der Server ablehnt, steht mit seinem Grund beiseite, hält sonst nichts auf und lässt sich berichtigen.',
  ],
  full: 'Dieses Gerät hat keinen Platz mehr für Eingaben. Platz schaffen oder dort bleiben, wo Netz ist: ohne Netz lässt sich nichts mehr aufbewahren.',
};
