import type { plantFile as shape } from '../en/plantFile';

// The plant file on a page: its forms, its text, what a change does.
export const plantFile: typeof shape = {
  title: 'Ajustes de la instalación',
  lead: 'Todo está en un solo archivo y se vuelve a escribir en él con sus comentarios. Nada cambia hasta que se guarda.',
  asForm: 'Como formulario', asText: 'Como texto', view: 'Cómo se muestra',
  none: 'Todavía no hay archivo de la instalación.', begin: 'Empezar con los primeros pasos',
  notInForce: 'El archivo tal como está no rige: rige la versión anterior.', readOnly: 'Este archivo no se puede escribir desde aquí: él o su carpeta es de solo lectura. Cambiar lo que haga falta, copiar el texto y ponerlo allí a mano.',
  copy: 'Copiar el texto', copied: 'Copiado', notCopied: 'El navegador no deja copiar a la página: marcar el texto y copiarlo.',
  meanwhile: 'Alguien ha guardado otra versión desde que se empezó.', meanwhileMeans: 'Abajo se ve en qué se distingue esta de la suya.',
  takeTheirs: 'Dejar la mía y tomar la suya', mineOver: 'Seguir con la mía sobre la suya',
  unsaved: 'Aún sin guardar', unsavedMeans: 'Lo cambiado queda en este dispositivo.', giveUp: 'Descartar los cambios', sure: 'Descartarlos de verdad', keep: 'Conservarlos',
  text: 'Texto del archivo de la instalación', problems: (n: number) => n === 1 ? '1 problema' : `${n} problemas`, noProblems: 'Sin problemas', line: (n: number) => `Línea ${n}`,
  save: 'Guardar', saving: 'Guardando', why: 'Por qué', whyHint: 'Va al registro junto al nombre. Puede quedar vacío.', by: 'Quién lo cambia',
  changes: 'Qué cambia en el archivo', noChange: 'No cambia nada.', effects: 'Qué pasa al guardarlo', noEffect: 'Nada por lo que se rija la instalación.', removed: 'se quita', added: 'se añade',
  optional: 'puede quedar vacío', unsaid: 'sin indicar', yesNo: { true: 'sí', false: 'no' }, ends: ['desde', 'hasta'], add: (what: string) => `Añadir: ${what}`, addGroup: (what: string) => `Indicar más: ${what}`,
  remove: (what: string) => `Quitar ${what}`, removeSure: 'Quitarlo de verdad',
  mustFix: 'Corregir los problemas antes de guardar.', saved: 'Guardado y en vigor.', savedNotTaken: 'Guardado; entra en vigor enseguida.', unreachable: 'No se llega al servidor. Lo escrito queda en este dispositivo.',
};
