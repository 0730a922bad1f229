import type { start as shape } from '../en/start';

// The first steps of an empty plant.
export const start: typeof shape = {
  title: 'Primeros pasos', lead: 'Cinco pasos cortos hasta el primer valor. Cada uno se escribe en el archivo de la instalación: se puede dejar en cualquier momento y seguir donde se quedó.',
  step: (n: number, all: number) => `Paso ${n} de ${all}`, done: 'hecho', now: 'ahora', later: 'por hacer', next: 'Seguir', save: 'Guardar y seguir', saving: 'Guardando', change: 'Cambiarlo en los ajustes', optional: 'puede quedar vacío',
  steps: { site: 'Nombrar la instalación', pool: 'Añadir un vaso', probe: 'Elegir lo que se oye', pack: 'Elegir un paquete de límites', value: 'Ver el primer valor' },
  readOnly: 'El archivo de la instalación no se puede escribir desde aquí: él o su carpeta es de solo lectura. Hacerlo escribible o escribirlo a mano; la página de ajustes tiene el texto para copiar.',
  broken: 'El archivo de la instalación tiene problemas. Corregirlos primero en la página de ajustes.', toSettings: 'A los ajustes',
  why: { site: 'Primeros pasos: la instalación', pool: 'Primeros pasos: un vaso', probe: 'Primeros pasos: una sonda', pack: 'Primeros pasos: el paquete de límites' },
  fileHead: '# La instalación tal como está construida. Se puede editar aquí y en la página por igual; docs/plant-file.md la recorre clave por clave.',
  site: {
    name: 'Nombre de la instalación', zone: 'Zona horaria', zoneHint: 'Decide qué es un día y cuándo son las 07:30. Se ofrece la de este navegador.', units: 'Unidades en que se mide',
    unitNames: { metric: 'métricas', us: 'EE. UU.', imperial: 'imperiales' }, needName: 'Dar un nombre a la instalación.', needZone: 'Elegir una zona horaria.', long: 'Como máximo 100 caracteres.',
  },
  pool: {
    name: 'Nombre del vaso', kind: 'Para qué es', setting: 'Dónde', disinfectant: 'Desinfectante', volume: 'Volumen de agua', volumeHint: 'Para empezar basta una estimación: no se calcula ninguna dosis antes de que alguien lo haya confirmado. Largo \u00d7 ancho \u00d7 profundidad media, en metros, da m\u00b3.',
    turnover: 'Tiempo de recirculación', turnoverHint: 'Tiempo en que toda el agua de los vasos pasa una vez, según proyecto. Sin él, el caudal no se compara con nada.',
    circuit: 'Tratamiento del agua', own: 'Filtros, dosificación y vaso de compensación propios', shares: (name: string) => `Comparte los de ${name}`, circuitName: (pool: string) => `Agua de ${pool}`,
    choose: 'Elegir', needName: 'Dar un nombre al vaso.', needKind: 'Indicar para qué es.', needSetting: 'Indicar dónde está.', needDisinfectant: 'Indicar con qué se desinfecta.', needVolume: 'Un número mayor que 0, en m\u00b3.', needTurnover: 'Un número mayor que 0, en horas, o nada.',
    stabilised: 'Estabilizado: hay ácido cianúrico en el agua, de dicloro, tricloro o añadido.', another: 'Añadir otro vaso', notKnown: 'Aquí no se pregunta, y queda por saber: vaso de compensación, filtros, segundo tratamiento, bombas dosificadoras. Cada cosa se añade en los ajustes cuando se sabe.',
    kinds: { swimming: 'Natación', teaching: 'Enseñanza', leisure: 'Recreo', therapy: 'Terapia', spa: 'Hidromasaje', plunge: 'Inmersión fría', paddling: 'Chapoteo' }, settings: { indoor: 'Cubierto', outdoor: 'Al aire libre' },
    disinfectants: { chlorine: 'Cloro, sin estabilizar', stabilised_chlorine: 'Cloro estabilizado', salt_electrolysis: 'Cloro por electrólisis de sal', bromine: 'Bromo' },
  },
  probe: {
    listening: 'Escuchando', broker: 'Bróker', address: 'Los equipos publican en', nothing: 'Todavía no se ha oído nada. Los temas aparecen aquí un segundo después de su próximo mensaje.',
    how: 'Dirigir un equipo o una pasarela a esta dirección, con QoS 1 y sin la marca de retenido. Para probarlo sin instalación, simulators/README.md dice cómo poner en marcha una fuente.',
    heard: (n: number) => n === 1 ? '1 tema oído' : `${n} temas oídos`, forgotten: (n: number) => `${n} temas antiguos dejaron sitio a otros nuevos.`, every: (s: string) => `cada ${s} s`, once: 'una vez hasta ahora', retained: 'guardado por el bróker, no es una muestra nueva',
    takenBy: (name: string) => `lo lee ${name}`, take: 'Tomarlo', takeNamed: (what: string) => `Tomar ${what}`, asNumber: 'número suelto', asSenml: 'SenML JSON', asCbor: 'SenML CBOR', filter: 'Mostrar temas con', noneLeft: 'Ningún tema tiene estas letras.', more: (n: number) => `${n} más; escribir letras del tema para encontrarlo.`,
    measurand: 'Qué mide', name: 'Nombre', pool: 'Vaso', mixed: 'El retorno común de', origin: 'De quién es el número', raw: 'La señal propia de la sonda', rawMeans: 'PlantWatch puede corregirla.', panel: 'Lo que muestra el regulador de la instalación y por lo que dosifica', panelMeans: 'Se corrige solo en el panel.',
    electrode: 'Electrodo de referencia', electrodeHint: 'Sin él los milivoltios no dicen nada. Figura en la sonda o en su documentación.', unit: 'Unidad en que se envía', low: 'Lo mínimo que muestra el instrumento', high: 'Lo máximo que muestra el instrumento', rangeHint: 'Un número fuera se rechaza y se guarda.', every_: 'Se espera una lectura cada', seconds: 's',
    needMeasurand: 'Indicar qué mide.', needName: 'Darle un nombre.', needOrigin: 'Indicar de quién es el número, para no corregir dos veces.', needElectrode: 'Nombrar el electrodo, por ejemplo Ag/AgCl 3 M.', needRange: 'Dos números, primero el menor.', needEvery: 'Un número mayor que 0, como máximo 86400.',
    save: 'Añadir esta sonda', cancel: 'Esta no', added: (name: string) => `${name}: añadida.`, goOn: 'Seguir con lo elegido', without: 'Seguir sin sonda',
  },
  pack: {
    lead: 'Un paquete es una copia de lo que pide una autoridad. Cada fila espera a que una persona la coteje con el documento; hasta entonces no limita nada. Las normas locales van primero.',
    rows: (n: number) => n === 1 ? '1 fila' : `${n} filas`, memory: (n: number) => `${n} de memoria`, choose: 'Paquete de límites', needPack: 'Elegir uno, o seguir sin él.', take: 'Tomar este paquete', without: 'Seguir sin él', older: 'Ediciones reemplazadas por otra más nueva',
  },
  value: {
    waiting: 'Esperando el primer valor.', noProbe: 'No hay sonda elegida: los valores se anotan a mano, en la página Análisis.', there: 'El primer valor ya está.', toOverview: 'A los vasos', toCheck: 'Anotar un primer análisis',
    remains: 'Lo que queda, cuando haya tiempo', volume: 'Confirmar el volumen de cada vaso; antes no se calcula ninguna dosis', limits: 'Confirmar las filas del paquete de límites', own: 'Elegir un paquete de límites, o dar límites propios a cada vaso', people: 'Nombrar a las personas y lo que pueden firmar', checks: 'Indicar qué análisis tocan y cuándo', pumps: 'Añadir bombas dosificadoras, productos y depósitos', telling: 'Indicar a quién se avisa de las alarmas',
  },
};
