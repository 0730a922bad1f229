import type { volume as shape } from '../en/volume';

// The volume of the plant file against what doses and retests tell of.
export const volume: typeof shape = {
  title: 'Lo que las dosis dicen del volumen', more: '¿Más agua de la que dice el archivo de la instalación?', less: '¿Menos agua de la que dice el archivo de la instalación?', rests: (n: number) => (n === 1 ? 'Su único análisis de comprobación' : `Sus ${n} análisis de comprobación`),
  when: 'Comprobación', by: 'Magnitud y producto', tells: 'Indica', weight: 'Peso', apart: 'apartado de los demás', none: 'nada se movió como debía', toDoses: 'A las dosis',
};
