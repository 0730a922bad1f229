import type { alarmHealth as healthShape, laboratory as shape } from '../en/laboratory';

// Laboratory results, and the health of the alarms.

export const laboratory: typeof shape = {
  title: 'Laboratorio',
  lead: 'Lo que solo un laboratorio puede ver. Una buena química no responde a un hallazgo: responde una muestra más reciente dentro de su límite, o una persona autorizada, con un motivo. Antes van la normativa local y la autoridad sanitaria.',
  none: 'Aún no se ha anotado ningún resultado.', inForce: 'Límites vigentes', noLimits: 'Sin límites vigentes: nada se llama normal.', planned: (days: string) => `muestra cada ${days} días`, notPlanned: 'sin muestras planificadas',
  due: (at: string) => `próxima muestra: ${at}`, resample: (at: string) => `nueva muestra pendiente: ${at}`,
  verdict: { no_limit: 'sin límite vigente', inside: 'dentro', not_proven: 'sin demostrar', outside: 'fuera' },
  open: 'Sigue abierto: fuera de su límite', closed: (by: string, at: string) => `cerrado por ${by}, ${at}`, corrected: 'corregido por una anotación posterior',
  sampled: 'Muestreado', reported: 'Informado', by: 'anotado por', number: 'Muestra', water: 'Química en el muestreo', noWater: 'Ningún análisis del día anterior ni sonda aceptada en ese momento.', probe: 'sonda', test: 'análisis',
  limit: (v: string, ml: string) => `límite ${v} en ${ml}\u00a0mL`, per: (v: string, ml: string) => `${v} en ${ml}\u00a0mL`, nd: 'no detectado',
  enter: 'Anotar un informe', pool: 'Vaso', point: 'Tomada en', points: { pool: 'Vaso', balance_tank: 'Vaso de compensación', outlet: 'Punto más bajo o salida', cell: 'Célula de medida', unknown: 'Sin indicar' } as Record<string, string>,
  place: 'Lugar con palabras', lab: 'Laboratorio', sampleNumber: 'Número de muestra', counts: 'Recuentos tal como están impresos', organism: 'Organismo', colonyCount: 'Recuento de colonias, 36\u00a0\u00b0C', legionella: 'Legionella', count: 'Recuento', volume: 'en', senses: { counted: '=', below: '<', above: '>', not_detected: 'nada' },
  note: 'Observación', save: 'Guardar el informe', needNumber: 'Dar el recuento tal como está impreso', needOne: 'Falta al menos un recuento', needPool: 'Falta elegir el vaso', needTime: 'Falta cuándo', need: 'Hace falta',
  close: 'Cerrar este resultado', closeLead: 'Solo para un resultado que no era un hallazgo, o que la autoridad sanitaria ha dado por resuelto. Firma con nombre y motivo una persona del archivo de la instalación: responsable de turno, ingeniería o administración.', why: 'Por qué puede cerrarse', closeNow: 'Cerrarlo',
  sampling: 'Tomar la muestra', facts: [
    'Botella estéril con tiosulfato de sodio, para que el cloro deje de actuar en la botella (práctica habitual; ISO 19458, de memoria). No enjuagarla nunca.',
    'Analizar cloro libre y pH en el mismo lugar y momento, y anotarlos como análisis: quedan junto al recuento.',
    'Fresca y a oscuras, de 2 a 8\u00a0\u00b0C, y al laboratorio en el mismo día (práctica habitual; ISO 19458, de memoria). El laboratorio tiene sus propios plazos: preguntar.',
    'Anotar lugar y hora en la botella. Una nueva muestra se toma en el mismo punto.',
  ],
};

export const alarmHealth: typeof healthShape = {
  month: 'Mes', people: 'Personas de turno a la vez', print: 'Imprimir',
  lead: (told: string, hour: string) => `${told} llamadas; ${hour} por hora y persona.`, observed: (from: string, to: string) => `Observado de ${from} a ${to}; las medias son de ese tiempo.`,
  note: 'Se cuenta lo que llama a alguien: activada, avisada de nuevo, o con el aplazamiento terminado mientras sigue activa. Lo aplazado, lo inhibido, lo que está fuera de servicio o bajo su causa no llama a nadie.',
  figure: 'Cifra', here: 'Aquí', target: 'Orientación', known: 'Conocido por', provenance: { '': '', published: 'publicado', secondary: 'segunda mano', from_memory: 'memoria' } as Record<string, string>,
  meets: 'la cumple', not: 'no la cumple', source: 'Orientación: ISA-18.2, IEC 62682 y EEMUA 191; los propios documentos no se han visto.',
  days: 'Llamadas por día', daysSaid: (most: string) => `Barras por día, ${most} como máximo`, busiest: 'Las diez más activas', none: 'Ninguna.', share: 'Parte', times: 'Llamadas', chattering: 'Intermitentes', stale: 'Activas más de un día', floods: 'Avalanchas', until: 'a',
};
