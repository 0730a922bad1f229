// How a number is known: where it comes from, how old it is, how sure, what it means, and by which source. The sources are those of docs/sources.md and docs/rules.md.
import type { Measurand } from '../../contract';
import type { IndexKey } from '../../contract.balance';
import type { know as shape } from '../en/know';

const means: Partial<Record<Measurand, string>> = {
  ph: 'Lo ácida que es el agua. Decide cuánto del cloro libre desinfecta, qué disuelve y deposita el agua, y qué notan los ojos.',
  orp: 'Con qué fuerza oxida el agua, respecto a este electrodo de referencia. Sigue al ácido hipocloroso al nivel propio de este vaso; no es un valor en mg/L, y el número de otro vaso no se puede comparar con él.',
  temperature: 'Del agua en la célula de medida o en el vaso. Mueve todos los equilibrios y lo que aguantan los bañistas.',
  free_chlorine: 'Ácido hipocloroso e hipoclorito juntos, y lo que retiene el ácido cianúrico, como Cl\u2082. Solo la parte de ácido hipocloroso desinfecta deprisa.',
  total_chlorine: 'Cloro libre y combinado juntos, como Cl\u2082.',
  combined_chlorine: 'Cloro unido a lo que aportan los bañistas. Desinfecta poco, y parte de él irrita los ojos y huele.',
  bromine: 'Todo el bromo que desinfecta, como Br\u2082.',
  total_alkalinity: 'Lo que sostiene el pH frente al ácido, como CaCO\u2083. El ácido cianúrico suma en ella y se descuenta al calcular el equilibrio.',
  calcium_hardness: 'Calcio, como CaCO\u2083: lo que puede depositarse, y lo que un agua pobre en él toma de las juntas.',
  cyanuric_acid: 'Protege el cloro del sol, y retiene la mayor parte sin que desinfecte.',
  dissolved_solids: 'Todo lo disuelto, por conductividad o por peso.',
  conductivity: 'Lo bien que conduce el agua; crece con lo disuelto.',
  sample_flow: 'Si pasa agua por las sondas. Sin él hablan de agua estancada.',
};

const sources: Record<IndexKey, string> = {
  speciated: 'Constantes de la base de datos abierta de USGS PHREEQC 3.8.9 (phreeqc.dat), publicadas; contrastado con 200 aguas calculadas con ella.',
  handbook: '10 CRR-NY 6-1.30 con su ejemplo resuelto y su banda de \u22120,5 a +0,5, publicado; norma de spas de Montana, tabla 7, para las constantes 12,1 y 12,2, publicada.',
  closed_form: 'P. Roberge, corrosion-doctors.org, publicado con soluciones.',
  ionic_strength: 'Al modo de Standard Methods 2330 B, de memoria; pK2 y pKs como en las bases de datos de USGS.',
  precipitation: '35 Ill. Adm. Code 604.900, publicado; calculado con las constantes de phreeqc.dat.',
  saturation_ph: 'Constantes de phreeqc.dat (USGS), publicadas.',
  ryznar: 'De memoria. Se muestra, no se actúa según él.', puckorius: 'De memoria. Se muestra, no se actúa según él.', larson_skold: 'De memoria. Se muestra, no se actúa según ella.',
};

