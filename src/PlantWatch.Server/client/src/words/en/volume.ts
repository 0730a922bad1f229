// The volume of the plant file against what doses and retests tell of.
export const volume = {
  title: 'What the doses tell of the volume', more: 'More water than the plant file says?', less: 'Less water than the plant file says?', rests: (n: number) => n === 1 ? 'Its one retest' : `Its ${n} retests`,
  when: 'Retest', by: 'Figure and product', tells: 'Tells of', weight: 'Weight', apart: 'apart from the others', none: 'nothing moved as it should', toDoses: 'To the doses',
};
