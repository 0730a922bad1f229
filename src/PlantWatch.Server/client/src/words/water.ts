// The pages about a pool's water: what they share, and the balance.

export const water = {
  nav: {
    label: 'Water of this pool',
    pages: { pool: 'Pool', balance: 'Balance', 'what-if': 'What if', dose: 'Dose', plan: 'Plan', incident: 'Incident' },
  },
  titles: { pool: 'Pool', balance: 'Water balance', 'what-if': 'What if', dose: 'Dose', plan: 'Dosing plan', incident: 'Incident' },
  notYet: 'This page is still empty.',
};
