// Instruments: held against standards, and what that makes of the tests made with them.
import type { InstrumentKind, InstrumentWord, VerificationWord } from '../../contract.instrument';
import type { instruments as shape } from '../en/instruments';

export const instruments: typeof shape = {
  title: 'Instrumentos', none: 'El archivo de la instalación no nombra instrumentos (docs/plant-file.md, instruments).',
  hint: 'Un análisis hecho con un instrumento que leyó mal su patrón, o que nadie ha contrastado desde hace demasiado, se guarda y es menos seguro; el análisis lo dice.',
  kinds: { photometer: 'fotómetro', comparator: 'comparador', meter: 'medidor portátil' } as Record<InstrumentKind, string>,
  words: { not_verified: 'aún sin verificar', in_order: 'en orden', overdue: 'verificación atrasada', failed: 'leyó mal su patrón' } as Record<InstrumentWord, string>,
  verdicts: { none: '', within: 'dentro de tolerancia', outside: 'fuera de tolerancia' } as Record<VerificationWord, string>,
  every: (days: string) => `cada ${days} días`, until: (day: string) => `la próxima antes del ${day}`, verify: 'Contrastar con un patrón', test: 'Para qué', standard: 'Patrón', standardHint: 'su nombre o color, y su número', nominal: 'Debería marcar', tolerance: 'Tolerancia, a cada lado', toleranceHint: 'como dice su certificado', reading: 'Marca',
  preview: (off: string) => `se desvía ${off}`, save: 'Guardarlo', cancel: 'Dejarlo', saved: (verdict: string) => `Guardado: ${verdict}.`, waiting: 'Guardado en este dispositivo hasta que se llegue al servidor.', refused: 'El servidor lo rechazó', dropSure: '¿Descartar esta verificación para siempre?', need: 'Esto hace falta.', number: 'No es un número. Cifras con una coma o un punto.', positive: 'Más que cero.',
  line: (reading: string, nominal: string, tolerance: string) => `marcó ${reading}, debería ${nominal} \u00b1 ${tolerance}`, history: 'Verificaciones', by: (who: string) => `por ${who}`,
  checklist: 'El maletín, antes de una ronda', list: [
    'Cubetas transparentes, sin arañazos, secas por dentro; tapas que cierran; sin manchas del último análisis.', 'Fotómetro: tapa de luz, alojamiento limpio, pila nueva, sus patrones a mano.', 'Medidores: sensor húmedo y limpio, un tampón o una solución de control sin caducar.',
    'Reactivos sin caducar y secos en su envoltorio; del tipo adecuado al instrumento.', 'Varillas para triturar, jeringa o pipeta para diluir, agua sin demanda de cloro.', 'Cepillo, paño, botella para la muestra, guantes y gafas donde se manejen productos.',
  ],
  reagents: 'Reactivos y sus lotes',
};
