// Chemicals: what there is, how long it lasts, what came and what it cost.
import type { StockAct, StockUnit } from '../../contract.stock';
import type { chemicals as shape } from '../en/chemicals';

const days = (a: string) => (a === '1' ? '1 día' : `${a} días`);

export const chemicals: typeof shape = {
  title: 'Productos químicos', none: 'El archivo de la instalación no nombra productos (docs/plant-file.md, products).',
  units: { unknown: '', litre: 'L', kilogram: 'kg' } as Record<StockUnit, string>,
  acts: { unknown: '', delivered: 'Recibido', refilled: 'Rellenado', counted: 'Contado' } as Record<StockAct, string>,
  lasts: (a: string, b: string) => (a !== b ? `dura de ${a} a ${days(b)}` : a === '0' ? 'dura menos de un día' : `dura ${days(a)}`), lastsLonger: (a: string) => (a === '0' ? 'puede durar menos de un día' : `dura al menos ${days(a)}`), overYear: 'dura más de un año', overYearShort: 'un año',
  lastsHint: (n: number, weekday: boolean) => `Acierta cuatro veces de cinco; a partir de ${n === 1 ? '1 día' : `${n} días`} de consumo${weekday ? ', distinguiendo los días de la semana' : ''}.`, usual: (a: string) => (a === '0' ? 'menos de un día al consumo habitual' : `${days(a)} al consumo habitual`),
  empty: 'agotado', perDay: (a: string) => `${a} al día`, use: 'Consumo', store: 'Almacén', storeNever: 'nunca contado', storeBelow: 'El libro da menos de cero: se sacó más de lo anotado. Contar el almacén.',
  tankOf: (name: string) => `Depósito de ${name}`, noLevel: 'sin nivel, nunca llenado según el libro', strength: (p: string) => `${p}\u00a0% hoy`, batch: (b: string) => `lote ${b}`, plan: (p: string) => `${p}\u00a0% según el archivo de la instalación`,
  order: 'pedir ahora', orderHint: (a: string) => `Un pedido tarda ${days(a)}.`, wrong: 'producto equivocado', nobody: 'Llenado, y nadie anotó con qué:',
  cost: (n: number) => `Coste ${n === 1 ? 'del último día' : `de los últimos ${n} días`}`, noPrice: 'sin precio conocido', unpriced: (a: string) => `${a} no tenía precio y no está incluido.`,
  perBather: 'Por bañista', perCubicMetre: 'Por m\u00b3 de agua y día', noBathers: 'sin bañistas contados', price: (a: string) => `${a} por unidad`,
  bare: 'Nunca contados', bareHint: 'De estos nadie ha anotado aún nada. Conviene empezar contando lo que hay.',
  plot: (name: string) => `${name}: consumo por día`, plotTable: 'Como tabla', day: 'Día', amount: 'Cantidad', costColumn: 'Coste', part: 'conocido en parte', noUse: 'Aún no se conoce ningún consumo: empieza con un nivel de depósito, el caudal de una bomba o una dosis anotada.',
  tooClose: 'Guardados demasiado cerca', months: 'Lo que consumió y costó cada mes', month: 'Mes', product: 'Producto', noMonths: 'Aún no se ha consumido nada.', soFar: 'hasta ahora', total: 'Total',
  write: 'Anotar', open: { delivered: 'Una entrega', refilled: 'Un relleno de depósito', counted: 'Un recuento', bathers: 'Bañistas de un día' },
  heads: { unknown: '', delivered: 'Una entrega', refilled: 'Del almacén a un depósito', counted: 'Un recuento' } as Record<StockAct, string>,
  aloud: 'Dos personas. Leer en voz alta la etiqueta y el nombre del depósito, y compararlos, antes de conectar nada. Ácido en hipoclorito da cloro gas.',
  countHint: 'Lo que de verdad hay. El libro se ajusta en la diferencia; nada anterior se cambia.',
  productLabel: 'Producto, según su etiqueta', where: 'Adónde va', whereCounted: 'Contado dónde', inStore: 'Al almacén', ofStore: 'El almacén', tankFor: (name: string, product: string) => `Depósito de ${name} (para ${product})`,
  amountLabel: (unit: string) => `Cantidad, ${unit}`, containers: 'Envases', strengthLabel: 'Concentración de la etiqueta, %', batchLabel: 'Lote', madeOn: 'Fabricado el', priceLabel: 'Precio de todo', more: 'Etiqueta y precio', when: 'Cuándo',
  received: 'Recibido por', filled: 'Rellenado por', counted: 'Contado por', checked: 'Etiqueta y depósito leídos por', checkedHint: 'Otra persona.', note: 'Observación', save: 'Anotarlo', cancel: 'Dejarlo',
  stop: (product: string, tank: string, holds: string) => `PARO. ${product} no es para el depósito de ${tank}: ese es para ${holds}. No conectar nada. Si no ha entrado nada, elegir el depósito correcto.`,
  wentIn: 'Ha entrado. Anotarlo y activar la alarma', wentInNeed: 'Falta elegir el depósito correcto, o decir que ha entrado.', wentInFirst: 'Primero, salir de la sala. Avisar a todos, llamar a emergencias según las normas locales, ventilar solo desde fuera, no arrancar la bomba. Esto puede anotarse desde fuera.',
  needProduct: 'Falta elegir el producto según su etiqueta.', needWhere: 'Falta elegir adónde va.', needAmount: 'Un número: cuánto.', needNumber: 'Un número.', needWhole: 'Un número entero.', needDay: 'Un día.', needTime: 'Falta fecha y hora.', needChecked: 'Falta quién leyó también la etiqueta y el depósito.', needOther: 'Otra persona que quien lo recibió.',
  kept: { unknown: '', delivered: 'La entrega está anotada.', refilled: 'El relleno está anotado.', counted: 'El recuento está anotado.' } as Record<StockAct, string>,
  moves: 'Entregas, rellenos y recuentos', noMoves: 'Aún no hay nada anotado. Conviene empezar contando lo que hay.', into: (place: string) => `al depósito de ${place}`, intoStore: 'al almacén', inTank: (place: string) => `en el depósito de ${place}`, inStoreCount: 'en el almacén',
  book: (a: string) => `el libro decía ${a}`, two: (a: string, b: string) => (b ? `${a}, leído con ${b}` : a), corrected: 'corregido por una línea posterior', correction: (why: string) => `sustituye a una línea anterior: ${why}`, containersSaid: (n: number) => (n === 1 ? '1 envase' : `${n} envases`),
  bathersHead: 'Bañistas de un día', bathersHint: 'De la taquilla o del contador de la entrada. Una línea posterior del mismo día sustituye a esta.', pool: 'Vaso', number: 'Cuántos', saidBy: 'Dicho por', bathersKept: (n: number, pool: string) => `${n === 1 ? 'Anotado 1 bañista' : `Anotados ${n} bañistas`} en ${pool}.`, bathersList: 'Bañistas', bathersNone: 'Aún no se ha contado ningún día.',
  handover: 'Productos que se acaban', handoverNone: 'Nada se acaba en una semana.', handoverLeft: (a: string) => (a === '0' ? 'puede agotarse en un día' : `puede agotarse en ${days(a)}`),
};