export const know: typeof shape = {
  ask: (of: string) => `¿Cómo se sabe? ${of}`, title: '¿Cómo se sabe?',
  parts: { from: 'De dónde', age: 'Qué antigüedad', sure: 'Qué seguridad', means: 'Qué significa', source: 'Fuente' },
  means,
  probe: {
    from: (name: string, origin: string) => `Medido por «${name}», ${origin}.`, asReceived: 'Se muestra como se recibe.', common: 'En el retorno común del circuito.',
    corrected: (kind: string, at: string, by: string) => `Corregido (${kind.charAt(0).toLowerCase()}${kind.slice(1)}) desde ${at}, por ${by}.`,
    measured: (at: string) => `Medido ${at},`, every: (s: number) => `Se espera uno cada ${s}\u00a0s.`, silent: 'Calla desde hace más de lo debido.', notGood: 'Esta medida no es buena: se muestra y no se juzga.',
    believed: (v: string, n: number) => `Se acepta que el agua está en ${v} (k = 2) según ${n === 1 ? '1 análisis' : `${n} análisis`}, el último`, unjudged: 'Aún no se ha comparado con ningún análisis: nadie sabe cuánto se desvía.',
    source: 'Estado según NAMUR NE 107 (publicada, de segunda mano). Sesgo y su incertidumbre, a partir de los análisis; incertidumbres combinadas según la GUM (JCGM 100).',
  },
  basis: { probe: 'por sonda', corrected: 'por sonda, corregido', test: 'por análisis' },
  test: {
    from: (method: string) => `Análisis manual, ${method}.`, bound: 'Más allá del extremo del método: una cota, no un número.', sampled: (at: string) => `Muestra de ${at},`,
    u: (u: string) => `\u00b1 ${u} (k = 2), para este método en manos habituales.`, noU: 'Nadie sabe cuánto puede desviarse.', suspect: 'En duda: queda aislado frente al resto, o es improbable por sí mismo. Repetirlo.',
    source: 'Incertidumbre del método: práctica habitual (docs/sources.md). Un reactivo viejo o una cubeta mojada la aumentan.',
    combined: 'Total menos libre de una misma muestra.', combinedU: 'En él se suman las dudas de los dos análisis, así que uno pequeño no se distingue de ninguno.', combinedSource: 'Por definición; incertidumbres combinadas según la GUM (JCGM 100).',
  },
  balance: {
    from: 'Calculado a partir de', nothing: 'Aún no se ha analizado nada a partir de lo que calcularlo.', oldest: 'Lo más antiguo es de', k2: 'Expandida, k = 2.', notActed: 'Se muestra, no se actúa según ello.', sources,
    share: 'Calculado a partir de', shareU: 'Se mueve con el pH: una décima de pH son algunos puntos.', shareMeans: 'La parte del cloro libre que es ácido hipocloroso, la que desinfecta deprisa. Baja cuando sube el pH, y mucho más con ácido cianúrico.',
    shareSource: 'pKa del ácido hipocloroso según Morris (1966), de memoria; concuerda con el 7,54 a 25\u00a0\u00b0C de O\u2019Brien, Morris y Butler (1974) según la lista de US EPA, publicada.',
    cyanurateSource: 'Cloro y cianurato según O\u2019Brien, Morris y Butler (1974) en la lista de US EPA, EPA/600/S-17/165, a 25\u00a0\u00b0C, publicada.',
  },
  trust: {
    from: 'Lo que dicen juntas las sondas, sus señales y los análisis de este vaso, sopesado con la frecuencia con que cada uno se equivoca.', sure: 'La probabilidad está junto a la respuesta. La duda nunca vuelve seguro: lo inseguro sigue así hasta que una repetición lo descarte.',
    means: 'Un consejo, nunca una orden: decide quien está junto al vaso. Antes van las normas locales y las instrucciones de la propia instalación.', source: 'Regla de Bayes sobre las explicaciones; lo que pesa cada indicio es una propuesta de este programa, contrastada con instalaciones simuladas (docs/decisions/0012).',
  },
  plan: {
    from: 'Los últimos análisis, los límites y preferencias del archivo de la instalación, los productos a mano con su concentración, y el volumen.', sure: 'Cada paso dice cuánto puede desviarse. Tras cada uno se analiza el agua: lo que resulta va antes que lo calculado.',
    means: 'Una propuesta, nunca una orden: el camino más barato o más corto a cada banda en pasos seguros. Antes van las etiquetas y las instrucciones de la propia instalación.', source: 'Equilibrio con las constantes de phreeqc.dat (USGS, publicadas), el camino con programación lineal (docs/decisions/0008); los pasos y esperas seguros son práctica habitual.',
  },
  dose: {
    from: 'Los últimos análisis, el volumen del archivo de la instalación y la concentración del producto según su etiqueta y antigüedad.', sure: (percent: string) => `\u00b1 ${percent}\u00a0% de la cantidad, por volumen, concentración y análisis juntos. Un análisis de comprobación dice cómo resultó.`,
    means: 'Un consejo, nunca una orden: antes van la etiqueta, la ficha de datos de seguridad y las instrucciones de la propia instalación.', source: 'Balance de masa en agua cerrada, constantes de equilibrio de phreeqc.dat (USGS, publicadas); los pasos y esperas seguros son práctica habitual (docs/doses.md).',
  },
};
